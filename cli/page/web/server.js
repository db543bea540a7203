// Questions to the server. An answer that refuses is thrown, with its problems.

export class Refused extends Error {
  constructor(status, body) {
    super(body.problems?.map((problem) => problem.message).join("\n") || String(status));
    this.status = status;
    this.state = body.state;
    this.line = body.problems?.[0]?.line;
  }
}

export class Unreachable extends Error {}

async function answer_of(method, path, body, type) {
  try {
    return await fetch(path, { method, body, headers: type ? { "Content-Type": type } : {} });
  } catch {
    throw new Unreachable();
  }
}

export async function ask(method, path, body) {
  const answer = await answer_of(method, path, body && JSON.stringify(body), body && "application/json");
  const said = await answer.json().catch(() => ({}));
  if (!answer.ok) throw new Refused(answer.status, said);
  return said;
}

export const get = (path) => ask("GET", path);
export const post = (path, body) => ask("POST", path, body || {});

export async function send_file(path, file) {
  const answer = await answer_of("POST", path, file, "application/octet-stream");
  const said = await answer.json().catch(() => ({}));
  if (!answer.ok) throw new Refused(answer.status, said);
  return said;
}

export const job_path = (name) => "/api/jobs/" + name.split("/").map(encodeURIComponent).join("%2F");
