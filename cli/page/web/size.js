// One dimension on the drawing: a number that is boxed where it is stated and in italics where it
// was found. Click it or press Enter to write; drag it or press arrows to step; Delete frees it.

import { Component, h } from "./preact.js";
import { attempt, change, desk, give_up, redraw } from "./desk.js";
import { drag_measure } from "./dragging.js";
import { free, state, typed } from "./edits.js";
import { text_of } from "./lengths.js";
import { say } from "./words.js";

const pause_before_keeping = 1500; // milliseconds after the last arrow key
const ways = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

export class Size extends Component {
  constructor(props) {
    super(props);
    this.state = { draft: null, wrong: null };
    this.stepped = null;
    this.keys = this.keys.bind(this);
    this.write = this.write.bind(this);
  }

  write() {
    this.setState({ draft: this.props.measure.stated ? this.props.measure.text : "", wrong: null });
    this.is_fresh = true;
  }

  componentDidUpdate() {
    if (this.state.draft !== null && this.is_fresh) {
      this.is_fresh = false;
      this.base.querySelector("input").select();
      this.base.querySelector("input").focus();
    }
    if (this.comes_back) {
      this.comes_back = false;
      this.base.querySelector("button")?.focus();
    }
  }

  async keep(returns) {
    const { draft } = this.state, { measure } = this.props;
    if (draft === null || this.is_keeping) return;
    if (draft.trim() === (measure.stated ? measure.text : "")) {
      this.leave(returns);
      return;
    }
    this.is_keeping = true;
    const wrong = await change([typed(measure.name, draft)]);
    this.is_keeping = false;
    if (wrong && returns) {
      desk.wrong = null;
      this.setState({ wrong });
      redraw();
    } else {
      this.leave(returns);
    }
  }

  leave(returns) {
    this.comes_back = returns;
    this.setState({ draft: null, wrong: null });
  }

  step(way) {
    const { measure, unit } = this.props, now = this.stepped ?? measure.ticks;
    this.stepped = Math.max(0, Math.round(now / measure.step) * measure.step + way * measure.step);
    attempt([state(measure.name, text_of(this.stepped, unit))]);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.keep_step(), pause_before_keeping);
  }

  keep_step() {
    if (this.stepped === null) return;
    clearTimeout(this.timer);
    const { measure, unit } = this.props, ticks = this.stepped;
    this.stepped = null;
    change([state(measure.name, text_of(ticks, unit))]);
  }

  keys(event) {
    const { measure } = this.props;
    if (ways[event.key] && !event.ctrlKey && !event.altKey) {
      event.preventDefault();
      this.step(ways[event.key]);
    } else if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      if (this.stepped !== null) this.keep_step();
      else this.write();
    } else if (event.key === "Escape" && this.stepped !== null) {
      clearTimeout(this.timer);
      this.stepped = null;
      give_up();
    } else if ((event.key === "Delete" || event.key === "Backspace") && measure.stated) {
      change([free(measure.name)]);
    }
  }

  render({ measure, label, unit, x, y, sign, scale }, { draft, wrong }) {
    const is_ours = draft !== null;
    const how = measure.stated ? say("%1: %2 %3, stated", label, measure.text, unit) : say("%1: %2 %3, found", label, measure.text, unit);
    return h("div", { class: is_ours ? "size writes" : "size", style: { left: x + "px", top: y + "px" } },
      is_ours
        ? h("input", {
          type: "text", "aria-label": label, value: draft, placeholder: measure.text, autocomplete: "off", spellcheck: false,
          "data-changed": "yes", "aria-invalid": wrong ? "true" : null,
          onInput: (event) => this.setState({ draft: event.target.value }),
          onBlur: () => this.keep(false),
          onKeyDown: (event) => {
            if (event.key === "Enter") {
              event.preventDefault(); // the number that comes back is not pressed by the same key
              this.keep(true);
            }
            if (event.key === "Escape") { event.stopPropagation(); this.leave(true); }
          },
        })
        : h("button", {
          type: "button", class: (measure.stated ? "number stated " : "number found ") + measure.along, name: measure.name,
          "aria-label": how, title: label,
          onKeyDown: this.keys, onBlur: () => this.keep_step(),
          onPointerDown: (event) => drag_measure(event, { measure, sign, scale, click: this.write }),
          // A click that no pointer made comes from a reader of the screen.
          onClick: (event) => { if (event.detail === 0 && event.pointerType === "") this.write(); },
        }, measure.text),
      wrong ? h("p", { class: "refused", role: "alert" }, wrong) : null);
  }
}
