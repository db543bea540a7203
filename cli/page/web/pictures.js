// Line 1: the pictures, how the mat meets them, and the shape of their openings.

import { Component, h } from "./preact.js";
import { change, desk, failed, seen } from "./desk.js";
import { Button, Choice, Field } from "./fields.js";
import { add, copy, remove, state, take_out, typed } from "./edits.js";
import { job_path, post, send_file } from "./server.js";
import { say } from "./words.js";

export const shapes = () => [
  ["rectangle", say("rectangle")], ["square", say("square")], ["ellipse", say("oval")], ["circle", say("circle")],
  ["arch", say("arch")], ["rounded", say("rounded corners")], ["stepped", say("stepped corners")], ["octagon", say("octagon")],
];

// Corners need a length; a quarter of an inch or five millimetres is a start that one sees.
const first_corner = (unit) => (unit === "in" ? "1/2" : unit === "mm" ? "12" : "1.2");

export function shape_edits(opening, kind, unit) {
  const name = opening.address, edits = [];
  const needs_corner = ["rounded", "stepped", "octagon"].includes(kind);
  const has_corner = opening.shape.corner !== undefined && opening.shape.corner !== null;
  if (has_corner && !needs_corner) edits.push(take_out(name + ".corner"));
  edits.push(kind === "rectangle" ? take_out(name + ".shape") : state(name + ".shape", kind));
  if (needs_corner && !has_corner) edits.push(state(name + ".corner", first_corner(unit)));
  return edits;
}

export function ShapeOf({ opening, hides_label }) {
  const options = shapes();
  if (opening.shape.kind === "outline") options.push(["outline", say("outline of a file")]);
  return h(Choice, {
    label: say("Shape"), value: opening.shape.kind, options, hides_label, name: "shape",
    choose: (kind) => change(shape_edits(opening, kind, seen().unit)),
  });
}

function Sight({ picture }) {
  const name = "picture." + picture.id, floats = picture.float !== null && picture.float !== undefined;
  return h("div", { class: "side-by-side" },
    h(Choice, {
      label: say("The mat"), value: floats ? "float" : "overlap", name: "sight",
      options: [["overlap", say("covers its edge by")], ["float", say("leaves around it")]],
      choose: (kind) => change(kind === "float"
        ? [state(name + ".float", seen().unit === "in" ? "1/4" : seen().unit === "mm" ? "6" : "0.6")]
        : [take_out(name + ".float")]),
    }),
    floats
      ? h(Field, { label: say("Board around it"), value: picture.float, unit: seen().unit, name: "float", key: "float",
        commit: (text) => change([typed(name + ".float", text)]) })
      : h(Field, { label: say("Overlap"), value: picture.overlap, found: say("usual"), unit: seen().unit, name: "overlap", key: "overlap",
        commit: (text) => change([text.trim() ? state(name + ".overlap", text.trim()) : take_out(name + ".overlap")]) }));
}

// Up and down go from picture to picture.
function walk(event) {
  const way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (!way) return;
  event.preventDefault();
  const all = [...event.currentTarget.closest("ul").querySelectorAll(".picture summary")];
  all[all.indexOf(event.currentTarget) + way]?.focus();
}

const send = (file) => send_file(job_path(desk.name) + "/images?file=" + encodeURIComponent(file.name), file);

function FilePicker({ label, name, several, takes }) {
  return h("label", { class: "file" }, label,
    h("input", { type: "file", name, accept: "image/jpeg,image/png", multiple: several, class: "unseen",
      onChange: (event) => { takes([...event.target.files]); event.target.value = ""; } }));
}

async function give_image(picture, [file]) {
  try {
    await change([state("picture." + picture.id + ".image", (await send(file)).path)]);
  } catch (error) {
    failed(error);
  }
}

function Picture({ picture }) {
  const job = seen(), name = "picture." + picture.id;
  const opening = job.openings.find((one) => one.picture === picture.id);
  const side = (label, which) => h(Field, { label, hides_label: true, name: which, value: picture[which].text ?? picture[which], unit: job.unit, key: which,
    commit: (text) => change([state(name + "." + which, text.trim())]) });
  return h("li", { class: "picture" },
    h("details", null,
      h("summary", { onKeyDown: walk },
        picture.image ? h("img", { src: job_path(desk.name) + "/images/" + picture.image.split("/").map(encodeURIComponent).join("/"), alt: "" })
          : h("span", { class: "sheet" }),
        h("span", { class: "called" }, picture.id),
        h("span", { class: "short" }, (picture.width.text ?? picture.width) + " × " + (picture.height.text ?? picture.height))),
      opening ? h(ShapeOf, { opening }) : null,
      h("div", { class: "side-by-side" }, side(say("Width of %1", picture.id), "width"), h("span", { class: "by" }, "×"),
        side(say("Height of %1", picture.id), "height")),
      h(Sight, { picture }),
      h("div", { class: "side-by-side" },
        h(FilePicker, { label: say("Its image..."), name: "image-of", takes: (files) => give_image(picture, files) }),
        h(Button, { kind: "quiet", does: () => change([copy(name)]) }, say("One more like it")),
        h(Button, { kind: "quiet", does: () => change([remove(name)], say("%1 is out of the job.", picture.id)) }, say("Take out")))));
}

