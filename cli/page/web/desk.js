// What lies on the desk: the job as the server last told it, what is being tried, and what the
// person looks at. Whatever changes it calls `redraw`.

import { Refused, Unreachable, get, job_path, post } from "./server.js";
import { say } from "./words.js";

export const desk = {
  about: null,
  jobs: null,
  fresh: null, // name of a job that was made just now
  name: null, // of the open job
  state: null, // as it is in the file
  tried: null, // as it would be, while something is dragged or stepped
  step: "pictures", // the line of the ticket that is unfolded
  side: "front",
  layer: 1, // that is seen from behind
  chosen: null, // address of the chosen opening, row or column
  unfolded: null, // address of the opening whose slip is unfolded on the ticket
  paper: null, // address of the paper that lies in front of the piece
  ideas: null, // suggestions
  alone: false,
  versions: null, // names of the jobs that hang side by side
  wrong: null, // what was refused last
  gone: false, // the server does not answer
  file_gone: false,
  told: "",
};

let draw = () => {};
export const redraws_with = (function_that_draws) => { draw = function_that_draws; };
export const redraw = () => draw();

export const seen = () => desk.tried || desk.state;

export function tell(text) {
  desk.told = text;
  redraw();
}

// ---- The server's absence

async function wait_for_server() {
  while (desk.gone) {
    await new Promise((done) => setTimeout(done, 1000));
    try {
      await get("/api/about");
      desk.gone = false;
      if (desk.name) await fetch_job();
      listen();
      tell(say("The program answers again."));
    } catch (error) {
      if (error instanceof Refused && error.status === 403) {
        desk.wrong = say("The program was started anew. Open the address that it shows in its terminal.");
        redraw();
      }
    }
  }
}

export function failed(error) {
  if (error instanceof Unreachable) {
    if (desk.gone) return;
    desk.gone = true;
    desk.tried = null;
    redraw();
    wait_for_server();
    return;
  }
  if (!(error instanceof Refused)) throw error;
  desk.wrong = error.message;
  if (error.state) desk.state = error.state;
  redraw();
}

// ---- The job

const drawing_wish = () => (desk.side === "front" ? { draw: "front" } : { draw: "back", layer: desk.layer });

export async function fetch_job() {
  const wish = drawing_wish();
  desk.state = await get(job_path(desk.name) + "?" + new URLSearchParams(wish));
  desk.tried = null;
  redraw();
}

let last = Promise.resolve();

export const settled = () => last; // when the edits that are under way are done

function one_after_the_other(task) {
  last = last.then(task, task);
  return last;
}

// What the framer waits for: until the frame with the new drawing has been painted.
function timed(begin, what) {
  requestAnimationFrame(() => setTimeout(() => performance.measure(what, { start: begin })));
}

// Null where all went well, else what the server says against it.
export function change(edits, told) {
  return one_after_the_other(async () => {
    const begin = performance.now();
    end_attempts();
    try {
      desk.wrong = null;
      desk.state = await post(job_path(desk.name) + "/edits",
        { on: desk.state.fingerprint, edits, ...drawing_wish() });
      desk.tried = null;
      desk.told = told || "";
      redraw();
      timed(begin, "edit");
      return null;
    } catch (error) {
      desk.tried = null;
      failed(error);
      return error.message || say("The program does not answer.");
    }
  });
}

let waiting = null, is_under_way = false, era = 0;

function end_attempts() {
  waiting = null;
  ++era; // an answer that is still under way comes too late
}

// Shows what would become of the job. Only the newest wish counts, and one is under way at a time.
export function attempt(edits) {
  waiting = edits;
  if (!is_under_way) try_newest();
}

async function try_newest() {
  is_under_way = true;
  const begin = performance.now(), its_era = era;
  let tried = null;
  try {
    await last; // an edit that is under way comes first
    const wish = waiting;
    waiting = null;
    if (wish) {
      tried = await post(job_path(desk.name) + "/previews",
        { on: desk.state.fingerprint, edits: wish, ...drawing_wish() });
    }
  } catch (error) {
    if (error instanceof Unreachable) failed(error);
  }
  is_under_way = false;
  if (waiting) try_newest(); // the server works on it while this one is drawn
  if (!tried || its_era !== era) return;
  desk.tried = tried;
  redraw();
  timed(begin, "preview");
}

