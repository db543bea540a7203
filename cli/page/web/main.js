// Begins: learns the words, goes where the address says, and draws whatever lies on the desk.

import { h, render } from "./preact.js";
import { desk, failed, open_folder, open_job, open_versions, redraw, redraws_with, step_back } from "./desk.js";
import { get } from "./server.js";
import { learn } from "./words.js";
import { Begin } from "./begin.js";
import { Job } from "./job.js";
import { Versions } from "./versions.js";
import { Absence } from "./wrong.js";

const long_enough_to_read = 7000; // milliseconds

let silence;

function say_aloud() {
  const told = document.getElementById("told");
  if (told.textContent === desk.told) return;
  told.textContent = desk.told;
  clearTimeout(silence);
  silence = setTimeout(() => { desk.told = told.textContent = ""; }, long_enough_to_read);
}

const place = document.getElementById("page");
let drawn;

function Page() {
  return h("div", { class: "page" },
    h(Absence),
    desk.versions ? h(Versions, { key: desk.versions.join("|") }) : desk.state ? h(Job) : desk.jobs && !desk.name ? h(Begin) : null);
}

redraws_with(() => {
  drawn = render(h(Page), place, drawn);
  say_aloud();
  document.title = [desk.state?.job.title || desk.name, "mullion"].filter(Boolean).join(" - ");
});

async function go() {
  const address = new URLSearchParams(location.hash.slice(1));
  try {
    if (address.has("versions")) open_versions(address.get("versions").split("|"));
    else if (address.has("job")) await open_job(address.get("job"));
    else if (desk.about.single && !address.has("all")) await open_job(desk.about.single);
    else await open_folder();
  } catch (error) {
    failed(error);
  }
}

function keys(event) {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || !desk.state) return;
  if (event.target.matches("input, textarea") && event.target.dataset.changed) return;
  const key = event.key.toLowerCase();
  const way = key === "y" || (key === "z" && event.shiftKey) ? "redo" : key === "z" ? "undo" : null;
  if (!way) return;
  event.preventDefault();
  step_back(way);
}

async function begin() {
  desk.about = await get("/api/about");
  await learn(desk.about.language);
  addEventListener("hashchange", go);
  addEventListener("keydown", keys);
  addEventListener("resize", redraw);
  await go();
}

begin().catch(failed);
