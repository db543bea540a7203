// Line 1: the pictures, how the mat meets them, and the shape of their openings.

import { Component, h } from "./preact.js";
import { change, desk, failed, seen } from "./desk.js";
import { Dropped } from "./dropped.js";
import { Button, Choice, Field, FilePicker } from "./fields.js";
import { said } from "./lengths.js";
import { MoreOfOpening, ShapeOf } from "./opening.js";
import { add, copy, remove, state, take_out, typed } from "./edits.js";
import { job_path, post, send_file } from "./server.js";
import { say } from "./words.js";

function Sight({ picture }) {
  const name = "picture." + picture.id, floats = picture.float !== null && picture.float !== undefined;
  return h("div", { class: "side-by-side" },
    h(Choice, {
      label: say("The mat"), value: floats ? "float" : "overlap", name: "sight",
      options: [["overlap", say("covers its edge")], ["float", say("leaves around it")]],
      choose: (kind) => change(kind === "float"
        ? [state(name + ".float", seen().unit === "in" ? "1/4" : seen().unit === "mm" ? "6" : "0.6")]
        : [take_out(name + ".float")]),
    }),
    floats
      ? h(Field, { label: say("Board around it"), value: said(picture.float), unit: seen().unit, name: "float", key: "float",
        commit: (text) => change([typed(name + ".float", text)]) })
      : h(Field, { label: say("Overlap"), value: said(picture.overlap), found: say("usual"), unit: seen().unit, name: "overlap", key: "overlap",
        commit: (text) => change([text.trim() ? state(name + ".overlap", text.trim()) : take_out(name + ".overlap")]) }));
}

// Up and down go from picture to picture.
function walk(event) {
  const way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (!way) return;
  event.preventDefault();
  const all = [...event.currentTarget.closest("ul").querySelectorAll(".picture > details > summary")];
  all[all.indexOf(event.currentTarget) + way]?.focus();
}

export const images = "image/jpeg,image/png";
export const send = (file, job = desk.name) => send_file(job_path(job) + "/images?file=" + encodeURIComponent(file.name), file);

const image_address = (path) => job_path(desk.name) + "/images/" + path.split("/").map(encodeURIComponent).join("/") + "?longest=128";

async function give_image(picture, [file]) {
  try {
    await change([state("picture." + picture.id + ".image", (await send(file)).path)]);
  } catch (error) {
    failed(error);
  }
}

// The slip of one opening is unfolded by its fold, or by "More" under the piece.
function fold(address) {
  return { open: desk.unfolded === address, onToggle: ({ target }) => {
    if (!target.open && desk.unfolded === address) desk.unfolded = null;
  } };
}

function Picture({ picture }) {
  const job = seen(), name = "picture." + picture.id;
  const openings = job.openings.filter((one) => one.picture === picture.id);
  const side = (label, which) => h(Field, { label, hides_label: true, name: which, value: said(picture[which]), unit: job.unit, key: which,
    commit: (text) => change([state(name + "." + which, text.trim())]) });
  return h("li", { class: "picture" },
    h("details", fold(openings[0]?.address),
      h("summary", { onKeyDown: walk },
        picture.image ? h("img", { src: image_address(picture.image), alt: "" })
          : h("span", { class: "sheet" }),
        h("span", { class: "called" }, picture.id),
        h("span", { class: "short" }, said(picture.width) + " × " + said(picture.height))),
      h("div", null, openings.map((opening) => h(ShapeOf, { opening, key: opening.address }))),
      h("div", { class: "side-by-side" }, side(say("Width of %1", picture.id), "width"), h("span", { class: "by" }, "×"),
        side(say("Height of %1", picture.id), "height")),
      h(Sight, { picture }),
      h("div", null, openings.map((opening) => h(MoreOfOpening, { opening, key: opening.address }))),
      h("div", { class: "side-by-side" },
        h(FilePicker, { label: say("Its image..."), name: "image-of", accept: images, takes: (files) => give_image(picture, files) }),
        h(Button, { kind: "quiet", does: () => change([copy(name)]) }, say("One more like it")),
        h(Button, { kind: "quiet", does: () => change([remove(name)], say("%1 is out of the job.", picture.id)) }, say("Take out")))));
}

// An opening without a picture, such as one for a title.
function Window({ opening }) {
  const { address, stated } = opening, { unit } = seen();
  const side = (label, which) => h(Field, { label, name: which, value: said(stated[which]), found: say("found"), unit, key: which,
    commit: (text) => change([state(address + "." + which, text.trim() || "free")]) });
  const size = [stated.width, stated.height].map((length) => said(length) ?? say("free")).join(" × ");
  return h("li", { class: "picture" },
    h("details", fold(address),
      h("summary", { onKeyDown: walk }, h("span", { class: "sheet" }), h("span", { class: "called" }, opening.id || say("Opening %1", opening.number)),
        h("span", { class: "short" }, size)),
      h(ShapeOf, { opening }),
      h("div", { class: "side-by-side" }, side(say("Width"), "width"), h("span", { class: "by" }, "×"), side(say("Height"), "height")),
      h(MoreOfOpening, { opening }),
      h("div", { class: "side-by-side" },
        h(Button, { kind: "quiet", does: () => change([copy(address)]) }, say("One more like it")),
        h(Button, { kind: "quiet", does: () => change([remove(address)]) }, say("Take out")))));
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
        const sent = { ...await send(file), src: URL.createObjectURL(file) }; // it is no picture of the job yet
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
    waiting.length > 0 ? h("ul", { class: "waiting" }, waiting.map((file) => h("li", { key: file.path }, h(Dropped, { file, unit: job.unit, src: file.src,
      does: (size) => this.hang(file, size), leave: () => this.setState({ waiting: waiting.filter((one) => one !== file) }) })))) : null,
    h("ul", { class: "pictures" },
      job.pictures.map((picture) => h(Picture, { picture, key: picture.id })),
      job.openings.filter((one) => !one.picture).map((opening) => h(Window, { opening, key: opening.address }))),
    h("form", { onSubmit: this.add_said },
      h("div", { class: "field wide" },
        h("label", { for: "more" }, say("More pictures, one size a line")),
        h("textarea", { id: "more", rows: 3, value: said, "aria-describedby": wrong ? "more-wrong" : null,
          onInput: (event) => this.setState({ said: event.target.value, wrong: null }),
          onKeyDown: (event) => { if (event.key === "Enter" && event.ctrlKey) this.add_said(event); } })),
      wrong ? h("p", { class: "refused", id: "more-wrong", role: "alert" }, wrong) : null,
      h("div", { class: "side-by-side" },
        h("button", { type: "submit" }, say("Add")),
        h(FilePicker, { label: say("Image files..."), name: "images", accept: images, several: true, takes: this.take_files })),
      h("p", { class: "hint" }, say("Image files may also be dropped here. They are copied into the job's folder."))));
  }
}
