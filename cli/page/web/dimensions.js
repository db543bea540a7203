// Where the dimensions stand on the drawing. Everything is in pixels of the wall; a view says how
// millimetres of the mat come there: { scale, left, top, width, height } with the mat's own size.

import { all_parts, part_called } from "./parts.js";
import { say } from "./words.js";

export const across = (view, x) => view.left + x * view.scale;
export const down = (view, y) => view.top + y * view.scale;

export function on_wall(view, box) {
  return { left: across(view, box.x), top: down(view, box.y), width: box.width * view.scale, height: box.height * view.scale };
}

const letter = 7.2, line_height = 25;
const opening_number = 28; // the round mark in an opening's corner
const between = 12; // from a width to the height beside it
export const label_width = (measure) => Math.max(24, measure.text.length * letter + 11);

// The opening whose size that is, if it is one.
export function opening_of(job, measure) {
  const name = measure.name.replace(/\.(width|height)$/, "");
  if (name === measure.name || name === "outer") return null;
  return job.openings.find((one) => one.name === name) || null;
}

const is_reveal = (measure) => /(^|\.)reveal(\.|$|-)/.test(measure.name);

export function called(job, measure) {
  const opening = opening_of(job, measure);
  const is_width = measure.name.endsWith(".width");
  if (opening) return is_width ? say("Width of opening %1", opening.number) : say("Height of opening %1", opening.number);
  const known = {
    "outer.width": say("Width of the mat"), "outer.height": say("Height of the mat"),
    "border.left": say("Left border"), "border.top": say("Top border"),
    "border.right": say("Right border"), "border.bottom": say("Bottom border"),
  }[measure.name];
  if (known) return known;
  if (is_reveal(measure)) return say("Reveal");
  const [, owner, part] = measure.name.match(/^(.+)\.(across|down|left|top|right|bottom)$/) || [];
  if (part === "across") return say("Width of the ring");
  if (part === "down") return say("Height of the ring");
  const placed = owner && (job.openings.find((one) => one.name === owner) || all_parts(job).find((one) => one.name === owner));
  if (placed) return from_edge(part, placed.number ? say("opening %1", placed.number) : part_called(placed));
  const gap = gap_between(job, measure);
  if (gap) return say("Gap between %1 and %2", ...gap.map(part_called));
  return measure.along === "x" ? say("Gap, across") : say("Gap, down");
}

// Of a part at a place of its own on the mat.
function from_edge(side, part) {
  switch (side) {
    case "left": return say("From the left edge to %1", part);
    case "top": return say("From the top edge to %1", part);
    case "right": return say("From the right edge to %1", part);
    default: return say("From the bottom edge to %1", part);
  }
}

// The parts on both sides of a gap that goes by its place: row.top.gap.2, arrange.1.gap.1.
function gap_between(job, { name }) {
  const [, group, number] = name.match(/^(.+)\.gap\.(\d+)$/) || [];
  const part = group && all_parts(job).find((one) => one.name === group || one.address === group);
  const pair = part?.children?.slice(number - 1, Number(number) + 1);
  return pair?.length === 2 ? pair : null;
}

export const is_strip = (job, measure) => !measure.name.startsWith("outer.") && !opening_of(job, measure) && !is_reveal(measure);

// +1 where the measure grows to the right or down, -1 where it grows the other way.
export const growth = (measure) => (/\.(right|bottom)$/.test(measure.name) && !/reveal/.test(measure.name) ? -1 : 1);

function outer_line(measure, view, around) {
  const room = around * view.scale + (measure.along === "x" ? 24 : 34);
  if (measure.along === "x") {
    const y = down(view, view.height) + room;
    return line(across(view, measure.from), y, across(view, measure.to), y);
  }
  const x = view.left + view.width * view.scale + room;
  return line(x, down(view, measure.from), x, down(view, measure.to));
}

// The line of a measure where it lies on the mat.
export const line_of = (measure, view) => (measure.along === "x"
  ? line(across(view, measure.from), down(view, measure.at), across(view, measure.to), down(view, measure.at))
  : line(across(view, measure.at), down(view, measure.from), across(view, measure.at), down(view, measure.to)));

