// The wall: the piece with its dimensions, or what lies in front of it.

import { h } from "./preact.js";
import { desk, redraw, seen } from "./desk.js";
import { Button } from "./fields.js";
import { Ideas } from "./ideas.js";
import { Paper } from "./paper.js";
import { Piece } from "./piece.js";
import { Plaque } from "./plaque.js";
import { say } from "./words.js";

// The wall has the colour that the proof gives it; what else hangs there has a plain one.
function paint(colour) {
  return (wall) => {
    const whole = document.documentElement.style;
    if (wall && colour) whole.setProperty("--wall", colour);
    else whole.removeProperty("--wall");
  };
}

export function Wall() {
  const { job } = seen();
  const content = desk.paper ? h(Paper) : desk.ideas?.open ? h(Ideas)
    : [h(Piece, { key: "piece" }), desk.alone ? null : h(Plaque, { key: "plaque" })];
  const shows_piece = !desk.paper && !desk.ideas?.open;
  return h("main", { class: shows_piece && desk.side === "back" ? "wall sheet" : "wall", ref: paint(shows_piece && desk.side === "front" ? job.wall : null) },
    content,
    desk.alone ? h("div", { class: "alone-label" },
      h("h1", { class: "called" }, job.title || desk.name),
      h(Button, { kind: "quiet", name: "not-alone", does: () => { desk.alone = false; redraw(); } }, say("Back to the ticket"))) : null);
}
