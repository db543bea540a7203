// The piece on the wall, with all that one may take hold of.

import { Component, h } from "./preact.js";
import { desk, redraw, seen } from "./desk.js";
import { Drawing } from "./drawing.js";
import { across, called, dimensions, down, growth, is_strip, on_wall, opening_of } from "./dimensions.js";
import { drag_measure } from "./dragging.js";
import { begin_move, drag_opening, move_keys } from "./moving.js";
import { Marks } from "./marks.js";
import { millimetres } from "./lengths.js";
import { Size } from "./size.js";
import { say } from "./words.js";

const least_to_work = 520; // pixels of the wall's width
const edge_grip = 12; // pixels, across an edge

// What the drawing shows, in millimetres of the mat.
function extent_of({ drawing, extent }) {
  const [left, top, width, height] = (drawing?.svg.match(/viewBox="([^"]+)"/)?.[1] || "").split(/[ ,]+/).map(Number);
  return height > 0 ? { left, top, width, height } : extent;
}

function view_of(job, extent, room) {
  const is_bare = desk.alone || desk.side === "back", beside = is_bare ? 0 : 64, below = is_bare ? 0 : 28;
  const scale = Math.min((room.width - beside) / extent.width, (room.height - below) / extent.height);
  return {
    scale,
    left: (room.width - beside - extent.width * scale) / 2 - extent.left * scale,
    top: (room.height - below - extent.height * scale) / 2 - extent.top * scale,
    width: job.mat ? millimetres(job.mat.width.ticks) : 0,
    height: job.mat ? millimetres(job.mat.height.ticks) : 0,
  };
}

const at = ({ left, top, width, height }) => ({ left: left + "px", top: top + "px", width: width + "px", height: height + "px" });

function Line({ place }) {
  const { x1, y1, x2, y2 } = place, tick = 5;
  const ends = y1 === y2 ? `M${x1} ${y1 - tick}v${2 * tick}M${x2} ${y2 - tick}v${2 * tick}` : `M${x1 - tick} ${y1}h${2 * tick}M${x2 - tick} ${y2}h${2 * tick}`;
  const d = `M${x1} ${y1}L${x2} ${y2}${ends}`;
  return h("g", { class: place.measure.name === desk.dragged ? "dimension dragged" : "dimension" }, h("path", { class: "around", d }), h("path", { d }));
}

// The strips of board that one takes hold of: borders and gaps.
function Boards({ job, view }) {
  const strips = [];
  for (const measure of job.measures) {
    if (!is_strip(job, measure)) continue;
    const long = measure.name.startsWith("border.");
    const a = measure.along === "x" ? across(view, measure.from) : down(view, measure.from);
    const b = measure.along === "x" ? across(view, measure.to) : down(view, measure.to);
    const begin = Math.min(a, b), width = Math.abs(b - a);
    const half = Math.max(30, 0.5 * view.scale * 60);
    const box = measure.along === "x"
      ? { left: begin, width, top: long ? view.top : down(view, measure.at) - half, height: long ? view.height * view.scale : 2 * half }
      : { top: begin, height: width, left: long ? view.left : across(view, measure.at) - half, width: long ? view.width * view.scale : 2 * half };
    strips.push(h("div", {
      class: "grip board " + measure.along, style: at(box), key: measure.name, "data-grip": measure.name,
      onPointerDown: (event) => drag_measure(event, { measure, sign: growth(measure), scale: view.scale }),
    }));
  }
  return h("div", { class: "strips" }, strips);
}

// The edges of openings and of the mat.
function Edges({ job, view }) {
  const edges = [], half = edge_grip / 2;
  for (const measure of job.measures) {
    const opening = opening_of(job, measure), is_outer = measure.name.startsWith("outer.");
    if (!opening && !is_outer) continue;
    const box = on_wall(view, opening ? opening.box : { x: 0, y: 0, width: view.width, height: view.height });
    const sides = measure.along === "x" ? [[box.left, -1], [box.left + box.width, 1]] : [[box.top, -1], [box.top + box.height, 1]];
    for (const [side, sign] of is_outer ? sides.slice(1) : sides) {
      const place = measure.along === "x" ? { left: side - half, width: edge_grip, top: box.top, height: box.height }
        : { top: side - half, height: edge_grip, left: box.left, width: box.width };
      edges.push(h("div", {
        class: "grip edge " + measure.along, style: at(place), key: measure.name + sign, "data-grip": measure.name + (sign > 0 ? "+" : "-"),
        onPointerDown: (event) => drag_measure(event, { measure, sign, scale: view.scale }),
      }));
    }
  }
  return h("div", { class: "edges" }, edges);
}

