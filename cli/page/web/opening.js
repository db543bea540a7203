// What may be said of one opening: its shape, its own reveals, a V-groove around it.

import { Component, h } from "./preact.js";
import { change, desk, failed, seen } from "./desk.js";
import { Choice, Field, FilePicker } from "./fields.js";
import { Grooves } from "./grooves.js";
import { Reveal } from "./reveals.js";
import { said } from "./lengths.js";
import { state, take_out, written } from "./edits.js";
import { get, job_path, send_file } from "./server.js";
import { say } from "./words.js";

export const shapes = () => [
  ["rectangle", say("rectangle")], ["square", say("square")], ["ellipse", say("oval")], ["circle", say("circle")],
  ["arch", say("arch")], ["rounded", say("rounded corners")], ["stepped", say("stepped corners")], ["octagon", say("octagon")],
  ["outline", say("outline of a file")],
];

// Corners need a length; half an inch or twelve millimetres is a start that one sees.
const first_corner = (unit) => (unit === "in" ? "1/2" : unit === "mm" ? "12" : "1.2");
const has_corner = (kind) => ["rounded", "stepped", "octagon"].includes(kind);

// What belonged to the old shape alone goes with it.
export function shape_edits({ address, shape }, kind, unit) {
  const edits = [];
  if (shape.corner && !has_corner(kind)) edits.push(take_out(address + ".corner"));
  if (shape.rise && kind !== "arch") edits.push(take_out(address + ".rise"));
  if (shape.kind === "outline") edits.push(...[shape.path && take_out(address + ".path"), take_out(address + ".file")].filter(Boolean));
  edits.push(kind === "rectangle" ? take_out(address + ".shape") : state(address + ".shape", kind));
  if (has_corner(kind) && !shape.corner) edits.push(state(address + ".corner", first_corner(unit)));
  return edits;
}

const outline_edits = ({ address, shape }, file, path) => [
  ...["corner", "rise"].filter((one) => shape[one]).map((one) => take_out(address + "." + one)),
  state(address + ".shape", "outline"), state(address + ".file", file), written(address + ".path", path || ""),
];

// The outlines of the SVG files in the job's folder, or one from another file.
class Outline extends Component {
  constructor() {
    super();
    this.state = { outlines: null, wrong: null };
    this.take_file = this.take_file.bind(this);
  }

  async componentDidMount() {
    try {
      const { outlines } = await get(job_path(desk.name) + "/outlines"), sent = this.state.outlines || [];
      this.setState({ outlines: [...outlines.filter(({ path }) => !sent.some((one) => one.path === path)), ...sent] });
    } catch (error) {
      if (error.status === undefined) failed(error);
      else this.setState({ outlines: this.state.outlines || [] });
    }
  }

  async take(file, path) {
    this.setState({ wrong: await change(outline_edits(this.props.opening, file, path)) });
  }

  async take_file([file]) {
    try {
      const sent = await send_file(job_path(desk.name) + "/outlines?file=" + encodeURIComponent(file.name), file);
      this.setState({ outlines: [...(this.state.outlines || []).filter((one) => one.path !== sent.path), sent] });
      if (sent.paths.length === 1) await this.take(sent.path, sent.paths[0]);
    } catch (error) {
      if (error.status === undefined) failed(error);
      else this.setState({ wrong: error.message });
    }
  }

  render({ opening: { shape } }, { outlines, wrong }) {
    const all = (outlines || []).flatMap(({ path, paths }) => paths.map((id) => [JSON.stringify([path, id]),
      path.replace(/^.*\//, "") + (id ? ", " + id : "")]));
    const now = all.find(([key]) => { const [file, id] = JSON.parse(key); return file === shape.file && (id === (shape.path || "") || !shape.path); });
    return h("div", null,
      h("div", { class: "side-by-side" },
        all.length > 0 ? h(Choice, { label: say("Outline"), name: "outline", value: now ? now[0] : "",
          options: now ? all : [["", say("choose one")], ...all], choose: (key) => key && this.take(...JSON.parse(key)) }) : null,
        h(FilePicker, { label: say("SVG file..."), name: "outline-file", accept: "image/svg+xml,.svg", takes: this.take_file })),
      wrong ? h("p", { class: "refused", role: "alert" }, wrong) : null);
  }
}

// An outline is chosen first, and becomes the shape when its file is known.
export class ShapeOf extends Component {
  render({ opening, hides_label }, { asks }) {
    const { shape, address } = opening, { unit } = seen(), kind = asks === address ? "outline" : shape.kind;
    const length = (label, what, found) => h(Field, { label, unit, name: what, value: said(shape[what]), found,
      commit: (text) => change([written(address + "." + what, text)]) });
    return h("div", { class: hides_label ? "" : "side-by-side" },
      h(Choice, { label: say("Shape"), value: kind, options: shapes(), hides_label, name: "shape",
        choose: (chosen) => {
          const waits = chosen === "outline" && shape.kind !== "outline";
          this.setState({ asks: waits ? address : null });
          if (!waits && chosen !== shape.kind) change(shape_edits(opening, chosen, unit));
        } }),
      hides_label ? null : has_corner(kind) ? length(kind === "rounded" ? say("Radius") : say("Cut off by"), "corner")
        : kind === "arch" ? length(say("Rise of the arch"), "rise", say("half round")) : null,
      kind === "outline" ? h(Outline, { opening }) : null);
  }
}

// Where it differs from that of the layer.
function OwnReveal({ opening, layer }) {
  const own = opening.reveals?.[layer.number], name = opening.address + ".reveal." + layer.number;
  const alike = own && ["top", "right", "bottom"].every((side) => own[side].ticks === own.left.ticks);
  return h(Reveal, { label: say("Reveal here: %1", layer.name || say("Layer %1", layer.number)), called: "reveal-" + layer.number + "-of-" + opening.number,
    value: own && { ...own, all: alike ? own.left : null }, found: said(layer.reveal.all) ?? say("as elsewhere"),
    name_of: (side) => name + "." + side });
}

export function MoreOfOpening({ opening }) {
  const under = seen().layers.filter((layer) => layer.reveal);
  return h("details", { class: "more-of-opening" }, h("summary", null, say("Reveal and V-groove here")),
    under.map((layer) => h(OwnReveal, { opening, layer, key: layer.number })),
    h(Grooves, { part: opening.address, grooves: opening.grooves || [], name: "groove-of-" + opening.number }));
}
