// What one types and chooses on the ticket and on the drawing.

import { Component, h } from "./preact.js";

let count = 0;

// A line to write on. What is written counts when Enter is pressed or the field is left; Escape
// brings back what stood there. `found` stands in pencil where nothing is written. `commit` gives
// nothing, or a promise of what is wrong.
export class Field extends Component {
  constructor(props) {
    super(props);
    this.id = "field-" + ++count;
    this.state = { draft: null, wrong: null };
    this.keep = this.keep.bind(this);
  }

  async keep() {
    const { draft } = this.state;
    if (draft === null || draft.trim() === (this.props.value ?? "")) {
      this.setState({ draft: null, wrong: null });
      return;
    }
    if (this.is_keeping) return; // Enter, and then it is left
    this.is_keeping = true;
    const wrong = await this.props.commit(draft);
    this.is_keeping = false;
    this.setState(wrong ? { wrong } : { draft: null, wrong: null });
  }

  render({ label, value, found, unit, hides_label, name, kind, list, wide }, { draft, wrong }) {
    return h("div", { class: "field" + (hides_label ? " bare" : "") + (wide ? " wide" : "") },
      h("label", { for: this.id, class: hides_label ? "unseen" : "" }, label),
      h("span", { class: "written" },
        h("input", {
          id: this.id, type: kind || "text", name, list, autocomplete: "off", spellcheck: false,
          value: draft ?? value ?? "", placeholder: found ?? "",
          "data-changed": draft === null ? null : "yes",
          "aria-invalid": wrong ? "true" : null, "aria-describedby": wrong ? this.id + "-wrong" : null,
          onInput: (event) => this.setState({ draft: event.target.value }),
          onBlur: this.keep,
          onKeyDown: (event) => {
            if (event.key === "Enter") {
              event.preventDefault(); // a form around it is not sent by it
              this.keep();
            }
            if (event.key === "Escape") this.setState({ draft: null, wrong: null });
          },
        }),
        unit ? h("span", { class: "unit" }, unit) : null),
      wrong ? h("p", { class: "refused", id: this.id + "-wrong", role: "alert" }, wrong) : null);
  }
}

// One of several, of which each has a name and a text.
export class Choice extends Component {
  constructor(props) {
    super(props);
    this.id = "choice-" + ++count;
  }

  render({ label, value, options, choose, hides_label, name }) {
    return h("div", { class: "field" + (hides_label ? " bare" : "") },
      h("label", { for: this.id, class: hides_label ? "unseen" : "" }, label),
      h("select", { id: this.id, name, onChange: (event) => choose(event.target.value) },
        options.map(([option, text]) =>
          h("option", { value: option, selected: option === value, key: option }, text))));
  }
}

export function Button({ does, children, kind, name, pressed, disabled, says }) {
  return h("button", {
    type: "button", class: kind || "", name, disabled, "aria-label": says,
    "aria-pressed": pressed === undefined ? null : String(pressed), onClick: does,
  }, children);
}

export function FilePicker({ label, name, several, accept, takes }) {
  return h("label", { class: "file" }, label,
    h("input", { type: "file", name, accept, multiple: several, class: "unseen",
      onChange: (event) => { takes([...event.target.files]); event.target.value = ""; } }));
}

// Short facts one after the other, none of them broken.
export const facts_of = (facts) => facts.filter(Boolean).flatMap((fact, place) => [place ? " · " : "", h("span", { class: "whole" }, fact)]);
