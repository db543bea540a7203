// The folder: its jobs on the wall, and a blank ticket for the next one.

import { Component, h } from "./preact.js";
import { Blank } from "./blank.js";
import { desk, address_of, failed, go_to } from "./desk.js";
import { Button, facts_of } from "./fields.js";
import { job_path, post } from "./server.js";
import { say } from "./words.js";

const at_once = 60; // cards; more come as one scrolls on

const text_of = (job) => (job.text ??= [job.name, job.reference, job.title, job.customer, job.date].join(" ").toLowerCase());

export class Begin extends Component {
  constructor() {
    super();
    this.state = { sought: "", most: at_once };
    this.more = () => this.setState({ most: this.state.most + 2 * at_once });
  }

  render(_, { sought, most }) {
    const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
    const found = desk.jobs.filter((job) => words.every((word) => text_of(job).includes(word)));
    return h("div", { class: "begin" },
      h(Blank),
      h("main", { class: "wall jobs" },
        h("header", { class: "shelf" },
          h("h1", null, say("Jobs in %1", desk.about.folder)),
          h("p", { class: "hint", role: "status" }, found.length === desk.jobs.length ? "" : say("Found: %1", found.length)),
          h("div", { class: "field" },
            h("label", { for: "sought" }, say("Find")),
            h("span", { class: "written" }, h("input", {
              id: "sought", type: "search", value: sought, autocomplete: "off",
              onInput: (event) => this.setState({ sought: event.target.value, most: at_once }),
            })))),
        found.length > 0
          ? h("div", null, h("ul", { class: "cards" }, found.slice(0, most).map((job) => h(Card, { job, key: job.name }))),
            found.length > most ? h(More, { count: found.length - most, does: this.more }) : null)
          : h("p", { class: "empty" }, desk.jobs.length === 0
            ? say("No job lies in this folder yet. Write the first one on the ticket.")
            : say("No job of that name."))));
  }
}

// Presses itself when one has come so far.
class More extends Component {
  componentDidMount() {
    this.watch = new IntersectionObserver((seen) => seen.some((one) => one.isIntersecting) && this.props.does(), { rootMargin: "600px" });
    this.watch.observe(this.base);
  }

  componentDidUpdate() {
    this.watch.unobserve(this.base);
    this.watch.observe(this.base); // it may be in sight still
  }

  componentWillUnmount() { this.watch.disconnect(); }

  render({ count, does }) {
    return h("p", { class: "more-jobs" }, h(Button, { name: "more-jobs", does }, say("%1 more", count)));
  }
}

function Card({ job }) {
  const size = job.width ? job.width.text + " × " + job.height.text + " " + (job.unit || "") : "";
  return h("li", { class: "card" },
    h("a", { href: address_of(job.name) },
      h("span", { class: "hung" }, h("img", { src: job_path(job.name) + "/thumbnail.svg", alt: "", loading: "lazy" })),
      h("span", { class: "called" }, job.title || job.name),
      h("span", { class: "for" }, job.customer || ""),
      h("span", { class: "facts" }, facts_of([job.reference, job.date, size])),
      job.problem ? h("span", { class: "mark wrong" }, job.problem)
        : job.warnings > 0 ? h("span", { class: "mark" }, say("To look at: %1", job.warnings)) : null),
    h(Button, { kind: "quiet copy", does: () => copy_of(job.name) }, say("Copy"),
      h("span", { class: "unseen" }, " " + job.name)));
}

async function copy_of(name) {
  try {
    go_to((await post("/api/jobs", { name: "", copy_of: name })).name);
  } catch (error) {
    failed(error);
  }
}
