// What is wrong, on the drawing where it is.

import { h } from "./preact.js";
import { desk, redraw } from "./desk.js";
import { on_wall } from "./dimensions.js";
import { Reason, remedies_of } from "./wrong.js";
import { say, unbroken } from "./words.js";

const note_width = 360, of_the_wall = 0.94;

// What a sum that does not close is made of.
export function chain_of({ problems }, measures) {
  const names = new Set(problems.filter((problem) => problem.severity === "error").flatMap((problem) => problem.measures || []));
  return measures.filter((measure) => names.has(measure.name));
}

// What the remedies would free: where one looks for the mistake.
function freed_by(problem) {
  const names = (problem?.remedies || []).flatMap(({ edits }) => edits.map((edit) => edit.name)).filter(Boolean);
  return [...names.filter((name) => !name.startsWith("outer.")), ...names.filter((name) => name.startsWith("outer."))];
}

// At the upper right corner of an opening, or beside the number of a size.
function place_of(problem, job, view, places) {
  if (!view) return null;
  const freed = freed_by(problem).map((name) => places.find((place) => place.measure.name === name)).find(Boolean);
  if (freed) return { x: freed.x, y: freed.y };
  const opening = problem.openings?.length === 1 ? job.openings.find((one) => one.number === problem.openings[0]) : null;
  const dimension = opening?.box ? null : places.find((place) => problem.measures?.includes(place.measure.name));
  if (dimension) return { x: dimension.x + dimension.wide / 2 + 15, y: dimension.y };
  const part = opening?.box || problem.box, box = part ? on_wall(view, part) : null;
  return box ? { x: box.left + box.width - 12, y: box.top + 12 } : null;
}

// Below what it is about, or above it in the lower half of the wall; and always on the wall.
function Note({ problem, place, room }) {
  const half = Math.min(note_width, room.width * of_the_wall) / 2, is_above = place && place.y > room.height / 2;
  return h("div", { class: "pinned " + problem.severity + (is_above ? " above" : ""),
    style: place ? { left: Math.min(Math.max(place.x, half + 4), room.width - half - 4) + "px", top: place.y + (is_above ? -20 : 20) + "px" } : {} },
    h("p", { class: "sentence" }, unbroken(problem.message)),
    problem.remedies?.length > 0 ? h("div", { class: "buttons" }, remedies_of(problem)) : null,
    problem.code ? h(Reason, { code: problem.code }) : null);
}

// Where the sizes do not close, nothing else counts.
export function Marks({ job, view, places, room }) {
  const taken = [], errors = job.problems.filter((problem) => problem.severity === "error");
  return h("div", { class: "marks" }, (errors.length > 0 ? errors : job.problems).map((problem, index) => {
    const place = place_of(problem, job, view, places), key = problem.code + index;
    if (problem.severity === "error") {
      return h("div", { class: place ? "pin" : "pin free", key },
        place ? h("span", { class: "mark-at wrong", style: { left: place.x + "px", top: place.y + "px" }, "aria-hidden": "true" }, "!") : null,
        h(Note, { problem, place, room }));
    }
    if (!place) return null;
    while (taken.some((one) => Math.hypot(one.x - place.x, one.y - place.y) < 26)) place.x += 28;
    taken.push(place);
    const is_open = desk.looked_at === key;
    return h("div", { class: "pin", key },
      h("button", { type: "button", class: "mark-at", style: { left: place.x + "px", top: place.y + "px" },
        "aria-expanded": String(is_open), "aria-label": say("To look at: %1", problem.message),
        onClick: () => { desk.looked_at = is_open ? null : key; redraw(); } }, "!"),
      is_open ? h(Note, { problem, place, room }) : null);
  }));
}
