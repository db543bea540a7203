// Moving an opening, a row or a column to another place, by the pointer or by arrow keys. A small
// drawing shows what the place that is looked at would make of the piece.

import { change, desk, foresee, redraw, seen, tell } from "./desk.js";
import { move } from "./edits.js";
import { part_at, part_called } from "./parts.js";
import { nearest, next_place, places_for } from "./places.js";
import { say } from "./words.js";

const beyond_a_click = 6;

export function words_for({ where, part }) {
  const beside = part_called(part_at(part));
  return { before: say("Before %1", beside), after: say("After %1", beside), left: say("Left of %1", beside),
    right: say("Right of %1", beside), above: say("Above %1", beside), below: say("Below %1", beside) }[where];
}

let is_looking_ahead = false;

async function look_ahead() {
  if (is_looking_ahead) return;
  is_looking_ahead = true;
  while (desk.moving && desk.moving.foreseen_at !== desk.moving.at) {
    const { moving } = desk, { at } = moving;
    moving.foreseen = await foresee([move(moving.address, at.where, at.part)]);
    moving.foreseen_at = at;
    redraw();
  }
  is_looking_ahead = false;
}

export function begin_move(address) {
  const places = places_for(address, seen()), { box } = part_at(address) || {};
  if (places.length === 0 || !box) return;
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  desk.moving = { address, places, at: nearest(places, from), foreseen: null };
  desk.side = "front";
  tell(say("Arrow keys choose the place, Enter puts it there, Escape gives up."));
  look_ahead();
}

function look_at(place) {
  if (place === desk.moving.at) return;
  desk.moving.at = place;
  tell(words_for(place));
  look_ahead();
}

export function end_move(is_kept) {
  const { address, at } = desk.moving;
  desk.moving = null;
  desk.chosen = null;
  if (is_kept && at) change([move(address, at.where, at.part)], say("Moved."));
  else tell(say("It stays where it was."));
}

export function move_keys(event) {
  if (event.key.startsWith("Arrow")) look_at(next_place(desk.moving.places, desk.moving.at, event.key));
  else if (event.key === "Enter" || event.key === " ") end_move(true);
  else if (event.key === "Escape") end_move(false);
  else return;
  event.preventDefault();
  event.stopPropagation();
}

// `to_mat` brings a pointer's place to millimetres of the mat.
export function drag_part(event, address, to_mat, click) {
  if (event.button !== 0) return;
  const begin = { x: event.clientX, y: event.clientY }, hand = event.currentTarget;
  let is_drag = false;
  hand.setPointerCapture(event.pointerId);

  function follow(moved) {
    if (!is_drag) {
      if (Math.hypot(moved.clientX - begin.x, moved.clientY - begin.y) < beyond_a_click) return;
      begin_move(address);
      is_drag = Boolean(desk.moving);
    }
    if (desk.moving) look_at(nearest(desk.moving.places, to_mat(moved.clientX, moved.clientY)));
  }

  function end(is_kept) {
    hand.removeEventListener("pointermove", follow);
    hand.removeEventListener("pointerup", keep);
    hand.removeEventListener("pointercancel", leave);
    if (!is_drag) { if (is_kept) click(); } else if (desk.moving) end_move(is_kept);
  }

  const keep = () => end(true), leave = () => end(false);
  hand.addEventListener("pointermove", follow);
  hand.addEventListener("pointerup", keep);
  hand.addEventListener("pointercancel", leave);
}
