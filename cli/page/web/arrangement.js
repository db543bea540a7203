// Line 2: how the openings lie. Suggestions hang on the wall; rows and columns are told here.

import { h } from "./preact.js";
import { change, desk, redraw, seen, suggest } from "./desk.js";
import { Button, Choice, Field } from "./fields.js";
import { Grooves } from "./grooves.js";
import { said } from "./lengths.js";
import { begin_move } from "./moving.js";
import { is_line, numbers_of, part_called } from "./parts.js";
import { choose } from "./plaque.js";
import { add, arrange, state, take_out, turn, typed } from "./edits.js";
import { around_the_largest, in_a_column, in_a_row, in_rows } from "./patterns.js";
import { say } from "./words.js";

const lies = () => ({
  row: [["top", say("top")], ["centre", say("centre")], ["bottom", say("bottom")], ["stretch", say("stretched")]],
  column: [["left", say("left")], ["centre", say("centre")], ["right", say("right")], ["stretch", say("stretched")]],
});

function Group({ group, layers, unit }) {
  const name = group.address, is_outermost = !name.includes(".", "arrange.".length);
  const windows = [["", say("a window each")]].concat(layers.slice(1).filter((layer) => !layer.spacer)
    .map((layer) => [String(layer.number), say("one in %1", layer.name || layer.board || String(layer.number))]));
  const count = group.children.length;
  const title = { row: say("Row of %1", count), column: say("Column of %1", count), ring: say("Ring of %1", count), places: say("%1 places on the mat", count) }[group.kind];
  const inner = group.children.filter((child) => child.kind !== "opening");
  return h("li", { class: "group" },
    h("div", { class: "group-head" }, h("h3", null, title, " ", h("span", { class: "short" }, numbers_of(group).join(", "))),
      is_outermost ? null : h(Button, { kind: "quiet", name: "move-group", says: say("Move %1", part_called(group)), does: () => {
        choose(group.address);
        begin_move(group.address);
        document.querySelector(`[name="opening-${numbers_of(group)[0]}"]`)?.focus();
      } }, say("Move"))),
    group.kind === "ring" ? h("div", { class: "side-by-side" },
      h(Field, { label: say("Across"), value: said(group.across), found: say("found"), unit, name: "across",
        commit: (text) => change([typed(name + ".across", text)]) }),
      h(Field, { label: say("Height"), value: said(group.down), found: say("as across"), unit, name: "down",
        commit: (text) => change([text.trim() === "" ? take_out(name + ".down") : typed(name + ".down", text)]) })) : null,
    !is_line(group) ? null : h("div", { class: "side-by-side" },
      h(Field, { label: say("Gaps"), value: said(group.gap), found: say("found"), unit, name: "gap",
        commit: (text) => change([typed(name + ".gap", text)]) }),
      h(Choice, { label: say("Lined up"), value: group.align || "centre", options: lies()[group.kind], name: "align",
        choose: (value) => change([state(name + ".align", value)]) })),
    !is_line(group) ? null : h("div", { class: "side-by-side" },
      windows.length > 1 ? h(Choice, { label: say("Windows"), value: group.window ? String(group.window) : "", options: windows, name: "window",
        choose: (value) => change([value ? state(name + ".window", value) : take_out(name + ".window")]) }) : null,
      h(Button, { kind: "quiet", name: "turn", does: () => change([turn(name)]) },
        group.kind === "row" ? say("Make it a column") : say("Make it a row"))),
    is_outermost ? null : h("details", null, h("summary", null, say("V-groove around it")),
      h(Grooves, { part: name, grooves: group.grooves || [], name: "group-groove" })),
    inner.length > 0 ? h("ul", null, inner.map((child) => h(Group, { group: child, layers, unit, key: child.address }))) : null);
}

function free_name(job, wished) {
  const taken = new Set(job.openings.map((opening) => opening.id).concat(job.pictures.map((picture) => picture.id)));
  let name = wished;
  for (let count = 2; taken.has(name); ++count) name = wished + "-" + count;
  return name;
}

const title_sizes = { in: ["8", "1"], mm: ["200", "25"], cm: ["20", "2.5"] };

function add_title(job) {
  const [width, height] = title_sizes[job.unit];
  return change([add("opening", { id: free_name(job, "title"), width, height },
    { at: { where: "below", part: job.arrange.address } })], say("A title window lies below."));
}

export function Arrangement() {
  const job = seen(), { pictures, arrange: whole } = job, ideas = desk.ideas;
  const lay = (text) => change([arrange(text)]).then((wrong) => {
    if (!wrong && desk.ideas) desk.ideas.open = false;
    redraw();
  });
  const rows = Math.max(2, Math.round(Math.sqrt(pictures.length * 0.75)));
  return h("div", null,
    pictures.length > 1 ? h("div", { class: "buttons stack" },
      h(Button, { kind: "main", name: "suggest", does: suggest, disabled: ideas?.running },
        ideas?.running ? say("Looking...") : ideas ? say("Suggest anew") : say("Suggest arrangements")),
      ideas && whole
        ? h(Button, { does: () => { desk.ideas.open = !desk.ideas.open; redraw(); } },
          ideas.open ? say("Back to the piece") : say("Show the suggestions")) : null) : null,
    pictures.length > 1 ? h("h3", null, say("Or lay them plainly")) : null,
    pictures.length > 1 ? h("div", { class: "buttons" },
      h(Button, { name: "row", does: () => lay(in_a_row(pictures)) }, say("In a row")),
      h(Button, { name: "column", does: () => lay(in_a_column(pictures)) }, say("In a column")),
      pictures.length > 3 ? h(Button, { name: "rows", does: () => lay(in_rows(pictures, rows)) }, say("In %1 rows", rows)) : null,
      pictures.length > 4 ? h(Button, { name: "around", does: () => lay(around_the_largest(pictures)) }, say("Around the largest")) : null) : null,
    whole ? h("div", { class: "buttons" }, h(Button, { name: "title-window", does: () => add_title(job) }, say("Add a title window below"))) : null,
    whole && whole.kind !== "opening"
      ? h("ul", { class: "groups" }, h(Group, { group: whole, layers: job.layers, unit: job.unit, key: whole.address })) : null,
    whole && whole.kind !== "opening"
      ? h("p", { class: "hint" }, say("On the wall, drag an opening to another place, or a row that you chose; by keys, choose it and press M. Up chooses the row around it.")) : null);
}
