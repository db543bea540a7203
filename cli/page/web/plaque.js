// The label under the piece: what is chosen and what may be done with it, which side one sees, and
// the way back.

import { h } from "./preact.js";
import { change, desk, failed, fetch_job, redraw, seen, step_back } from "./desk.js";
import { Button, Choice } from "./fields.js";
import { begin_move, end_move, words_for } from "./moving.js";
import { copy, remove, turn } from "./edits.js";
import { ShapeOf } from "./opening.js";
import { is_line, numbers_of, part_at, part_called } from "./parts.js";
import { say } from "./words.js";

function turn_round(side, layer = 1) {
  desk.side = side;
  desk.layer = layer;
  desk.chosen = null;
  return fetch_job().catch(failed);
}

async function show_alone() {
  if (desk.side !== "front") await turn_round("front");
  desk.alone = true;
  desk.chosen = null;
  redraw();
}

const focus_on = (selector) => document.querySelector(selector)?.focus();

export function choose(address) {
  desk.chosen = address;
  redraw();
}

// To the slip of the opening, on the ticket.
function unfold_opening(address) {
  Object.assign(desk, { step: "pictures", unfolded: address, paper: null });
  redraw();
  const fold = document.querySelector(".picture > details[open] > summary");
  fold?.scrollIntoView({ block: "start" });
  fold?.focus();
}

function Move({ part }) {
  return h(Button, { name: "move", does: () => {
    begin_move(part.address);
    focus_on(`[name="opening-${numbers_of(part)[0]}"]`);
  } }, say("Move"));
}

function Whole({ part: { parent } }) {
  if (!parent?.parent) return null; // the outermost one is the whole piece
  return h(Button, { name: "whole", does: () => { choose(parent.address); focus_on('[name="move"]'); } },
    { row: say("Its row"), column: say("Its column"), ring: say("Its ring") }[parent.kind]);
}

function of_opening(part) {
  const opening = seen().openings.find((one) => one.address === part.address);
  const whole = opening.picture ? "picture." + opening.picture : opening.address;
  return [
    h("span", { class: "called" }, say("Opening %1", opening.number) + (opening.picture ? ", " + opening.picture : "")),
    h(ShapeOf, { opening, hides_label: true }),
    h(Move, { part }),
    h(Whole, { part }),
    h(Button, { name: "more", does: () => unfold_opening(opening.address) }, say("More")),
    h(Button, { name: "one-more", kind: "wide-only", does: () => change([copy(whole)]) }, say("One more")),
    h(Button, { name: "take-out", kind: "wide-only", does: () => { desk.chosen = null; change([remove(whole)]); } }, say("Take out")),
  ];
}

function of_group(part) {
  const called = part_called(part);
  return [
    h("span", { class: "called" }, called[0].toUpperCase() + called.slice(1)),
    h(Move, { part }),
    h(Whole, { part }),
    is_line(part) ? h(Button, { name: "turn-chosen", does: () => change([turn(part.address)]) },
      part.kind === "row" ? say("Make it a column") : say("Make it a row")) : null,
  ];
}

function Legend() {
  return h("p", { class: "legend" },
    h("span", { class: "number stated" }, "3"), h("span", null, say("stated")),
    h("span", { class: "number found" }, "2 7/8"), h("span", null, say("found")));
}

function BackOf({ layers }) {
  return h(Choice, { label: say("Layer"), hides_label: true, value: String(desk.layer), name: "back-of",
    options: layers.map((layer) => [String(layer.number), layer.name || say("Layer %1", layer.number)]),
    choose: (number) => turn_round("back", Number(number)) });
}

function Moving() {
  return h("div", { class: "chosen moving" },
    h("span", { class: "called" }, words_for(desk.moving.at)),
    h(Button, { name: "put-here", does: () => end_move(true), kind: "main" }, say("Put it here")),
    h(Button, { name: "leave-it", does: () => end_move(false) }, say("Leave it")));
}

export function Plaque() {
  const { can_undo, can_redo } = desk.state, part = desk.chosen && part_at(desk.chosen);
  return h("div", { class: "plaque", role: "group", "aria-label": say("The piece") },
    desk.moving ? h(Moving)
      : part ? h("div", { class: "chosen" }, part.kind === "opening" ? of_opening(part) : of_group(part),
        h(Button, { name: "done", kind: "quiet", does: () => choose(null) }, say("Done")))
        : [
          seen().mat ? desk.side === "back" ? h(BackOf, { layers: seen().layers }) : h(Legend)
            : desk.state.drawing ? h("p", { class: "old-note" }, say("The drawing is the last one that closed.")) : null,
          h("div", { class: "sides" },
            h(Button, { name: "front", pressed: desk.side === "front", does: () => turn_round("front") }, say("Front")),
            h(Button, { name: "back", pressed: desk.side === "back", does: () => turn_round("back") }, say("Back"))),
          h(Button, { name: "alone", does: show_alone }, say("Show the customer")),
          h("div", { class: "steps" },
            h(Button, { name: "undo", disabled: !can_undo, does: () => step_back("undo") }, say("Undo")),
            h(Button, { name: "redo", disabled: !can_redo, does: () => step_back("redo") }, say("Redo"))),
        ]);
}
