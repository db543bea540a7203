// Moving an opening to another place, by the pointer or by arrow keys.

import { change, desk, redraw, seen, tell } from "./desk.js";
import { move } from "./edits.js";
import { nearest, next_place, places_for } from "./places.js";
import { say } from "./words.js";

const beyond_a_click = 6;

export const opening_at = (address) => seen().openings.find((one) => one.address === address);

function words_for({ where, part }) {
  const opening = opening_at(part);
  if (!opening) return say("Beside the others");
  return { before: say("Before opening %1", opening.number), after: say("After opening %1", opening.number),
    left: say("Left of opening %1", opening.number), right: say("Right of opening %1", opening.number),
    above: say("Above opening %1", opening.number), below: say("Below opening %1", opening.number) }[where];
}

export function begin_move(address) {
  const places = places_for(address, seen());
  const opening = opening_at(address);
  if (places.length === 0 || !opening) return;
  const from = { x: opening.box.x + opening.box.width / 2, y: opening.box.y + opening.box.height / 2 };
  desk.moving = { address, places, at: nearest(places, from), hand: null };
  desk.side = "front";
  tell(say("Arrow keys choose the place, Enter puts it there, Escape gives up."));
}

function look_at(place, hand) {
  desk.moving.hand = hand;
  if (place === desk.moving.at) { redraw(); return; }
  desk.moving.at = place;
  tell(words_for(place));
}

export function end_move(is_kept) {
  const { address, at } = desk.moving;
  desk.moving = null;
  desk.chosen = null;
  if (is_kept && at) change([move(address, at.where, at.part)], say("Moved."));
  else tell(say("It stays where it was."));
}

export function move_keys(event) {
  if (!desk.moving) return;
  if (event.key.startsWith("Arrow")) look_at(next_place(desk.moving.places, desk.moving.at, event.key), null);
  else if (event.key === "Enter" || event.key === " ") end_move(true);
  else if (event.key === "Escape") end_move(false);
  else return;
  event.preventDefault();
  event.stopPropagation();
}

// `to_mat` brings a pointer's place to millimetres of the mat.
export function drag_opening(event, address, to_mat, click) {
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
    if (!desk.moving) return;
    const point = to_mat(moved.clientX, moved.clientY);
    look_at(nearest(desk.moving.places, point), point);
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
