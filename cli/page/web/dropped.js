// An image file that was dropped waits for its size; the other side follows in proportion.

import { h } from "./preact.js";
import { Button, Field } from "./fields.js";
import { post } from "./server.js";
import { say } from "./words.js";

export function Dropped({ file, unit, src, does, leave }) {
  const { width, height } = file.pixels;
  const commit = (which) => async (text) => {
    try {
      const { sizes } = await post("/api/sizes", { said: text + " x " + text, unit,
        keep: { width, height, given: which } });
      return does(sizes[0]);
    } catch (error) {
      return error.message;
    }
  };
  const called = file.path.replace(/^.*\//, "");
  return h("div", { class: "dropped" },
    h("div", { class: "dropped-head" }, h("img", { src, alt: "" }),
      h("p", { class: "called" }, called),
      h(Button, { kind: "quiet", does: leave, says: say("Leave %1 out", called) }, say("Leave out"))),
    h("div", { class: "side-by-side" },
      h(Field, { label: say("Width"), name: "dropped-width", unit, commit: commit("width") }),
      h("span", { class: "by" }, say("or")),
      h(Field, { label: say("Height"), name: "dropped-height", unit, commit: commit("height") })),
    h("p", { class: "hint" }, say("One side is enough; the other keeps the picture's proportion.")));
}