function Openings({ job, view, to_mat }) {
  return h("div", { class: "openings" }, job.openings.map((opening) => {
    const choose = () => { desk.chosen = desk.chosen === opening.address ? null : opening.address; redraw(); };
    return h("button", {
      type: "button", class: "opening", style: at(on_wall(view, opening.box)), key: opening.address, name: "opening-" + opening.number,
      "aria-label": opening.picture ? say("Opening %1, %2", opening.number, opening.picture) : say("Opening %1", opening.number),
      "aria-pressed": String(desk.chosen === opening.address),
      onPointerDown: (event) => drag_opening(event, opening.address, to_mat, choose),
      onClick: (event) => { if (event.detail === 0) choose(); },
      onKeyDown: (event) => {
        if (desk.moving) move_keys(event);
        else if (event.key === "m" || event.key === "M") begin_move(opening.address);
      },
    }, h("span", { class: "which" }, String(opening.number)));
  }));
}

function Places({ view }) {
  if (!desk.moving) return null;
  return h("g", null, desk.moving.places.map((place, index) => h("line", {
    class: place === desk.moving.at ? "place at" : "place", key: index,
    x1: across(view, place.x1), y1: down(view, place.y1), x2: across(view, place.x2), y2: down(view, place.y2),
  })));
}

export class Piece extends Component {
  constructor() {
    super();
    this.room = { width: 0, height: 0 };
    this.to_mat = this.to_mat.bind(this);
  }

  componentDidMount() {
    this.watch = new ResizeObserver(([{ contentRect }]) => {
      this.room = { width: contentRect.width, height: contentRect.height };
      this.forceUpdate();
    });
    this.watch.observe(this.base);
  }

  componentWillUnmount() { this.watch.disconnect(); }

  to_mat(x, y) {
    const place = this.base.getBoundingClientRect(), { view } = this;
    return { x: (x - place.left - view.left) / view.scale, y: (y - place.top - view.top) / view.scale };
  }

  render() {
    // Where the sizes do not close, the last drawing that did stays on the wall.
    let job = seen();
    if (job.mat) this.closed = job;
    else if (this.closed?.name === job.name) job = { ...job, extent: this.closed.extent, drawing: this.closed.drawing };
    const extent = extent_of(job);
    if (!extent || !this.room.width) return h("div", { class: "piece" }, h(Marks, { job, view: null, places: [] }));
    // While something is dragged, the scale is held: the hand and the board stay together.
    const held = desk.dragged && this.view ? { scale: this.view.scale, left: this.view.left, top: this.view.top } : {};
    const view = this.view = { ...view_of(job, extent, this.room), ...held };
    const face = job.frame && job.mat ? Math.max(0, -extent.left) * 0.5 : 0;
    // The back is shown as the template shows it, with the template's own numbers.
    const shows_tools = !desk.alone && job.mat && desk.side === "front";
    const places = shows_tools ? dimensions(job, view, face, this.room.width < least_to_work) : [];
    const name = job.job.title || job.name;
    return h("div", { class: desk.moving ? "piece moves" : "piece" },
      h("div", { class: job.mat ? "hung" : "hung old", style: at({ left: view.left + extent.left * view.scale, top: view.top + extent.top * view.scale,
        width: extent.width * view.scale, height: extent.height * view.scale }) },
      job.drawing ? h(Drawing, { svg: job.drawing.svg, mark: "p",
        called: desk.side === "front" ? say("%1, from the front", name) : say("%1, from behind", name) }) : null),
      shows_tools ? h(Boards, { job, view }) : null,
      shows_tools ? h(Openings, { job, view, to_mat: this.to_mat }) : null,
      shows_tools ? h(Edges, { job, view }) : null,
      shows_tools ? h("svg", { class: "lines-drawn", width: this.room.width, height: this.room.height, "aria-hidden": "true" },
        desk.moving ? null : places.filter((place) => place.x1 !== undefined).map((place) => h(Line, { place, key: place.measure.name })),
        h(Places, { view })) : null,
      shows_tools && !desk.moving ? h("div", { class: "sizes", role: "group", "aria-label": say("Sizes on the drawing") },
        places.map((place) => h(Size, { measure: place.measure, label: called(job, place.measure), unit: job.unit, x: place.x, y: place.y,
          sign: growth(place.measure), scale: view.scale, key: place.measure.name })),
        places.filter((place) => place.beside && place.measure.along === "x").map((place) =>
          h("span", { class: "times", style: { left: place.x + place.wide / 2 + 6 + "px", top: place.y + "px" }, "aria-hidden": "true", key: "times " + place.measure.name }, "×"))) : null,
      desk.alone ? null : h(Marks, { job, view: desk.side === "front" ? view : null, height: this.room.height,
        places: job.mat || !this.closed ? places : dimensions(this.closed, view, face) }));
  }
}
