// The strip of an under-mat that one sees: on all sides, or side by side.

import { h } from "./preact.js";
import { change, seen } from "./desk.js";
import { Field } from "./fields.js";
import { written } from "./edits.js";
import { said } from "./lengths.js";
import { say } from "./words.js";

// `value` has `all` where the sides are alike; `name_of` tells what an edit calls a side.
export function Reveal({ label, called, value, found, name_of }) {
  const { unit } = seen();
  const field = (text, side) => h(Field, { label: text, unit, name: called + (side === "all" ? "" : "-" + side), key: side,
    value: side !== "all" && value?.all ? "" : said(value?.[side]), found: side === "all" ? found : said(value?.all) ?? "",
    commit: (length) => change([written(name_of(side), length)]) });
  return h("div", null,
    field(label, "all"),
    h("details", null, h("summary", null, say("by side")),
      h("div", { class: "side-by-side" }, field(say("Left"), "left"), field(say("Top"), "top")),
      h("div", { class: "side-by-side" }, field(say("Right"), "right"), field(say("Bottom"), "bottom"))));
}
