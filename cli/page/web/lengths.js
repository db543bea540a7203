// Lengths as text in a job's unit. A tick is 1/40640 in, or 1/1600 mm; nothing here rounds.

const ticks_per = { in: 40640, mm: 1600, cm: 16000 };

function fraction(ticks) {
  const whole = Math.floor(ticks / 40640), rest = ticks - whole * 40640;
  if (rest === 0) return String(whole);
  for (const part of [2, 4, 8, 16, 32, 64]) {
    if ((rest * part) % 40640 === 0) return (whole ? whole + " " : "") + (rest * part) / 40640 + "/" + part;
  }
  return null;
}

// As the job file takes it.
export function text_of(ticks, unit) {
  if (unit === "in") {
    const text = fraction(ticks);
    if (text !== null) return text;
    return ticks / 1600 + " mm";
  }
  return String(ticks / ticks_per[unit]);
}

// What the server says of a length, and what was only written.
export const said = (length) => length?.text ?? length ?? null;

export const millimetres = (ticks) => ticks / 1600;
export const ticks_in = (millimetres) => millimetres * 1600;

// The whole step nearest to a length, at least none.
export const on_step = (ticks, step) => Math.max(0, Math.round(ticks / step) * step);
