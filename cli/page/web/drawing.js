// A drawing of the server's, put into the page. Photographs that stay are kept as they are, so that
// they do not flicker while something is dragged.

import { Component, h } from "./preact.js";

// Two drawings on one page may not share names.
function told_apart(svg, mark) {
  return svg.replace(/\bid="/g, `id="${mark}-`).replace(/url\(#/g, `url(#${mark}-`).replace(/href="#/g, `href="#${mark}-`);
}

const sizes = [160, 320, 640, 1200, 2400]; // pixels of a photograph's longer side
const reserve = 1.4; // for a window that grows

// Each photograph as large as it is shown, since a larger one takes its time each time it is drawn.
function fit_images(drawn, room) {
  const [, , width] = drawn.getAttribute("viewBox").split(/[ ,]+/).map(Number), scale = (room / width) * devicePixelRatio * reserve;
  for (const image of drawn.querySelectorAll("image")) {
    const shown = Math.max(image.getAttribute("width"), image.getAttribute("height")) * scale;
    image.setAttribute("href", image.getAttribute("href") + "&longest=" + (sizes.find((size) => size >= shown) || sizes.at(-1)));
  }
}

export class Drawing extends Component {
  shouldComponentUpdate(next) {
    return next.svg !== this.props.svg || next.called !== this.props.called;
  }

  componentDidMount() { this.put(); }
  componentDidUpdate() { this.put(); }

  put() {
    const { svg, called, mark, room } = this.props;
    const holder = document.createElement("template"); // scripts in it would not run, and there are none
    holder.innerHTML = told_apart(svg, mark);
    const fresh = holder.content.firstElementChild;
    if (fresh?.nodeName !== "svg") return;
    fit_images(fresh, this.base.clientWidth);
    const kept = new Map();
    for (const image of this.base.querySelectorAll("image")) kept.set(image.getAttribute("href"), image);
    for (const image of fresh.querySelectorAll("image")) {
      const old = kept.get(image.getAttribute("href"));
      if (!old) continue;
      kept.delete(image.getAttribute("href"));
      for (const { name } of [...old.attributes]) if (name !== "href") old.removeAttribute(name);
      for (const { name, value } of image.attributes) if (name !== "href") old.setAttribute(name, value);
      image.replaceWith(old);
    }
    if (room) fresh.setAttribute("viewBox", room);
    for (const word of fresh.querySelectorAll("[aria-label]")) { // a word drawn as its letters' outlines
      word.dataset.text = word.getAttribute("aria-label");
      word.removeAttribute("aria-label");
    }
    fresh.removeAttribute("width");
    fresh.removeAttribute("height");
    fresh.setAttribute("role", "img");
    fresh.setAttribute("aria-label", called);
    this.base.replaceChildren(fresh);
  }

  render() {
    return h("div", { class: "drawing" });
  }
}
