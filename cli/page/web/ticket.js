// The work ticket: whom the job is for, what is wrong with it, and the lines of work in their
// order. One line is unfolded; the others say what stands on them.

import { h } from "./preact.js";
import { change, desk, go_to, redraw, seen, works_here } from "./desk.js";
import { Field, facts_of } from "./fields.js";
import { state, take_out, written } from "./edits.js";
import { say } from "./words.js";
import { Pictures } from "./pictures.js";
import { Arrangement } from "./arrangement.js";
import { Sizes } from "./sizes.js";
import { Colour, Layers } from "./layers.js";
import { Frame } from "./frame.js";
import { Papers } from "./papers.js";
import { Choices } from "./choices.js";
import { Wrong } from "./wrong.js";

function arrangement_in_short({ arrange }) {
  if (!arrange) return say("none yet");
  if (arrange.kind === "opening") return say("one opening");
  const parts = arrange.children.length;
  switch (arrange.kind) {
    case "row": return say("a row of %1", parts);
    case "ring": return say("a ring of %1", parts);
    case "places": return say("%1 places on the mat", parts);
    default: return say("a column of %1", parts);
  }
}

const lines = [
  ["pictures", () => say("Pictures"), (job) => String(job.pictures.length), Pictures],
  ["arrangement", () => say("Arrangement"), arrangement_in_short, Arrangement],
  ["sizes", () => say("Borders and sizes"),
    ({ mat, unit }) => (mat ? mat.width.text + " × " + mat.height.text + " " + unit : say("do not close")), Sizes],
  ["layers", () => say("Layers"), ({ layers }) => layers.map((layer) => layer.board || layer.name).join(", "), Layers],
  ["frame", () => say("Frame"),
    ({ frame }) => (frame ? frame.moulding || frame.rabbet_width.text + " × " + frame.rabbet_height.text : say("none")), Frame],
  ["papers", () => say("Papers"), () => "", Papers],
  ["choices", () => say("Choices"), () => "", Choices],
];

export function unfold(step) {
  desk.step = step;
  if (step !== "papers") desk.paper = null;
  if (desk.ideas) desk.ideas.open = step === "arrangement" && (desk.ideas.open || !desk.state.arrange);
  redraw();
  const line = document.querySelector(".line.open"), ticket = line?.closest(".ticket");
  if (line && works_here()) line.scrollIntoView({ block: line.offsetHeight > ticket.clientHeight ? "start" : "nearest" });
}

let was_pressed = false; // by Enter or the space bar; an access key only goes to an open line

// Up and down go from line to line.
function walk(event) {
  was_pressed = event.key === "Enter" || event.key === " ";
  const way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (!way) return;
  event.preventDefault();
  const heads = [...event.currentTarget.closest(".ticket").querySelectorAll(".line-head")];
  heads[heads.indexOf(event.currentTarget) + way]?.focus();
}

function Line({ step, number, title, short, content }) {
  const is_open = desk.step === step;
  return h("li", { class: is_open ? "line open" : "line" },
    h("h2", null, h("button", {
      type: "button", class: "line-head", name: "line-" + step, "aria-expanded": String(is_open),
      "aria-controls": "line-" + step, accesskey: number, onKeyDown: walk,
      onClick: (event) => {
        unfold(is_open && (event.detail > 0 || was_pressed) ? null : step);
        was_pressed = false;
        event.currentTarget.focus();
      },
    },
    h("span", { class: "count" }, number), h("span", { class: "called" }, title),
    is_open ? null : h("span", { class: "short" }, short))),
    h("div", { id: "line-" + step, class: "slip", hidden: !is_open }, is_open ? h(content) : null));
}

// Whom the job is for, in two lines; unfolded, what may be written there.
function Head({ job: { title, customer, reference, date, note, quantity, wall } }) {
  const field = (label, name, value, found) =>
    h(Field, { label, name, value, found, wide: name !== "reference" && name !== "date", commit: (text) => change([text.trim() === "" && name === "customer.name" ? take_out("customer") : written(name, text)]), key: name });
  const facts = facts_of([customer?.name, reference, date]);
  return h("details", { class: "of-job" },
    h("summary", { id: "of-job" }, h("span", { class: "of-job-head" }, h("h1", null, title || desk.name),
      h("span", { class: "facts" }, facts.length > 0 ? facts : say("Customer, title, date, wall")))),
    field(say("Title"), "title", title),
    field(say("For"), "customer.name", customer?.name),
    field(say("E-mail"), "customer.email", customer?.email),
    h("div", { class: "side-by-side" }, field(say("No."), "reference", reference), field(say("Date"), "date", date)),
    field(say("How many"), "quantity", quantity === 1 ? "" : String(quantity), "1"),
    field(say("Note"), "note", note),
    h(Colour, { label: say("The wall"), value: wall, commit: (colour) => change([state("wall", colour)]) }));
}

export function Ticket() {
  const job = seen();
  return h("aside", { class: "ticket", "aria-label": say("Work ticket") },
    h("div", { class: "ticket-top" }, desk.about.single ? null
      : h("a", { href: "#", class: "back", onClick: (event) => { event.preventDefault(); go_to(null); } }, say("All jobs"))),
    h(Head, { job: job.job }),
    h(Wrong),
    h("ol", { class: "lines" }, lines.map(([step, called, in_short, content], place) =>
      h(Line, { step, number: String(place + 1), title: called(), short: in_short(job), content, key: step }))));
}
