// What rows, columns and borders cannot say, as sentences: of parts that agree with one another, and
// of a size and what it is to be. What a rule speaks of needs a name in the job file; a row, a column
// or a gap that has none yet is given one.

import { Component, h } from "./preact.js";
import { change, seen } from "./desk.js";
import { Button, Choice, Field } from "./fields.js";
import { called } from "./dimensions.js";
import { all_parts, part_called } from "./parts.js";
import { add, remove, state } from "./edits.js";
import { say } from "./words.js";

const strengths = () => [["required", say("without fail")], ["strong", say("if at all possible")],
  ["medium", say("if possible")], ["weak", say("rather than not")]];

// Value, words, element and attributes of what parts may be.
const agreements = () => [
  ["size", say("are of one size"), "same-size", {}], ["width", say("are of one width"), "same-size", { dimension: "width" }],
  ["height", say("are of one height"), "same-size", { dimension: "height" }],
  ["left", say("have their left edges in line"), "align", { edge: "left" }], ["right", say("have their right edges in line"), "align", { edge: "right" }],
  ["top", say("have their top edges in line"), "align", { edge: "top" }], ["bottom", say("have their bottom edges in line"), "align", { edge: "bottom" }],
  ["centre", say("have their centres one above the other"), "align", { edge: "centre" }], ["middle", say("have their middles side by side"), "align", { edge: "middle" }],
  ["across", say("are centred across the mat"), "centred", { direction: "across" }], ["down", say("are centred up and down the mat"), "centred", { direction: "down" }],
];

const relations = () => [["fixed", say("is")], ["at-least", say("is at least")], ["at-most", say("is at most")],
  ["equal", say("is the same as")], ["multiple", say("is so many times")]];

// The name that rules use, and the edits that give it where there is none yet.
function named(job, { name, id, kind }, taken) {
  if (kind === "opening" || id) return { name: id || name.replace(/^opening\./, ""), edits: [] };
  const stem = kind + "-";
  let number = 1;
  while (taken.has(stem + number)) ++number;
  taken.add(stem + number);
  return { name: stem + number, edits: [state(name + ".id", stem + number)] };
}

const taken_names = (job) => new Set(all_parts(job).map((part) => part.id || part.name.replace(/^opening\./, ""))
  .concat(job.measures.map((measure) => measure.name.replace(/^gap\./, ""))));

// The same of a size on the drawing.
function named_measure(job, name, taken) {
  if (/^(border|outer)\./.test(name)) return { name, edits: [] };
  const [, opening] = name.match(/^(?:opening\.)?(.+\.(?:width|height))$/) || [];
  if (opening) return { name: opening, edits: [] };
  return named(job, { name, id: name.startsWith("gap.") ? name.slice(4) : "", kind: "gap" }, taken);
}

const in_order = (job) => {
  const parts = all_parts(job);
  return [...parts.filter((part) => part.kind === "opening"), ...parts.filter((part) => part.kind !== "opening")];
};

class OfParts extends Component {
  constructor() {
    super();
    this.state = { chosen: [], agreement: "size", strength: "required", wrong: null };
  }

  async add() {
    const job = seen(), { chosen, agreement, strength } = this.state, taken = taken_names(job);
    const parts = all_parts(job).filter((part) => chosen.includes(part.address)).map((part) => named(job, part, taken));
    const [, , element, attributes] = agreements().find(([value]) => value === agreement), names = parts.map((part) => part.name).join(" ");
    const of = element === "centred" ? { what: names } : { of: names };
    const wrong = await change([...parts.flatMap((part) => part.edits),
      add(element, { ...of, ...attributes, ...(strength === "required" ? {} : { strength }) })], say("The rule is kept."));
    this.setState(wrong ? { wrong } : { chosen: [], wrong: null });
  }

