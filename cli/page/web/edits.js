// Edits as the server takes them, in the names of the job file.

export const state = (name, value) => ({ kind: "state", name, value });
export const free = (name) => state(name, "free");
export const take_out = (name) => state(name, null);
export const typed = (name, text) => (text.trim() === "" ? free(name) : state(name, text.trim()));
export const written = (name, text) => (text.trim() === "" ? take_out(name) : state(name, text.trim()));
export const add = (element, attributes, more) => ({ kind: "add", element, attributes, ...more });
export const remove = (part) => ({ kind: "remove", part });
export const copy = (part) => ({ kind: "copy", part, id: "" });
export const move = (part, where, beside) => ({ kind: "move", part, to: { where, part: beside } });
export const turn = (group) => ({ kind: "turn", group });
export const arrange = (text) => ({ kind: "arrange", text });
