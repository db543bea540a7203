// What is wrong, on the drawing where it is.

import { h } from "./preact.js";
import { desk, redraw } from "./desk.js";
import { on_wall } from "./dimensions.js";
import { Reason, remedies_of } from "./wrong.js";
import { say } from "./words.js";

function place_of(problem, job, view, places) {
  const dimension = places.find((place) => problem.measures?.includes(place.measure.name));
  if (dimension) return { x: dimension.x, y: dimension.y - 28 };
  if (!view) return null;
  const opening = job.openings.find((one) => problem.openings?.includes(one.number));
  const part = problem.box || opening?.box, box = part ? on_wall(view, part) : null;
  return box ? { x: box.left + box.width - 14, y: box.top + 14 } : null;
}

// Below what it is about, or above it in the lower half of the wall.
function Note({ problem, place, height }) {
  const is_above = place && place.y > height / 2;
  return h("div", { class: "pinned " + problem.severity + (is_above ? " above" : ""),
    style: place ? { left: place.x + "px", top: place.y + (is_above ? -18 : 18) + "px" } : {} },
    h("p", null, problem.message),
    problem.remedies?.length > 0 ? h("div", { class: "buttons" }, remedies_of(problem)) : null,
    problem.code ? h(Reason, { code: problem.code }) : null);
}

export function Marks({ job, view, places, height }) {
  const taken = [];
  return h("div", { class: "marks" }, job.problems.map((problem, index) => {
    const place = place_of(problem, job, view, places), key = problem.code + index;
    if (problem.severity === "error") return h("div", { class: place ? "pin" : "pin free", key }, h(Note, { problem, place, height }));
    if (!place) return null;
    while (taken.some((one) => Math.hypot(one.x - place.x, one.y - place.y) < 26)) place.x += 28;
    taken.push(place);
    const is_open = desk.looked_at === key;
    return h("div", { class: "pin", key },
      h("button", { type: "button", class: "mark-at", style: { left: place.x + "px", top: place.y + "px" },
        "aria-expanded": String(is_open), "aria-label": say("To look at: %1", problem.message),
        onClick: () => { desk.looked_at = is_open ? null : key; redraw(); } }, "!"),
      is_open ? h(Note, { problem, place, height }) : null);
  }));
}
