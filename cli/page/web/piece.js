// The piece on the wall, with all that one may take hold of.

import { Component, h } from "./preact.js";
import { desk, seen, tell } from "./desk.js";
import { Drawing } from "./drawing.js";
import { across, called, dimensions, down, growth, is_strip, line_of, on_wall, opening_of } from "./dimensions.js";
import { drag_measure } from "./dragging.js";
import { begin_move, drag_part, move_keys, words_for } from "./moving.js";
import { Marks, chain_of } from "./marks.js";
import { is_within, part_at, part_called } from "./parts.js";
import { choose } from "./plaque.js";
import { millimetres } from "./lengths.js";
import { Size } from "./size.js";
import { say, unbroken } from "./words.js";

const least_to_work = 520; // pixels of the wall's width
const edge_grip = 12; // pixels, across an edge
const longest_bar = 34; // pixels, of a place that takes what is moved

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

// What a hand on an opening takes hold of: the chosen row or column around it, or itself.
const held_with = (address) => (desk.chosen && is_within(address, desk.chosen) ? desk.chosen : address);

// Up chooses the row or column around what is chosen, down goes back to the opening.
function climb(address, is_up) {
  const now = part_at(is_up ? held_with(address) : address), next = is_up ? now.parent : now;
  if (!next || (is_up && !next.parent)) return;
  choose(next.address);
  tell(part_called(next));
}

function opening_keys(event, address) {
  if (desk.moving || event.ctrlKey || event.altKey || event.metaKey) return;
  if (event.key === "m" || event.key === "M") begin_move(held_with(address));
  else if (event.key === "ArrowUp" || event.key === "ArrowDown") climb(address, event.key === "ArrowUp");
  else return;
  event.preventDefault();
}

function Openings({ job, view, to_mat }) {
  return h("div", { class: "openings" }, job.openings.map((opening) => {
    const { address, number, picture } = opening, press = () => choose(desk.chosen === address ? null : address);
    return h("button", {
      type: "button", class: "opening", style: at(on_wall(view, opening.box)), key: address, name: "opening-" + number,
      "aria-label": picture ? say("Opening %1, %2", number, picture) : say("Opening %1", number),
      "aria-pressed": String(desk.chosen === address),
      onPointerDown: (event) => drag_part(event, held_with(address), to_mat, press),
      onClick: (event) => { if (event.detail === 0) press(); },
      onKeyDown: (event) => opening_keys(event, address),
    }, h("span", { class: "which" }, String(number)));
  }));
}

// The row or column that is chosen or on its way.
function Around({ view }) {
  const part = part_at(desk.moving?.address || desk.chosen);
  if (!part?.box || part.kind === "opening") return null;
  const { left, top, width, height } = on_wall(view, part.box), off = 7;
  return h("rect", { class: "around-part", x: left - off, y: top - off, width: width + 2 * off, height: height + 2 * off });
}

// Every place has a short bar; the one that is looked at is drawn whole.
function Places({ view }) {
  if (!desk.moving) return null;
  return h("g", null, desk.moving.places.map((place, index) => {
    const is_at = place === desk.moving.at;
    const x1 = across(view, place.x1), y1 = down(view, place.y1), x2 = across(view, place.x2), y2 = down(view, place.y2);
    const shown = is_at ? 1 : Math.min(1, longest_bar / Math.hypot(x2 - x1, y2 - y1));
    const x = (x1 + x2) / 2, y = (y1 + y2) / 2, dx = ((x2 - x1) / 2) * shown, dy = ((y2 - y1) / 2) * shown;
    return h("g", { class: is_at ? "place at" : "place", key: index },
      h("line", { class: "around", x1: x - dx, y1: y - dy, x2: x + dx, y2: y + dy }), h("line", { x1: x - dx, y1: y - dy, x2: x + dx, y2: y + dy }));
  }));
}

