// A drawing of the server's, put into the page. Photographs that stay are kept as they are, so that
// they do not flicker while something is dragged.

import { Component, h } from "./preact.js";

// Two drawings on one page may not share names.
function told_apart(svg, mark) {
  return svg.replace(/\bid="/g, `id="${mark}-`).replace(/url\(#/g, `url(#${mark}-`).replace(/href="#/g, `href="#${mark}-`);
}

export class Drawing extends Component {
  shouldComponentUpdate(next) {
    return next.svg !== this.props.svg || next.called !== this.props.called;
  }

  componentDidMount() { this.put(); }
  componentDidUpdate() { this.put(); }

  put() {
    const { svg, called, mark, room } = this.props;
    const drawn = new DOMParser().parseFromString(told_apart(svg, mark), "image/svg+xml").documentElement;
    if (drawn.nodeName !== "svg") return;
    const kept = new Map();
    for (const image of this.base.querySelectorAll("image")) kept.set(image.getAttribute("href"), image);
    const fresh = document.importNode(drawn, true);
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
