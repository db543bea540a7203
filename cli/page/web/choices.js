// Line 7: versions of this job, to hang side by side for the customer.

import { Component, h } from "./preact.js";
import { desk, failed, go_to } from "./desk.js";
import { Button } from "./fields.js";
import { get, post } from "./server.js";
import { say } from "./words.js";

export const versions_address = (names) => "#versions=" + encodeURIComponent(names.join("|"));

// Those that were copied from one another have a name that begins alike.
const stem = (name) => name.replace(/-\d+$/, "");

export class Choices extends Component {
  constructor() {
    super();
    this.state = { jobs: [], beside: [desk.name] };
  }

  async componentDidMount() {
    try {
      const { jobs } = await get("/api/jobs");
      const like = jobs.map((job) => job.name).filter((name) => stem(name) === stem(desk.name));
      this.setState({ jobs, beside: like.slice(0, 6) });
    } catch (error) {
      failed(error);
    }
  }

  async another() {
    try {
      go_to((await post("/api/jobs", { name: "", copy_of: desk.name })).name);
    } catch (error) {
      failed(error);
    }
  }

  put(name, beside) {
    const others = this.state.beside.filter((one) => one !== name);
    this.setState({ beside: beside ? [...others, name] : others });
  }

  render(_, { jobs, beside }) {
    const near = jobs.filter((job) => stem(job.name) === stem(desk.name) || beside.includes(job.name));
    return h("div", null,
      h(Button, { name: "another-version", does: () => this.another() }, say("Make another version")),
      h("ul", { class: "versions" }, near.map((job) => h("li", { key: job.name },
        h("label", { class: "tick" },
          h("input", { type: "checkbox", checked: beside.includes(job.name), disabled: job.name === desk.name,
            onChange: (event) => this.put(job.name, event.target.checked) }),
          h("span", null, job.name + (job.title ? ", " + job.title : "")))))),
      h(Button, { kind: "main", name: "side-by-side", disabled: beside.length < 2 || beside.length > 6,
        does: () => { location.hash = versions_address(beside); } }, say("Hang them side by side")),
      h("p", { class: "hint" }, say("Two to six versions hang side by side for the customer, without the tools.")));
  }
}