function line(x1, y1, x2, y2) {
  return { x1, y1, x2, y2, x: (x1 + x2) / 2, y: (y1 + y2) / 2 };
}

// At the foot of the opening, so that the picture is seen: side by side, or one above the other.
function in_opening(opening, measure, pair, view) {
  const box = on_wall(view, opening.box), middle = box.left + box.width / 2, foot = box.top + box.height - 17;
  const [wide, high] = pair.map((one) => (one ? label_width(one) : 0));
  const is_width = measure.along === "x";
  if (wide + high + between + 8 <= box.width) {
    const begin = middle - (wide + between + high) / 2;
    return { x: is_width ? begin + wide / 2 : begin + wide + between + high / 2, y: foot, beside: true };
  }
  return { x: middle, y: is_width ? foot - line_height : foot };
}

// A reveal is a narrow strip at the edge of an opening: its number stands within the opening, beside
// the strip, and where that is at the left beside the opening's own number.
function beside_strip(measure, view, job) {
  const place = line_of(measure, view);
  const near = (box) => Math.hypot(box.left + box.width / 2 - place.x, box.top + box.height / 2 - place.y);
  const boxes = job.openings.filter((one) => one.box).map((one) => on_wall(view, one.box));
  const box = boxes.reduce((best, one) => (!best || near(one) < near(best) ? one : best), null);
  if (!box) return place;
  if (measure.along === "x") {
    const side = box.left + box.width / 2 > place.x ? 1 : -1, edge = Math[side > 0 ? "max" : "min"](place.x1, place.x2);
    const half = label_width(measure) / 2;
    return side > 0 ? { ...place, x: edge + opening_number + half, y: box.top + 15 } : { ...place, x: edge - half - 4 };
  }
  const side = box.top + box.height / 2 > place.y ? 1 : -1, edge = Math[side > 0 ? "max" : "min"](place.y1, place.y2);
  return { ...place, y: edge + side * (line_height / 2 + 4) };
}

const overlaps = (a, b) => Math.abs(a.x - b.x) < (a.wide + b.wide) / 2 && Math.abs(a.y - b.y) < line_height - 3;

// A label that would cover another one slides along its neighbour's free side.
function without_collision(place, placed) {
  const steps = [0, 1, -1, 2, -2, 3, -3].map((step) => step * line_height);
  const along_x = place.x2 !== undefined && place.y1 === place.y2;
  for (const step of steps) {
    const tried = along_x ? { ...place, y: place.y + step, y1: place.y1 + step, y2: place.y2 + step }
      : place.x2 !== undefined ? { ...place, x: place.x + step * 1.6, x1: place.x1 + step * 1.6, x2: place.x2 + step * 1.6 } : place;
    if (!placed.some((other) => overlaps(tried, other))) return tried;
  }
  return place;
}

// In the order in which one reads a mat: outside, borders, gaps, openings. `around` is the width of
// what lies around the mat, in millimetres. Where the wall is as small as a telephone's, which is for
// looking, the outer sizes stand alone.
export function dimensions(job, view, around, is_for_looking) {
  const rank = (measure) => (measure.name.startsWith("outer.") ? 0 : measure.name.startsWith("border.") ? 1
    : is_reveal(measure) ? 4 : opening_of(job, measure) ? 3 : 2);
  const shown = is_for_looking ? job.measures.filter((measure) => measure.name.startsWith("outer.")) : job.measures;
  const sorted = shown.map((measure, order) => ({ measure, order, rank: rank(measure) }))
    .sort((a, b) => a.rank - b.rank || a.order - b.order);
  const placed = [];
  for (const { measure, rank: kind } of sorted) {
    let place;
    if (kind === 0) {
      place = outer_line(measure, view, around);
    } else if (kind === 3) {
      const opening = opening_of(job, measure), base = measure.name.replace(/\.(width|height)$/, "");
      const pair = ["width", "height"].map((side) => job.measures.find((one) => one.name === base + "." + side));
      place = in_opening(opening, measure, pair, view);
    } else if (kind === 4) {
      place = beside_strip(measure, view, job);
    } else {
      place = line_of(measure, view);
    }
    const whole = { measure, wide: label_width(measure), kind, ...place };
    placed.push(kind >= 3 ? whole : without_collision(whole, placed));
  }
  return placed;
}
