// Plain arrangements as the job file writes them, for hands that know what they want. Which parts
// stand where is all that is said here; every size is found by the program.

const escaped = (text) => text.replace(/&/g, "&amp;").replace(/"/g, "&quot;").replace(/</g, "&lt;");
const opening = (picture) => `<opening picture="${escaped(picture.id)}"/>`;
const group = (kind, parts) => (parts.length === 1 ? parts[0] : `<${kind}>${parts.join("")}</${kind}>`);

export const in_a_row = (pictures) => group("row", pictures.map(opening));
export const in_a_column = (pictures) => group("column", pictures.map(opening));

export function in_rows(pictures, rows) {
  const lines = [];
  for (let row = 0, from = 0; row < rows; ++row) {
    const to = Math.round(((row + 1) * pictures.length) / rows);
    lines.push(in_a_row(pictures.slice(from, to)));
    from = to;
  }
  return group("column", lines);
}

const area = ({ width, height }) => width.ticks * height.ticks;
const middle = (lengths) => lengths.sort((a, b) => a - b)[Math.floor(lengths.length / 2)];

// The largest in the middle, the others in their order around it: above, left, right, below. As
// many stand beside it as its height takes.
export function around_the_largest(pictures) {
  const largest = pictures.reduce((best, one) => (area(one) > area(best) ? one : best));
  const others = pictures.filter((one) => one !== largest), count = others.length;
  if (count < 4) return in_a_row(pictures);
  const wide = middle(others.map((one) => one.width.ticks)), high = middle(others.map((one) => one.height.ticks));
  let beside = 1, best = Infinity;
  for (let side = 1; 2 * side < count - 1; ++side) {
    const above = (count - 2 * side) / 2;
    const across = above * wide - (largest.width.ticks + 2 * wide), down = side * high - largest.height.ticks;
    const off = Math.abs(across + wide / 2) + Math.abs(down + high / 2);
    if (off < best) [best, beside] = [off, side];
  }
  const above = Math.ceil((count - 2 * beside) / 2);
  const at = [above, above + beside, above + 2 * beside];
  return group("column", [
    in_a_row(others.slice(0, at[0])),
    group("row", [in_a_column(others.slice(at[0], at[1])), opening(largest), in_a_column(others.slice(at[1], at[2]))]),
    in_a_row(others.slice(at[2])),
  ]);
}
