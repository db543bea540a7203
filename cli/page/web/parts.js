// The parts of an arrangement: openings, and the rows and columns that hold them.

import { seen } from "./desk.js";
import { say } from "./words.js";

// The arrangement with the box and the parent of every part.
function with_boxes(part, openings, parent) {
  const whole = { ...part, parent };
  if (part.kind === "opening") whole.box = openings.find((one) => one.number === part.number)?.box;
  else whole.children = part.children.map((child) => with_boxes(child, openings, whole));
  return whole;
}

export const arrangement_of = ({ arrange, openings }) => (arrange ? with_boxes(arrange, openings, null) : null);

const flat = (part) => [part, ...(part.children || []).flatMap(flat)];

export const all_parts = (job) => {
  const whole = arrangement_of(job);
  return whole ? flat(whole) : [];
};

export function part_at(address, job = seen()) {
  return all_parts(job).find((part) => part.address === address) || null;
}

export const numbers_of = (part) => flat(part).filter((one) => one.kind === "opening").map((one) => one.number);

// "opening 3", "row 1, 2, 3"
export function part_called(part) {
  const numbers = numbers_of(part).join(", ");
  switch (part.kind) {
    case "opening": return say("opening %1", numbers);
    case "row": return say("row %1", numbers);
    case "ring": return say("ring %1", numbers);
    case "places": return say("places %1", numbers);
    default: return say("column %1", numbers);
  }
}

// Whose parts stand in a line, with gaps between them.
export const is_line = ({ kind }) => kind === "row" || kind === "column";

export const is_within = (address, group) => address.startsWith(group + ".");