// A file that was dropped waits for its size; the other side follows in proportion.
function Dropped({ file, does }) {
  const { width, height } = file.pixels;
  const commit = (which) => async (text) => {
    try {
      const { sizes } = await post("/api/sizes", { said: text + " x " + text, unit: seen().unit,
        keep: { width, height, given: which } });
      return does(sizes[0]);
    } catch (error) {
      return error.message;
    }
  };
  return h("li", { class: "dropped" },
    h("span", { class: "called" }, file.path.replace(/^.*\//, "")),
    h("div", { class: "side-by-side" },
      h(Field, { label: say("Width"), name: "dropped-width", unit: seen().unit, commit: commit("width") }),
      h("span", { class: "by" }, say("or")),
      h(Field, { label: say("Height"), name: "dropped-height", unit: seen().unit, commit: commit("height") })));
}

export class Pictures extends Component {
  constructor() {
    super();
    this.state = { said: "", wrong: null, waiting: [], over: false };
    this.add_said = this.add_said.bind(this);
    this.take_files = this.take_files.bind(this);
  }

  async add_said(event) {
    event.preventDefault();
    const { said } = this.state;
    if (said.trim() === "") return;
    try {
      const { sizes } = await post("/api/sizes", { said, unit: seen().unit });
      const edits = sizes.flatMap(({ width, height, count }) =>
        Array.from({ length: count || 1 }, () => add("picture", { width, height })));
      const wrong = await change(edits, say("Pictures added: %1", edits.length));
      this.setState(wrong ? { wrong } : { said: "", wrong: null });
    } catch (error) {
      this.setState({ wrong: error.message });
    }
  }

  async take_files(files) {
    this.setState({ over: false });
    for (const file of files) {
      try {
        const sent = await send(file);
        this.setState({ waiting: [...this.state.waiting, sent], wrong: null });
      } catch (error) {
        if (error.status === undefined) failed(error);
        else this.setState({ wrong: error.message });
      }
    }
  }

  async hang(file, size) {
    const wrong = await change([add("picture", { width: size.width, height: size.height, image: file.path })]);
    if (!wrong) this.setState({ waiting: this.state.waiting.filter((one) => one !== file) });
    return wrong;
  }

  render(_, { said, wrong, waiting, over }) {
    const job = seen();
    return h("div", {
      class: over ? "takes over" : "takes",
      onDragOver: (event) => { event.preventDefault(); if (!over) this.setState({ over: true }); },
      onDragLeave: (event) => { if (event.target === event.currentTarget) this.setState({ over: false }); },
      onDrop: (event) => { event.preventDefault(); this.take_files(event.dataTransfer.files); },
    },
    h("ul", { class: "pictures" },
      job.pictures.map((picture) => h(Picture, { picture, key: picture.id })),
      waiting.map((file) => h(Dropped, { file, does: (size) => this.hang(file, size), key: file.path }))),
    h("form", { onSubmit: this.add_said },
      h("div", { class: "field wide" },
        h("label", { for: "more" }, say("More pictures, one size a line")),
        h("textarea", { id: "more", rows: 3, value: said, "aria-describedby": wrong ? "more-wrong" : null,
          onInput: (event) => this.setState({ said: event.target.value, wrong: null }),
          onKeyDown: (event) => { if (event.key === "Enter" && event.ctrlKey) this.add_said(event); } })),
      wrong ? h("p", { class: "refused", id: "more-wrong", role: "alert" }, wrong) : null,
      h("div", { class: "side-by-side" },
        h("button", { type: "submit" }, say("Add")),
        h(FilePicker, { label: say("Image files..."), name: "images", several: true, takes: this.take_files })),
      h("p", { class: "hint" }, say("Image files may also be dropped here. They are copied into the job's folder."))));
  }
}
