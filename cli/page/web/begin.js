// The folder: its jobs on the wall, and a blank ticket for the next one.

import { Component, h } from "./preact.js";
import { desk, address_of, failed, go_to, works_here } from "./desk.js";
import { learn_shop, shop } from "./boards.js";
import { Button, Choice } from "./fields.js";
import { add, remove, state } from "./edits.js";
import { get, job_path, post } from "./server.js";
import { say } from "./words.js";

export class Begin extends Component {
  constructor() {
    super();
    this.state = { sought: "" };
  }

  render(_, { sought }) {
    const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
    const found = desk.jobs.filter((job) => {
      const text = [job.name, job.reference, job.title, job.customer, job.date].join(" ").toLowerCase();
      return words.every((word) => text.includes(word));
    });
    return h("div", { class: "begin" },
      h(Blank),
      h("main", { class: "wall jobs" },
        h("header", { class: "shelf" },
          h("h1", null, say("Jobs in %1", desk.about.folder)),
          h("div", { class: "field" },
            h("label", { for: "sought" }, say("Find")),
            h("span", { class: "written" }, h("input", {
              id: "sought", type: "search", value: sought, autocomplete: "off",
              onInput: (event) => this.setState({ sought: event.target.value }),
            })))),
        found.length > 0
          ? h("ul", { class: "cards" }, found.map((job) => h(Card, { job, key: job.name })))
          : h("p", { class: "empty" }, desk.jobs.length === 0
            ? say("No job lies in this folder yet. Write the first one on the ticket.")
            : say("No job of that name."))));
  }
}

function Card({ job }) {
  const size = job.width ? job.width.text + " × " + job.height.text + " " + (job.unit || "") : "";
  return h("li", { class: "card" },
    h("a", { href: address_of(job.name) },
      h("span", { class: "hung" }, h("img", { src: job_path(job.name) + "/thumbnail.svg", alt: "", loading: "lazy" })),
      h("span", { class: "called" }, job.title || job.name),
      h("span", { class: "for" }, job.customer || ""),
      h("span", { class: "facts" }, [job.reference, job.date, size].filter(Boolean).join(" · ")),
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

// The ticket of a job that is not there yet.
class Blank extends Component {
  constructor() {
    super();
    this.state = { said: "", size: "", of: "mat", customer: "", title: "", unit: desk.about.unit || "in", layers: "2", finish: "", wrong: null };
    this.make = this.make.bind(this);
  }

  componentDidMount() {
    learn_shop();
    if (works_here()) this.base.querySelector("textarea").focus();
  }

  async make(event) {
    event.preventDefault();
    if (this.is_making) return;
    this.is_making = true;
    const { said, size, of, customer, title, unit, layers } = this.state;
    try {
      let known = null;
      if (size.trim()) [known] = (await post("/api/sizes", { said: size, unit })).sizes;
      const { name } = await post("/api/jobs",
        { name: "", copy_of: null, unit, customer, title, pictures: said, layers: Number(layers) });
      if (known) await state_size(name, known, of);
      if (this.state.finish) await give_finish(name, this.state.finish);
      desk.fresh = name;
      go_to(name);
    } catch (error) {
      this.setState({ wrong: error.message });
      if (error.status === undefined) failed(error);
    }
    this.is_making = false;
  }

  render(_, { said, size, of, customer, title, unit, layers, finish, wrong }) {
    const finishes = shop.finishes || [];
    const line = (id, label, value, key) => h("div", { class: "field wide" },
      h("label", { for: id }, label),
      h("span", { class: "written" }, h("input", { id, value, autocomplete: "off",
        onInput: (event) => this.setState({ [key]: event.target.value }) })));
    return h("form", { class: "ticket blank", onSubmit: this.make,
      onKeyDown: (event) => { if (event.key === "Enter" && event.ctrlKey) this.make(event); }, "aria-labelledby": "blank" },
      h("h2", { id: "blank", class: "ticket-title" }, say("A new job")),
      h("div", { class: "field wide" },
        h("label", { for: "said" }, say("Pictures, one size a line")),
        h("textarea", {
          id: "said", rows: 6, value: said, placeholder: unit === "in" ? "8 x 10\n8 1/2 x 11 *3" : "210 x 297\n21 x 29,7 cm *3",
          "aria-describedby": wrong ? "blank-wrong" : null,
          onInput: (event) => this.setState({ said: event.target.value, wrong: null }),
        })),
      wrong ? h("p", { class: "refused", id: "blank-wrong", role: "alert" }, wrong) : null,
      h("div", { class: "side-by-side" },
        line("size", say("Size, where it is known"), size, "size"),
        h(Choice, { label: say("which is that of"), value: of, name: "of", options: [["mat", say("the mat")], ["frame", say("the frame (rabbet)")]],
          choose: (value) => this.setState({ of: value }) })),
      h("div", { class: "side-by-side" },
        h(Choice, { label: say("Measured in"), value: unit, name: "unit", options: [["in", "in"], ["mm", "mm"], ["cm", "cm"]],
          choose: (value) => this.setState({ unit: value }) }),
        h(Choice, { label: say("Mat"), value: layers, name: "layers",
          options: [["1", say("single")], ["2", say("double")], ["3", say("triple")]],
          choose: (value) => this.setState({ layers: value }) })),
      finishes.length > 0 ? h(Choice, { label: say("Finish"), value: finish, name: "finish",
        options: [["", say("boards are chosen later")], ...finishes.map((one) => [one.name, one.name])],
        choose: (value) => this.setState({ finish: value }) }) : null,
      line("customer", say("For"), customer, "customer"),
      line("title", say("Title"), title, "title"),
      h("button", { type: "submit", class: "main" }, say("Make this job")));
  }
}

async function give_finish(name, finish) {
  const [{ fingerprint }, { finishes }] = await Promise.all([get(job_path(name)), get("/api/finishes?job=" + encodeURIComponent(name))]);
  await post(job_path(name) + "/edits", { on: fingerprint, edits: finishes.find((one) => one.name === finish).edits });
}

// The borders with which a job begins give way to the size that is known.
async function state_size(name, { width, height }, of) {
  const { fingerprint } = await get(job_path(name));
  const edits = of === "frame" ? [add("frame", { "rabbet-width": width, "rabbet-height": height })]
    : [state("outer.width", width), state("outer.height", height)];
  await post(job_path(name) + "/edits", { on: fingerprint, edits: [remove("border"), ...edits] });
}
