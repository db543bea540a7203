// A paper as it is printed, in front of the piece.

import { h } from "./preact.js";
import { desk, redraw } from "./desk.js";
import { Button } from "./fields.js";
import { paper_address } from "./papers.js";
import { say } from "./words.js";

export function Paper() {
  const { kind, called, is_full_scale } = desk.paper, address = paper_address(kind);
  return h("section", { class: "paper-front", "aria-label": called },
    h("header", { class: "shelf" },
      h("h2", null, called),
      is_full_scale ? h("p", { class: "strong" }, say("Print at 100 %, no scaling.")) : null,
      h("a", { class: "button", href: address, target: "_blank", rel: "noopener" }, say("Open to print")),
      h(Button, { name: "close-paper", does: () => { desk.paper = null; redraw(); } }, say("Back to the piece"))),
    h("iframe", { src: address, title: called, key: address }));
}
