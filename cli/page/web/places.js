// The places that take a part of the arrangement when it is moved: bars between the parts of every
// row and column, and at the sides of an opening where a row or a column would be made around both.
// In millimetres from the mat's upper left corner.

import { arrangement_of, is_line, part_at } from "./parts.js";

const bar = (where, part, x1, y1, x2, y2) => ({ where, part, x1, y1, x2, y2 });

const reach = 4; // beyond an edge that has no neighbour
const outer_reach = 12; // beyond the edge of the whole

const middle_across = ({ box }) => box.x + box.width / 2;
const middle_down = ({ box }) => box.y + box.height / 2;
const mark_in_ring = 12; // half of its height

// Between the parts of a ring, in their order.
function between_in_ring({ children }, moved) {
  const found = [];
  for (let at = 1; at < children.length; ++at) {
    const before = children[at - 1], next = children[at];
    if (before.address === moved || next.address === moved || !before.box || !next.box) continue;
    const x = (middle_across(before) + middle_across(next)) / 2, y = (middle_down(before) + middle_down(next)) / 2;
    found.push(bar("before", next.address, x, y - mark_in_ring, x, y + mark_in_ring));
  }
  return found;
}

function between(group, moved) {
  const { children, box, kind } = group, found = [];
  if (kind === "ring") return between_in_ring(group, moved);
  if (kind === "places") return []; // a place on the mat has measures, and no neighbours
  for (let at = 0; at <= children.length; ++at) {
    const before = children[at - 1], next = children[at];
    if (before?.address === moved || next?.address === moved) continue;
    const [where, part] = next ? ["before", next.address] : ["after", before.address];
    if (kind === "row") {
      const x = !before ? box.x - reach : !next ? box.x + box.width + reach
        : (before.box.x + before.box.width + next.box.x) / 2;
      found.push(bar(where, part, x, box.y, x, box.y + box.height));
    } else {
      const y = !before ? box.y - reach : !next ? box.y + box.height + reach
        : (before.box.y + before.box.height + next.box.y) / 2;
      found.push(bar(where, part, box.x, y, box.x + box.width, y));
    }
  }
  return found;
}

function above_and_below({ address, box }, off = reach) {
  return [bar("above", address, box.x, box.y - off, box.x + box.width, box.y - off),
    bar("below", address, box.x, box.y + box.height + off, box.x + box.width, box.y + box.height + off)];
}

function left_and_right({ address, box }, off = reach) {
  return [bar("left", address, box.x - off, box.y, box.x - off, box.y + box.height),
    bar("right", address, box.x + box.width + off, box.y, box.x + box.width + off, box.y + box.height)];
}

// A row or a column goes between others; only an opening makes a new one with an opening.
function at_sides(part, parent, is_group) {
  if (!parent) {
    if (part.kind === "row") return above_and_below(part, outer_reach);
    if (part.kind === "column") return left_and_right(part, outer_reach);
    if (part.kind === "places") return [];
    return [...above_and_below(part), ...left_and_right(part)];
  }
  if (part.kind !== "opening" || is_group || !is_line(parent)) return [];
  return parent.kind === "row" ? above_and_below(part) : left_and_right(part);
}

function places_within(moved, part, parent, is_group) {
  if (!part.box || part.address === moved) return [];
  const inner = part.kind === "opening" ? []
    : between(part, moved).concat(part.children.flatMap((child) => places_within(moved, child, part, is_group)));
  return at_sides(part, parent, is_group).concat(inner);
}

export function places_for(moved, job) {
  const whole = arrangement_of(job);
  return whole ? places_within(moved, whole, null, part_at(moved, job)?.kind !== "opening") : [];
}

export const middle_of = (place) => ({ x: (place.x1 + place.x2) / 2, y: (place.y1 + place.y2) / 2 });

// From a point to a bar.
export function distance(place, { x, y }) {
  const near_x = Math.min(Math.max(x, place.x1), place.x2), near_y = Math.min(Math.max(y, place.y1), place.y2);
  return Math.hypot(x - near_x, y - near_y);
}

export const nearest = (places, point) =>
  places.reduce((best, place) => (!best || distance(place, point) < distance(best, point) ? place : best), null);

// The next place in the way of an arrow key: near ahead, and little aside.
export function next_place(places, now, key) {
  const from = middle_of(now), [dx, dy] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[key];
  let best = null, least = Infinity;
  for (const place of places) {
    const to = middle_of(place), ahead = (to.x - from.x) * dx + (to.y - from.y) * dy;
    const aside = Math.abs((to.x - from.x) * dy) + Math.abs((to.y - from.y) * dx);
    if (place === now || ahead <= 0.5) continue;
    if (ahead + 2 * aside < least) [least, best] = [ahead + 2 * aside, place];
  }
  return best || now;
}
