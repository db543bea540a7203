// Two to six versions side by side, lettered, for the customer to choose from.

import { Component, h } from "./preact.js";
import { desk, failed, go_to } from "./desk.js";
import { Button } from "./fields.js";
import { Drawing } from "./drawing.js";
import { get, job_path } from "./server.js";
import { say } from "./words.js";

const letters = "ABCDEF";

// All hang at one scale: each has as much wall around it as the largest needs.
function rooms_of(jobs) {
  const extents = jobs.map((job) => job.extent).filter(Boolean);
  const width = Math.max(...extents.map((one) => one.width)), height = Math.max(...extents.map((one) => one.height));
  return ({ left, top, width: w, height: h }) => [left - (width - w) / 2, top - (height - h) / 2, width, height].join(" ");
}

export class Versions extends Component {
  constructor() {
    super();
    this.state = { hung: [] };
  }

  async componentDidMount() {
    try {
      const hung = await Promise.all(desk.versions.slice(0, 6).map((name) => get(job_path(name) + "?draw=front")));
      this.setState({ hung });
    } catch (error) {
      failed(error);
    }
  }

  render(_, { hung }) {
    const room_of = rooms_of(hung);
    const back_to = desk.name || desk.versions[0];
    return h("main", { class: "wall versions-wall" },
      h("h1", { class: "unseen" }, say("Choices")),
      h("ul", { class: "hung-versions count-" + hung.length }, hung.map((job, place) => h("li", { key: job.name },
        h("div", { class: "hung", style: { background: job.job.wall } }, job.drawing ? h(Drawing, { svg: job.drawing.svg, called: job.job.title || job.name, mark: "v" + place, room: room_of(job.extent) }) : null),
        h("button", { type: "button", class: "label", name: "take-" + job.name, onClick: () => go_to(job.name) },
          h("span", { class: "letter" }, letters[place]),
          h("span", { class: "called" }, job.layers.map((layer) => layer.board || layer.name).filter(Boolean).join(" / ") || job.name),
          h("span", { class: "short" }, job.mat ? job.mat.width.text + " × " + job.mat.height.text + " " + job.unit : ""),
          h("span", { class: "take" }, say("This one")))))),
      h("p", { class: "back-line" }, h(Button, { kind: "quiet", does: () => go_to(back_to) }, say("Back to the ticket"))));
  }
}
