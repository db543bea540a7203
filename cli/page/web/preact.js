// The library that renders, as Debian ships it.
export { h, render, Component } from "./preact/preact.js";
