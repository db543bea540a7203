// Suggestions, hung on the wall while they are found.

import { Component, h } from "./preact.js";
import { change, desk, failed, redraw, step_back } from "./desk.js";
import { Button } from "./fields.js";
import { Drawing } from "./drawing.js";
import { ask, job_path } from "./server.js";
import { say } from "./words.js";

// Taken, and nothing was done to it since.
const is_taken = (idea) => desk.ideas.taken?.number === idea.number && desk.ideas.taken.fingerprint === desk.state.fingerprint;

// A click takes an arrangement; a click on the one that is taken goes back.
async function take(idea) {
  if (is_taken(idea)) {
    await step_back("undo");
    return;
  }
  const wrong = await change(idea.edits, say("Arrangement %1 is taken.", idea.number));
  if (wrong) return;
  desk.ideas.taken = { number: idea.number, fingerprint: desk.state.fingerprint };
  desk.ideas.open = false;
  desk.step = "sizes";
  redraw();
  document.querySelector('[name="line-sizes"]')?.focus();
}

export class Ideas extends Component {
  // Who waited for them goes on with the first one.
  componentDidUpdate() {
    const { running, suggestions } = desk.ideas || {};
    if (running || this.is_told || !suggestions?.length) return;
    this.is_told = true;
    const now = document.activeElement;
    if (now === document.body || now.name === "line-arrangement" || now.name === "suggest") this.base.querySelector(".idea")?.focus();
  }

  componentDidMount() { this.componentDidUpdate(); }

  render() {
    const { running, looked_at, suggestions, every_one, problems } = desk.ideas;
    const count = (looked_at || 0).toLocaleString(document.documentElement.lang);
    return h("section", { class: "ideas", "aria-labelledby": "ideas-title" },
      h("header", { class: "shelf" },
        h("h2", { id: "ideas-title" }, running ? say("Looking for arrangements") : say("Choose an arrangement")),
        h("p", { class: running ? "looks" : "" }, every_one ? say("All %1 looked at.", count) : say("%1 looked at.", count)),
        running ? h(Button, { name: "stop", does: () => ask("DELETE", job_path(desk.name) + "/suggestions").catch(failed) }, say("Stop looking")) : null),
      (problems || []).map((problem) => h("p", { class: "refused", key: problem.code }, problem.message)),
      h("ol", { class: "cards" }, (suggestions || []).map((idea) => h("li", { class: "card", key: idea.number },
        h("button", { type: "button", class: "idea", name: "idea-" + idea.number, "aria-pressed": String(is_taken(idea)), onClick: () => take(idea) },
          h("span", { class: "hung" }, h(Drawing, { svg: idea.svg, called: say("Arrangement %1", idea.number), mark: "i" + idea.number })),
          h("span", { class: "called" }, say("Arrangement %1", idea.number)),
          is_taken(idea) ? h("span", { class: "mark" }, say("Taken; press it again to go back")) : null,
          h("span", { class: "facts" }, idea.width.text + " × " + idea.height.text + " " + desk.state.unit))))));
  }
}
