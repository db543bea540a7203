// Line 6: the papers of the job. One lies in front of the piece; one or all go into the folder.

import { Component, h } from "./preact.js";
import { desk, failed, redraw, settled, tell } from "./desk.js";
import { Button, Choice } from "./fields.js";
import { job_path, post } from "./server.js";
import { say } from "./words.js";

// Which the page shows, which are printed full scale, and what makes them.
const papers = () => [
  ["proof.pdf", say("Proof"), say("for the customer to sign")],
  ["template.pdf", say("Template"), say("full scale, for the back of the board"), "full scale"],
  ["cuts.pdf", say("Cutting plan"), say("for the cutter")],
  ["cuts.html", say("Cutting page"), say("for a tablet beside the cutter")],
  ["estimate.txt", say("Estimate"), say("by the shop's prices"), "", "prices"],
  ["sheets.pdf", say("Sheets"), say("the blanks out of the stock"), "", "stock"],
];

const language_names = { en: "English", de: "Deutsch", fr: "Français", es: "Español" };

export const wishes = { paper: "", printer: "", cutter: "", language: "" };

export function paper_address(kind) {
  const chosen = Object.entries(wishes).filter(([, value]) => value !== "");
  return job_path(desk.name) + "/papers/" + kind + "?" + new URLSearchParams([...chosen, ["fp", desk.state.fingerprint]]);
}

export class Papers extends Component {
  constructor() {
    super();
    this.state = { saved: [], wrong: null };
  }

  show(kind, called, is_full_scale) {
    desk.paper = { kind, called, is_full_scale };
    redraw();
  }

  async save(kinds) {
    const chosen = Object.fromEntries(Object.entries(wishes).filter(([, value]) => value !== ""));
    try {
      await settled(); // the papers are those of the last edit
      const { saved } = await post(job_path(desk.name) + "/papers", { kinds, ...chosen });
      this.setState({ saved, wrong: null });
      tell(say("Saved: %1", saved.join(", ")));
    } catch (error) {
      if (error.status === undefined) failed(error);
      this.setState({ wrong: error.message });
    }
  }

  render(_, { saved, wrong }) {
    const { about } = desk, can = papers().filter(([, , , , needs]) => !needs || about[needs]);
    const choose = (key) => (value) => { wishes[key] = value; redraw(); };
    const pick = (label, key, usual, options) => (options.length === 0 ? null
      : h(Choice, { label, name: "paper-" + key, value: wishes[key], options: [["", usual], ...options], choose: choose(key) }));
    const plain = (names) => (names || []).map((name) => [name, name]);
    return h("div", null,
      h("div", { class: "buttons" },
        h(Button, { kind: "main", name: "save-all", does: () => this.save(can.map(([kind]) => kind)) }, say("Save all")),
        h("a", { class: "button", href: paper_address("mail.eml"), download: desk.name + ".eml" }, say("Draft an e-mail"))),
      h("ul", { class: "papers" }, can.map(([kind, called, what, full_scale]) => h("li", { class: "paper", key: kind },
        h(Button, { name: "show-" + kind, pressed: desk.paper?.kind === kind, does: () => this.show(kind, called, Boolean(full_scale)) },
          h("span", { class: "called" }, called), h("span", { class: "short" }, what)),
        h(Button, { kind: "quiet", name: "save-" + kind, does: () => this.save([kind]), says: say("Save: %1", called) }, say("Save"))))),
      saved.length > 0 ? h("p", { class: "saved" }, say("Saved in the job's folder: %1", saved.join(", "))) : null,
      wrong ? h("p", { class: "refused", role: "alert" }, wrong) : null,
      h("div", { class: "side-by-side" },
        pick(say("Paper"), "paper", say("usual"), plain(about.papers)),
        pick(say("Language"), "language", say("as here"), (about.languages || []).map((code) => [code, language_names[code] || code]))),
      h("div", { class: "side-by-side" },
        pick(say("Printer"), "printer", say("not measured"), plain(about.printers)),
        pick(say("Cutter"), "cutter", say("usual"), plain(about.cutters))),
      h("p", { class: "hint strong" }, say("Print at 100 %, no scaling, and measure the printed rule before you cut.")),
      h("p", { class: "hint" }, say("Fresh blade, backing sheet, a test cut on scrap; cut away from your hands.")));
  }
}