  render(_, { chosen, agreement, strength, wrong }) {
    const least = ["across", "down"].includes(agreement) ? 1 : 2;
    const put = (address, is_in) => this.setState({ chosen: is_in ? [...chosen, address] : chosen.filter((one) => one !== address) });
    return h("fieldset", null, h("legend", null, say("A rule about openings")),
      h("div", { class: "ticks" }, in_order(seen()).map((part) => h("label", { class: "tick", key: part.address },
        h("input", { type: "checkbox", name: "of-" + part.address, checked: chosen.includes(part.address), onChange: (event) => put(part.address, event.target.checked) }),
        h("span", null, part_called(part))))),
      h(Choice, { label: say("These"), name: "agreement", value: agreement, options: agreements(), choose: (value) => this.setState({ agreement: value }) }),
      h("div", { class: "side-by-side" },
        h(Choice, { label: say("How strictly"), name: "parts-strength", value: strength, options: strengths(), choose: (value) => this.setState({ strength: value }) }),
        h(Button, { name: "add-agreement", disabled: chosen.length < least, does: () => this.add() }, say("Add the rule"))),
      wrong ? h("p", { class: "refused", role: "alert" }, wrong) : null);
  }
}

class OfSize extends Component {
  constructor() {
    super();
    this.state = { of: "border.left", relation: "at-least", length: "", times: "2", other: "border.top", strength: "required", wrong: null };
  }

  async add() {
    const job = seen(), { of, relation, length, times, other, strength } = this.state, taken = taken_names(job);
    const one = named_measure(job, of, taken), two = named_measure(job, other, taken);
    const attributes = relation === "equal" ? { of: one.name + " " + two.name }
      : relation === "multiple" ? { measure: one.name, of: two.name, times } : { measure: one.name, length };
    const needs_two = relation === "equal" || relation === "multiple";
    const wrong = await change([...one.edits, ...(needs_two ? two.edits : []),
      add(relation, { ...attributes, ...(strength === "required" ? {} : { strength }) })], say("The rule is kept."));
    this.setState(wrong ? { wrong } : { length: "", wrong: null });
  }

  render(_, { of, relation, length, times, other, strength, wrong }) {
    const job = seen(), sizes = job.measures.filter(({ name }) => !/(^|\.)reveal(\.|$)/.test(name)).map((measure) => [measure.name, called(job, measure)]);
    const needs_two = relation === "equal" || relation === "multiple";
    const kept = (key) => (value) => { this.setState({ [key]: value }); return null; };
    return h("fieldset", null, h("legend", null, say("A rule about a size")),
      h(Choice, { label: say("This size"), name: "rule-size", value: of, options: sizes, choose: kept("of") }),
      h("div", { class: "side-by-side" },
        h(Choice, { label: say("Relation"), name: "relation", value: relation, options: relations(), choose: kept("relation") }),
        relation === "multiple" ? h(Field, { label: say("Times"), name: "rule-times", value: times, commit: kept("times") }) : null,
        needs_two ? null : h(Field, { label: say("Length"), name: "rule-length", unit: job.unit, value: length, commit: kept("length") })),
      needs_two ? h(Choice, { label: say("that size"), name: "rule-other", value: other, options: sizes, choose: kept("other") }) : null,
      h("div", { class: "side-by-side" },
        h(Choice, { label: say("How strictly"), name: "size-strength", value: strength, options: strengths(), choose: kept("strength") }),
        h(Button, { name: "add-size-rule", does: () => this.add() }, say("Add the rule"))),
      wrong ? h("p", { class: "refused", role: "alert" }, wrong) : null);
  }
}

export function Rules() {
  const { rules, mat } = seen();
  return h("div", null,
    rules.length > 0 ? h("h3", null, say("Rules of this job")) : null,
    rules.length > 0 ? h("ul", { class: "rules" }, rules.map((rule) => h("li", { key: rule.index },
      h("span", { class: "sentence" }, rule.sentence),
      h(Button, { kind: "quiet", does: () => change([remove("rule." + rule.index)]), says: say("Take out: %1", rule.sentence) }, say("Take out"))))) : null,
    mat ? h("details", { class: "new-rule" }, h("summary", { id: "new-rule" }, say("Add a rule")), h(OfParts), h(OfSize)) : null);
}
