// An image file that was dropped waits for its size; the other side follows in proportion.

import { h } from "./preact.js";
import { desk, seen } from "./desk.js";
import { Button, Field } from "./fields.js";
import { job_path, post } from "./server.js";
import { say } from "./words.js";

const of_job = (path) => job_path(desk.name) + "/images/" + path.split("/").map(encodeURIComponent).join("/");

export function Dropped({ file, does, leave }) {
  const { width, height } = file.pixels;
  const commit = (which) => async (text) => {
    try {
      const { sizes } = await post("/api/sizes", { said: text + " x " + text, unit: seen().unit,
        keep: { width, height, given: which } });
      return does(sizes[0]);
    } catch (error) {
      return error.message;
    }
  };
  const called = file.path.replace(/^.*\//, "");
  return h("li", { class: "dropped" },
    h("div", { class: "dropped-head" }, h("img", { src: of_job(file.path), alt: "" }),
      h("p", null, h("span", { class: "called" }, called), h("br"), say("One side is enough; the other keeps the picture's proportion.")),
      h(Button, { kind: "quiet", does: leave, says: say("Leave %1 out", called) }, say("Leave out"))),
    h("div", { class: "side-by-side" },
      h(Field, { label: say("Width"), name: "dropped-width", unit: seen().unit, commit: commit("width") }),
      h("span", { class: "by" }, say("or")),
      h(Field, { label: say("Height"), name: "dropped-height", unit: seen().unit, commit: commit("height") })));
}
