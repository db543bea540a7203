// Line 3: the outer size, the borders and the finest step. What is written is kept; what stands in
// pencil was found.

import { h } from "./preact.js";
import { change, seen } from "./desk.js";
import { Choice, Field } from "./fields.js";
import { Rules } from "./rules.js";
import { state, typed, written } from "./edits.js";
import { say } from "./words.js";

export const measure_of = (job, name) => job.measures.find((measure) => measure.name === name);

function Measure({ name, label }) {
  const job = seen(), measure = measure_of(job, name);
  const stated = name.startsWith("outer.") ? job.outer?.[name.slice(6)] : job.borders[name.slice(7)];
  const text = stated?.text ?? stated;
  return h(Field, {
    label, name, unit: job.unit, found: measure?.text,
    value: measure ? (measure.stated ? measure.text : "") : text === "free" ? "" : text,
    commit: (draft) => change([typed(name, draft)]),
  });
}

// The bottom may be said in words: the job file has one for each.
function Bottom() {
  const { borders, unit } = seen();
  const [kind, ...rest] = (borders.bottom_word || "equal").split(" "), extra = rest.join(" ");
  const first_extra = unit === "in" ? "1/2" : unit === "mm" ? "12" : "1.2";
  return h("div", { class: "side-by-side" },
    h(Choice, {
      label: say("Bottom border"), value: kind, name: "bottom",
      options: [["equal", say("like the top")], ["optical", say("at the optical centre")], ["extra", say("wider by")]]
        .concat(kind === "given" ? [["given", say("as written above")]] : kind === "ratio" ? [["ratio", say("%1 times the top", extra)]] : []),
      choose: (value) => change(value === "extra"
        ? [state("border.bottom-extra", first_extra)] : [state("border.bottom", value)]),
    }),
    kind === "extra" ? h(Field, { label: say("Wider by"), name: "bottom-extra", value: extra, unit,
      commit: (text) => change([written("border.bottom-extra", text)]) }) : null);
}

export function Sizes() {
  const { increment, unit } = seen();
  return h("div", null,
    h("div", { class: "side-by-side" },
      h(Measure, { name: "outer.width", label: say("Mat, width") }), h("span", { class: "by" }, "×"),
      h(Measure, { name: "outer.height", label: say("Mat, height") })),
    h(Bottom),
    h("div", { class: "cross", role: "group", "aria-label": say("Borders") },
      h("div", { class: "north" }, h(Measure, { name: "border.top", label: say("Top") })),
      h("div", { class: "west" }, h(Measure, { name: "border.left", label: say("Left") })),
      h("div", { class: "east" }, h(Measure, { name: "border.right", label: say("Right") })),
      h("div", { class: "south" }, h(Measure, { name: "border.bottom", label: say("Bottom") }))),
    h(Field, { label: say("Read off the rule in steps of"), name: "increment", value: increment.text, unit,
      commit: (text) => change([written("increment", text)]) }),
    h("p", { class: "hint" }, say("Leave a line empty and its size is found.")),
    h(Rules));
}
