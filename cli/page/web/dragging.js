// Dragging a measure: the board follows in whole steps of the increment, and Escape gives up.

import { attempt, change, desk, give_up, redraw, seen } from "./desk.js";
import { state } from "./edits.js";
import { on_step, text_of, ticks_in } from "./lengths.js";

const beyond_a_click = 4;

// `drag` has: measure; sign (see growth); scale in pixels per millimetre; click, called where the
// pointer did not move.
export function drag_measure(event, { measure, sign, scale, click }) {
  if (event.button !== 0) return;
  event.preventDefault();
  const begin = measure.along === "x" ? event.clientX : event.clientY;
  const hand = event.currentTarget;
  let is_drag = false, ticks = measure.ticks;
  hand.setPointerCapture(event.pointerId);

  function follow(moved) {
    const distance = ((measure.along === "x" ? moved.clientX : moved.clientY) - begin) * sign;
    if (!is_drag && Math.abs(distance) < beyond_a_click) return;
    if (!is_drag) {
      is_drag = true;
      desk.dragged = measure.name;
    }
    const next = on_step(measure.ticks + ticks_in(distance / scale), measure.step);
    if (next === ticks) return;
    ticks = next;
    attempt([state(measure.name, text_of(ticks, seen().unit))]);
  }

  function end(is_kept) {
    hand.removeEventListener("pointermove", follow);
    hand.removeEventListener("pointerup", keep);
    hand.removeEventListener("pointercancel", leave);
    removeEventListener("keydown", escape, true);
    desk.dragged = null;
    if (!is_drag) {
      if (is_kept) click?.();
    } else if (is_kept && ticks !== measure.ticks) {
      change([state(measure.name, text_of(ticks, desk.state.unit))]);
    } else {
      give_up();
    }
    redraw();
  }

  const keep = () => end(true), leave = () => end(false);
  function escape(key) {
    if (key.key !== "Escape") return;
    key.preventDefault();
    key.stopPropagation();
    end(false);
  }

  hand.addEventListener("pointermove", follow);
  hand.addEventListener("pointerup", keep);
  hand.addEventListener("pointercancel", leave);
  addEventListener("keydown", escape, true);
}
