// Line 4: the boards from the top mat down, their reveals, a V-groove, and finishes kept by name.

import { Component, h } from "./preact.js";
import { change, desk, failed, seen, settled, tell } from "./desk.js";
import { Button, Choice, Field } from "./fields.js";
import { add, remove, state, take_out, written } from "./edits.js";
import { learn_finishes, learn_shop, shop } from "./boards.js";
import { Grooves } from "./grooves.js";
import { said, text_of } from "./lengths.js";
import { Reveal } from "./reveals.js";
import { get, post } from "./server.js";
import { say } from "./words.js";

// In the stock's unit, or in millimetres where that is no fraction on a rule.
function thickness_of({ thickness, unit }) {
  const text = text_of(thickness.ticks, unit);
  return text.endsWith("mm") ? text : text + " " + unit;
}

export function board_edits(layer, board) {
  const name = "layer." + layer.number;
  if (!board) return [take_out(name + ".board")];
  const edits = [state(name + ".board", board.name)];
  edits.push(board.colour ? state(name + ".colour", board.colour) : take_out(name + ".colour"));
  if (board.core) edits.push(state(name + ".core", board.core));
  if (board.thickness) edits.push(state(name + ".thickness", thickness_of(board)));
  return edits;
}

function Swatch({ colour }) {
  return h("svg", { class: "swatch", viewBox: "0 0 24 24", preserveAspectRatio: "none", "aria-hidden": "true" },
    colour ? h("rect", { width: 24, height: 24, fill: colour })
      : h("path", { d: "M0 0H24V24H0ZM0 24L24 0", fill: "none", stroke: "currentColor" }));
}

// A board of the stock by its name, and by its thickness where there are several of that name.
function called(board) {
  const like = shop.boards.filter((one) => one.name === board.name);
  return like.length > 1 ? board.name + ", " + thickness_of(board) : board.name;
}

function place_of(layer) {
  const exact = shop.boards.findIndex((board) => board.name === layer.board && board.thickness?.ticks === layer.thickness?.ticks);
  const place = exact >= 0 ? exact : shop.boards.findIndex((board) => board.name === layer.board);
  return place < 0 ? "" : String(place);
}

function Layer({ layer, count }) {
  const name = "layer." + layer.number;
  const boards = [["", say("no board named")]].concat(shop.boards.map((board, place) => [String(place), called(board)]));
  const known = place_of(layer);
  if (layer.board && known === "") boards.push(["as it is", layer.board]);
  return h("li", { class: "layer" },
    h("div", { class: "layer-head" }, h(Swatch, { colour: layer.colour }),
      h("h3", null, layer.name || say("Layer %1", layer.number)),
      count > 1 ? h(Button, { kind: "quiet", does: () => change([remove(name)]), says: say("Take out layer %1", layer.number) }, say("Take out")) : null),
    h(Choice, { label: say("Board"), value: known || (layer.board ? "as it is" : ""), options: boards, name: "board-" + layer.number,
      choose: (place) => { if (place !== "as it is") change(board_edits(layer, shop.boards[place])); } }),
    layer.board ? h("p", { class: "board-facts" }, say("Core"), h(Swatch, { colour: layer.core }), said(layer.thickness) ? thickness_of({ ...layer, unit: seen().unit }) : "") : null,
    layer.board && layer.known === false
      ? h("p", { class: "mark" }, say("The stock does not know this board, so its colour is not drawn.")) : null,
    layer.known === true && layer.board ? null
      : h("details", null, h("summary", null, say("a board by hand")),
        h(Field, { label: say("Name of the board"), name: "board-name-" + layer.number, value: layer.board, commit: (text) => change([written(name + ".board", text)]) }),
        h("div", { class: "side-by-side" },
          h(Colour, { label: say("Colour"), value: layer.colour, commit: (colour) => change([state(name + ".colour", colour)]) }),
          h(Colour, { label: say("Core"), value: layer.core, commit: (colour) => change([state(name + ".core", colour)]) }),
          h(Field, { label: say("Thickness"), unit: seen().unit, value: said(layer.thickness), name: "thickness-" + layer.number,
            commit: (text) => change([written(name + ".thickness", text)]) }))),
    layer.reveal ? h(Reveal, { label: say("Reveal"), called: "reveal" + layer.number, value: layer.reveal, found: say("usual"),
      name_of: (side) => name + (side === "all" ? ".reveal" : ".reveal-" + side) }) : null);
}

export function Colour({ label, value, commit }) {
  return h("label", { class: "field" }, h("span", null, label),
    h("input", { type: "color", value: value || "#ffffff", onChange: (event) => commit(event.target.value) }));
}

// What a finish changes depends on the layers that the job has by now.
async function take_finish(name) {
  try {
    const { finishes } = await get("/api/finishes?job=" + encodeURIComponent(desk.name));
    await change(finishes.find((one) => one.name === name).edits, name);
  } catch (error) {
    failed(error);
  }
}

function Finishes() {
  if (!shop.finishes?.length) return null;
  return h("div", { class: "finishes" },
    h("h3", null, say("Finishes of the shop")),
    h("div", { class: "buttons" }, shop.finishes.map((finish) =>
      h(Button, { name: "finish-" + finish.name, does: () => take_finish(finish.name), key: finish.name }, finish.name))));
}

// A shop's first finish begins the shop's own file, which says what the shop is called.
class KeepFinish extends Component {
  constructor() {
    super();
    this.state = { shop: "" };
  }

  async keep(name) {
    if (name.trim() === "") return null;
    await settled();
    const { layers, frame } = desk.state, called = this.state.shop.trim();
    try {
      await post("/api/finishes", { name: name.trim(), layers, frame, ...(called ? { shop: called } : {}) });
      await learn_finishes();
      tell(say("Kept: %1", name.trim()));
      return null;
    } catch (error) {
      if (error.status === undefined) failed(error);
      return error.message;
    }
  }

  render(_, { shop: called }) {
    if (!shop.finishes) return null;
    return h("div", { class: "keeps" },
      h("h3", null, say("Keep this finish")),
      shop.called === null ? h(Field, { label: say("What the shop is called"), name: "shop-name", value: called,
        commit: (text) => { this.setState({ shop: text }); return null; } }) : null,
      h(Field, { label: say("These layers and the moulding, called"), name: "finish", value: "", commit: (name) => this.keep(name) }));
  }
}

export function Layers() {
  learn_shop();
  const { layers, grooves } = seen();
  return h("div", null,
    h(Finishes),
    h("ol", { class: "layers" }, layers.map((layer) => h(Layer, { layer, count: layers.length, key: layer.number }))),
    h("div", { class: "buttons" },
      h(Button, { name: "add-layer", does: () => change([add("layer", { name: say("Under-mat") })]) }, say("One more under-mat"))),
    h("h3", null, say("Around all openings")),
    h(Grooves, { part: "arrange", grooves, name: "add-groove" }),
    h(KeepFinish));
}
