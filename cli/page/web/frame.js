// Line 5: a frame of the shop that fits, a rabbet measured by hand, or none.

import { Component, h } from "./preact.js";
import { change, desk, failed, seen } from "./desk.js";
import { Button, Field } from "./fields.js";
import { add, remove, state, written } from "./edits.js";
import { said } from "./lengths.js";
import { get, job_path, post } from "./server.js";
import { Colour } from "./layers.js";
import { say, unbroken } from "./words.js";

async function take_rabbet(text) {
  const { frame, unit } = seen();
  try {
    const { sizes: [size] } = await post("/api/sizes", { said: text, unit });
    return change(frame
      ? [state("frame.rabbet-width", size.width), state("frame.rabbet-height", size.height)]
      : [add("frame", { "rabbet-width": size.width, "rabbet-height": size.height })]);
  } catch (error) {
    return error.message;
  }
}

export class Frame extends Component {
  constructor() {
    super();
    this.state = { frames: null };
  }

  async componentDidMount() {
    try {
      this.setState(await get(job_path(desk.name) + "/frames"));
    } catch (error) {
      if (error.status === undefined) failed(error);
      else this.setState({ frames: [] });
    }
  }

  render(_, { frames }) {
    const { frame, unit } = seen();
    const line = (label, name) => h(Field, { label, unit, name: "frame-" + name, value: said(frame[name]), found: say("usual"),
      commit: (text) => change([written("frame." + name, text)]) });
    return h("div", null,
      h(Field, { label: say("A rabbet measured by hand"), name: "rabbet", unit, wide: true,
        value: frame ? said(frame.rabbet_width) + " x " + said(frame.rabbet_height) : "", commit: take_rabbet }),
      frame ? h("div", null,
        h(Field, { label: say("Moulding"), name: "moulding", wide: true, value: frame.moulding, commit: (text) => change([written("frame.moulding", text)]) }),
        h("div", { class: "side-by-side" }, line(say("Its face"), "face"),
          h(Colour, { label: say("Colour"), value: frame.colour, commit: (colour) => change([state("frame.colour", colour)]) })),
        h("div", { class: "side-by-side" }, line(say("Covers the mat by"), "lip"), line(say("Room in the rabbet"), "allowance")),
        h(Button, { kind: "quiet", name: "no-frame", does: () => change([remove("frame")]) }, say("No frame"))) : null,
      h("h3", null, say("Frames that fit")),
      frames === null ? h("p", { class: "hint" }, say("Looking...")) : frames.length === 0 ? h("p", { class: "hint" }, say("No frame of the list fits.")) : null,
      h("div", { class: "buttons frames" }, (frames || []).map((one) =>
        h(Button, { does: () => change(one.edits), key: one.width.text + one.height.text,
          pressed: frame ? said(frame.rabbet_width) === said(one.rabbet?.width ?? one.width) && said(frame.rabbet_height) === said(one.rabbet?.height ?? one.height) : false },
        h("span", { class: "called" }, one.width.text + " × " + one.height.text),
        one.borders ? h("span", { class: "short" }, unbroken(say("sides %1, top %2, bottom %3", said(one.borders.left), said(one.borders.top), said(one.borders.bottom)))) : null))));
  }
}