// What the place would make of the piece, in the corner that is farthest from it.
function Foreseen({ view, room }) {
  const { foreseen, at: place } = desk.moving || {};
  if (!foreseen) return null;
  const x = across(view, (place.x1 + place.x2) / 2), y = down(view, (place.y1 + place.y2) / 2);
  return h("figure", { class: "foreseen", style: { [x < room.width / 2 ? "right" : "left"]: "0", [y < room.height / 2 ? "bottom" : "top"]: "0" } },
    foreseen.mat && foreseen.drawing ? h(Drawing, { svg: foreseen.drawing.svg, mark: "f", called: words_for(place) }) : null,
    foreseen.mat ? h("figcaption", null, foreseen.mat.width.text + " × " + foreseen.mat.height.text + " " + foreseen.unit)
      : h("figcaption", { class: "sentence" }, unbroken(foreseen.problems[0]?.message || "")));
}

// The last layout that closed, as the server tells it.
function closed_by(job) {
  const { stale } = job, was = new Map(stale.openings.map((one) => [one.name, one]));
  return { ...job, ...stale, openings: job.openings.map((one) => ({ ...one, ...was.get(one.name), number: one.number })).filter((one) => one.box) };
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
    const { room } = this;
    if (job.mat) this.closed = job;
    const remembered = job.stale ? closed_by(job) : this.closed?.name === job.name ? this.closed : job;
    const closed = job.mat ? job : remembered, is_old = !job.mat;
    const extent = extent_of(closed);
    if (!extent || !room.width) return h("div", { class: "piece" }, h(Marks, { job, view: null, places: [], room }));
    // While something is dragged, the scale is held: the hand and the board stay together.
    const held = desk.dragged && this.view ? { scale: this.view.scale, left: this.view.left, top: this.view.top } : {};
    const view = this.view = { ...view_of(closed, extent, room), ...held };
    const face = job.frame && closed.mat ? Math.max(0, -extent.left) * 0.5 : 0;
    // The back is shown as the template shows it, with the template's own numbers.
    const is_front = desk.side === "front" && closed.mat, shows_tools = !desk.alone && is_front && !is_old;
    const places = is_front && !desk.alone ? dimensions(closed, view, face, room.width < least_to_work) : [];
    const lines = shows_tools ? desk.moving ? [] : places
      : is_old && is_front ? chain_of(job, closed.measures).map((measure) => ({ measure, ...line_of(measure, view) })) : [];
    const name = job.job.title || job.name;
    return h("div", { class: desk.moving ? "piece moves" : "piece", onKeyDown: (event) => {
      if (desk.moving) move_keys(event);
      else if (event.key === "Escape" && desk.chosen) choose(null);
    } },
      h("div", { class: is_old ? "hung old" : "hung", style: at({ left: view.left + extent.left * view.scale, top: view.top + extent.top * view.scale,
        width: extent.width * view.scale, height: extent.height * view.scale }) },
      closed.drawing ? h(Drawing, { svg: closed.drawing.svg, mark: "p",
        called: desk.side === "front" ? say("%1, from the front", name) : say("%1, from behind", name) }) : null),
      shows_tools ? h(Boards, { job, view }) : null,
      shows_tools ? h(Openings, { job, view, to_mat: this.to_mat }) : null,
      shows_tools ? h(Edges, { job, view }) : null,
      is_front && !desk.alone ? h("svg", { class: is_old ? "lines-drawn wrong" : "lines-drawn", width: room.width, height: room.height, "aria-hidden": "true" },
        lines.filter((place) => place.x1 !== undefined).map((place) => h(Line, { place, key: place.measure.name })),
        shows_tools ? [h(Around, { view }), h(Places, { view })] : null) : null,
      shows_tools && !desk.moving ? h("div", { class: "sizes", role: "group", "aria-label": say("Sizes on the drawing") },
        places.map((place) => h(Size, { measure: place.measure, label: called(job, place.measure), unit: job.unit, x: place.x, y: place.y,
          sign: growth(place.measure), scale: view.scale, key: place.measure.name })),
        places.filter((place) => place.beside && place.measure.along === "x").map((place) =>
          h("span", { class: "times", style: { left: place.x + place.wide / 2 + 6 + "px", top: place.y + "px" }, "aria-hidden": "true", key: "times " + place.measure.name }, "×"))) : null,
      shows_tools ? h(Foreseen, { view, room }) : null,
      desk.alone || desk.moving ? null : h(Marks, { job: closed === job ? job : { ...job, openings: closed.openings }, view: is_front ? view : null, room, places }));
  }
}
