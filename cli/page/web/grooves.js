// V-grooves around all openings, a row or column, or one opening.

import { h } from "./preact.js";
import { change, seen } from "./desk.js";
import { Button, Field } from "./fields.js";
import { add, remove, state } from "./edits.js";
import { said } from "./lengths.js";
import { say } from "./words.js";

const first_groove = { in: ["1/2", "1/16"], mm: ["12", "2"], cm: ["1.2", "0.2"] };

function Groove({ groove, name }) {
  const { unit } = seen();
  const length = (label, what) => h(Field, { label, unit, name: "groove-" + what, value: said(groove[what]),
    commit: (text) => change([state(name + "." + what, text.trim())]) });
  return h("li", { class: "side-by-side" }, length(say("V-groove, away by"), "distance"), length(say("Its width"), "width"),
    h(Button, { kind: "quiet", does: () => change([remove(name)]), says: say("Take the V-groove out") }, say("Take out")));
}

export function Grooves({ part, grooves, name }) {
  const [distance, width] = first_groove[seen().unit];
  return h("div", { class: "grooves" },
    grooves.length > 0 ? h("ul", null, grooves.map((groove, index) =>
      h(Groove, { groove, name: part + ".groove." + (index + 1), key: index }))) : null,
    h(Button, { name, does: () => change([add("groove", { distance, width }, { at: { where: "last_in", part } })]) },
      grooves.length > 0 ? say("One more V-groove") : say("V-groove")));
}
