// The label under the piece: what is chosen and what may be done with it, which side one sees, and
// the way back.

import { h } from "./preact.js";
import { change, desk, failed, fetch_job, redraw, seen, step_back } from "./desk.js";
import { Button, Choice } from "./fields.js";
import { begin_move, end_move, opening_at } from "./moving.js";
import { copy, remove } from "./edits.js";
import { ShapeOf } from "./pictures.js";
import { say } from "./words.js";

function turn_round(side, layer = 1) {
  desk.side = side;
  desk.layer = layer;
  desk.chosen = null;
  fetch_job().catch(failed);
}

function Chosen({ opening }) {
  const take_out = () => {
    desk.chosen = null;
    change([remove(opening.picture ? "picture." + opening.picture : opening.address)]);
  };
  return h("div", { class: "chosen" },
    h("span", { class: "called" }, say("Opening %1", opening.number), opening.picture ? ", " + opening.picture : ""),
    h(ShapeOf, { opening, hides_label: true }),
    h(Button, { name: "move", does: () => {
      begin_move(opening.address);
      document.querySelector(`[name="opening-${opening.number}"]`)?.focus();
    } }, say("Move")),
    h(Button, { name: "one-more", does: () => change([copy(opening.picture ? "picture." + opening.picture : opening.address)]) }, say("One more")),
    h(Button, { name: "take-out", does: take_out }, say("Take out")));
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

export function Plaque() {
  const { can_undo, can_redo } = desk.state, opening = desk.chosen && opening_at(desk.chosen);
  return h("div", { class: "plaque", role: "group", "aria-label": say("The piece") },
    desk.moving
      ? h("div", { class: "chosen" }, h("span", { class: "called" }, say("Where shall it go?")),
        h(Button, { does: () => end_move(true), kind: "main" }, say("Here")), h(Button, { does: () => end_move(false) }, say("Leave it")))
      : opening ? h(Chosen, { opening }) : desk.side === "back" ? h(BackOf, { layers: seen().layers }) : h(Legend),
    h("div", { class: "sides" },
      h(Button, { name: "front", pressed: desk.side === "front", does: () => turn_round("front") }, say("Front")),
      h(Button, { name: "back", pressed: desk.side === "back", does: () => turn_round("back") }, say("Back")),
      h(Button, { name: "alone", does: () => { desk.alone = true; redraw(); } }, say("Alone"))),
    h("div", { class: "steps" },
      h(Button, { name: "undo", disabled: !can_undo, does: () => step_back("undo") }, say("Undo")),
      h(Button, { name: "redo", disabled: !can_redo, does: () => step_back("redo") }, say("Redo"))),
    seen().mat ? null : h("p", { class: "old-note" }, say("The drawing is the last one that closed.")));
}
