// What is wrong and what is unwise: sums in words, remedies as buttons, and why on demand.

import { Component, h } from "./preact.js";
import { change, desk, failed, redraw, seen } from "./desk.js";
import { Button } from "./fields.js";
import { get } from "./server.js";
import { say, unbroken } from "./words.js";

export class Reason extends Component {
  async ask(event) {
    if (!event.target.open || this.state.text) return;
    try {
      const { summary, reason, advice } = await get("/api/explain/" + encodeURIComponent(this.props.code));
      this.setState({ text: [summary, reason, advice].filter(Boolean) });
    } catch (error) {
      if (error.status === undefined) failed(error);
      else this.setState({ text: [error.message] });
    }
  }

  render(_, { text }) {
    return h("details", { class: "reason", onToggle: (event) => this.ask(event) },
      h("summary", null, say("Why")), (text || []).map((part) => h("p", { key: part }, part)));
  }
}

export const remedies_of = (problem) => (problem.remedies || []).map((remedy) =>
  h(Button, { kind: "remedy", does: () => change(remedy.edits, remedy.words), key: remedy.words }, unbroken(remedy.words)));

function Problem({ problem }) {
  return h("li", { class: "problem " + problem.severity },
    h("p", { class: "sentence" }, unbroken(problem.message)),
    problem.remedies?.length > 0 ? h("div", { class: "buttons" }, remedies_of(problem)) : null,
    problem.code ? h(Reason, { code: problem.code }) : null);
}

// One line of the ticket, always there, so that nothing below it moves when a check begins or ends.
export function Wrong() {
  const { problems } = seen();
  const errors = problems.filter((problem) => problem.severity === "error");
  const others = problems.filter((problem) => problem.severity !== "error");
  const list = (some) => h("ul", null, some.map((problem, place) => h(Problem, { problem, key: problem.code + place })));
  const is_to_be_arranged = desk.ideas?.open;
  return h("section", { class: "wrong-list", "aria-label": say("What is wrong or unwise") },
    is_to_be_arranged ? null : errors.length > 0 ? h("div", { class: "to-mend" }, h("h2", null, say("Does not close")),
      desk.paper ? list(errors) : null) // else it stands on the piece
      : others.length > 0 ? h("details", { class: "unwise" }, h("summary", null, say("To look at: %1", others.length)), list(others))
        : h("p", { class: "hint" }, say("Nothing is wrong.")));
}

// The server does not answer, the file is gone, or an edit was refused.
export function Absence() {
  const text = desk.gone
    ? say("The program does not answer. What was done is in the job file; this page goes on when it answers again.")
    : desk.file_gone ? say("The job file is gone from its folder. It is shown as it was last.") : null;
  if (!text && !desk.wrong) return null;
  return h("div", { class: "absence", role: "alert" },
    text ? h("p", null, text) : null,
    desk.wrong ? h("p", null, desk.wrong) : null,
    desk.wrong ? h(Button, { does: () => { desk.wrong = null; redraw(); } }, say("Understood")) : null);
}
