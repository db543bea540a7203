// An open job: its ticket, and the piece on the wall.

import { h } from "./preact.js";
import { desk } from "./desk.js";
import { Ticket } from "./ticket.js";
import { Wall } from "./wall.js";

export function Job() {
  return h("div", { class: desk.alone ? "job alone" : "job" }, desk.alone ? null : h(Ticket), h(Wall));
}