// What would become of the job from the front, drawn; null where it is refused.
export async function foresee(edits) {
  try {
    await last;
    return await post(job_path(desk.name) + "/previews", { on: desk.state.fingerprint, edits, draw: "front" });
  } catch (error) {
    if (error instanceof Unreachable) failed(error);
    return null;
  }
}

export function give_up() {
  end_attempts();
  desk.tried = null;
  redraw();
}

export function step_back(way) {
  return one_after_the_other(async () => {
    try {
      desk.wrong = null;
      desk.state = await post(job_path(desk.name) + "/" + way,
        { on: desk.state.fingerprint, ...drawing_wish() });
      desk.tried = null;
      desk.told = way === "undo" ? say("Undone.") : say("Done again.");
      redraw();
    } catch (error) {
      failed(error);
    }
  });
}

// ---- What the server tells by itself

let events = null;

async function look_again() {
  const name = desk.name;
  if (!name || !desk.state) return;
  try {
    const { fingerprint } = await get(job_path(name));
    if (name !== desk.name) return;
    const was_gone = desk.file_gone;
    desk.file_gone = false;
    if (fingerprint !== desk.state.fingerprint) {
      await fetch_job();
      tell(say("The job file was changed elsewhere. This is how it is now."));
    } else if (was_gone) {
      redraw();
    }
  } catch (error) {
    if (error instanceof Refused && error.status === 404) file_is_gone();
    else failed(error);
  }
}

function file_is_gone() {
  desk.file_gone = true;
  redraw();
  setTimeout(look_again, 1000);
}

export function listen() {
  events?.close();
  events = null;
  if (!desk.name) return;
  events = new EventSource(job_path(desk.name) + "/events");
  events.addEventListener("open", look_again); // what happened before the stream began
  events.addEventListener("changed", async (event) => {
    await last;
    if (JSON.parse(event.data).fingerprint !== desk.state?.fingerprint) look_again();
  });
  events.addEventListener("gone", file_is_gone);
  events.addEventListener("suggestions", () => fetch_ideas());
  events.onerror = () => { if (!desk.gone) get("/api/about").catch(failed); };
}

// ---- Suggestions

export async function fetch_ideas() {
  const name = desk.name;
  try {
    const ideas = await get(job_path(name) + "/suggestions");
    if (name === desk.name && desk.ideas) desk.ideas = { ...ideas, open: desk.ideas.open, taken: desk.ideas.taken };
  } catch (error) {
    failed(error);
  }
  redraw();
}

export async function suggest() {
  desk.ideas = { running: true, looked_at: 0, suggestions: [], open: true };
  desk.paper = null;
  redraw();
  try {
    await post(job_path(desk.name) + "/suggestions", { most: 6, keep_borders: true });
  } catch (error) {
    desk.ideas = null;
    failed(error);
  }
}

// ---- Going from one thing to another

// A small screen is for looking: nothing is scrolled to there.
export const works_here = () => matchMedia("(min-width: 761px)").matches;

export function address_of(name) {
  return "#job=" + encodeURIComponent(name);
}

export function go_to(name) {
  location.hash = name ? address_of(name) : "";
}

export async function open_job(name) {
  Object.assign(desk, { name, state: null, tried: null, chosen: null, unfolded: null, moving: null, paper: null, ideas: null,
    side: "front", layer: 1, alone: false, versions: null, wrong: null, file_gone: false, told: "" });
  await fetch_job();
  listen();
  const { arrange, pictures, openings } = desk.state;
  const has_choice = pictures.length > 1 && (!arrange || desk.fresh === name);
  desk.fresh = null;
  desk.step = has_choice ? "arrangement" : "sizes";
  if (pictures.length === 0 && openings.length === 0) desk.step = "pictures";
  if (has_choice) suggest();
  redraw();
  if (document.activeElement === document.body && works_here()) document.querySelector(`[name="line-${desk.step}"]`)?.focus();
}

export async function open_folder() {
  Object.assign(desk, { name: null, state: null, tried: null, versions: null, alone: false, wrong: null, told: "" });
  listen();
  desk.jobs = (await get("/api/jobs")).jobs;
  redraw();
}

export function open_versions(names) {
  Object.assign(desk, { versions: names, told: "" });
  redraw();
}
