// The ticket of a job that is not there yet: its pictures as sizes or as image files, and what is known
// of the rest.

import { Component, h } from "./preact.js";
import { desk, failed, go_to, works_here } from "./desk.js";
import { learn_shop, shop } from "./boards.js";
import { Dropped } from "./dropped.js";
import { Button, Choice, FilePicker } from "./fields.js";
import { add, remove, state } from "./edits.js";
import { images, send } from "./pictures.js";
import { get, job_path, post } from "./server.js";
import { say } from "./words.js";

export class Blank extends Component {
  constructor() {
    super();
    this.state = { said: "", size: "", of: "mat", customer: "", title: "", unit: desk.about.unit || "in", layers: "2", finish: "", files: [], over: false, wrong: null };
    this.make = this.make.bind(this);
  }

  componentDidMount() {
    learn_shop();
    if (works_here()) this.base.querySelector("textarea").focus();
  }

  async make(event) {
    event.preventDefault();
    if (this.is_making) return;
    const { said, size, of, customer, title, unit, layers, files } = this.state;
    if (files.some((file) => !file.size)) {
      this.setState({ wrong: say("Say the size of each image, or leave it out.") });
      return;
    }
    this.is_making = true;
    try {
      let known = null;
      if (size.trim()) [known] = (await post("/api/sizes", { said: size, unit })).sizes;
      const { name } = await post("/api/jobs",
        { name: "", copy_of: null, unit, customer, title, pictures: [said, ...files.map(said_size)].join("\n"), layers: Number(layers) });
      if (known) await state_size(name, known, of);
      if (files.length > 0) await give_images(name, files);
      if (this.state.finish) await give_finish(name, this.state.finish);
      desk.fresh = name;
      go_to(name);
    } catch (error) {
      this.setState({ wrong: error.message });
      if (error.status === undefined) failed(error);
    }
    this.is_making = false;
  }

  async take_files(taken) {
    const looked_at = await Promise.all(taken.map(async (file) => {
      try {
        const { width, height } = await createImageBitmap(file); // as it hangs upright
        return { file, path: file.name, pixels: { width, height }, src: URL.createObjectURL(file) };
      } catch {
        return null;
      }
    }));
    const files = looked_at.filter(Boolean);
    this.setState({ files: [...this.state.files, ...files], over: false,
      wrong: files.length < taken.length ? say("What is no image was left out.") : null });
  }

  put(file, size) {
    this.setState({ files: this.state.files.map((one) => (one === file ? { ...one, size } : one)), wrong: null });
    return null;
  }

  render(_, { said, size, of, customer, title, unit, layers, finish, files, over, wrong }) {
    const finishes = shop.finishes || [];
    const line = (id, label, value, key) => h("div", { class: "field wide" },
      h("label", { for: id }, label),
      h("span", { class: "written" }, h("input", { id, value, autocomplete: "off",
        onInput: (event) => this.setState({ [key]: event.target.value }) })));
    const leave = (file) => () => this.setState({ files: files.filter((one) => one !== file), wrong: null });
    return h("form", { class: over ? "ticket blank takes over" : "ticket blank", onSubmit: this.make,
      onDragOver: (event) => { event.preventDefault(); if (!over) this.setState({ over: true }); },
      onDragLeave: (event) => { if (event.target === event.currentTarget) this.setState({ over: false }); },
      onDrop: (event) => { event.preventDefault(); this.take_files([...event.dataTransfer.files]); },
      onKeyDown: (event) => { if (event.key === "Enter" && event.ctrlKey) this.make(event); }, "aria-labelledby": "blank" },
      h("h2", { id: "blank", class: "ticket-title" }, say("A new job")),
      h("div", { class: "field wide" },
        h("div", { class: "said-head" }, h("label", { for: "said" }, say("Pictures, one size a line")),
          h(FilePicker, { label: say("Image files..."), name: "images", accept: images, several: true, takes: (taken) => this.take_files(taken) })),
        h("textarea", {
          id: "said", rows: files.length > 0 ? 3 : 5, value: said, placeholder: unit === "in" ? "8 x 10\n8 1/2 x 11 *3" : "210 x 297\n21 x 29,7 cm *3",
          "aria-describedby": wrong ? "blank-wrong" : null,
          onInput: (event) => this.setState({ said: event.target.value, wrong: null }),
        })),
      wrong ? h("p", { class: "refused", id: "blank-wrong", role: "alert" }, wrong) : null,
      files.length > 0 ? h("ul", { class: "waiting" }, files.map((file) => h("li", { key: file.src }, file.size
        ? h("div", { class: "dropped dropped-head" }, h("img", { src: file.src, alt: "" }),
          h("p", null, h("span", { class: "called" }, file.path), h("br"), file.size.width + " × " + file.size.height + " " + unit),
          h(Button, { kind: "quiet", does: leave(file), says: say("Leave %1 out", file.path) }, say("Leave out")))
        : h(Dropped, { file, unit, src: file.src, does: (found) => this.put(file, found), leave: leave(file) })))) : null,
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
      h("div", { class: "side-by-side" }, line("customer", say("For"), customer, "customer"), line("title", say("Title"), title, "title")),
      h("button", { type: "submit", class: "main" }, say("Make this job")));
  }
}

const said_size = ({ size }) => size.width + " x " + size.height;

// Those of files are the job's last pictures.
async function give_images(name, files) {
  const { fingerprint, pictures } = await get(job_path(name)), first = pictures.length - files.length, edits = [];
  for (const [place, { file }] of files.entries()) {
    edits.push(state("picture." + pictures[first + place].id + ".image", (await send(file, name)).path));
  }
  await post(job_path(name) + "/edits", { on: fingerprint, edits });
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
