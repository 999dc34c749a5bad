// The tools over a drawing: labels, paths to follow, pull apart, stages, tests.
import { act, make, makeSwitch, setSwitch, type Option } from "./dom";
import { say } from "./words";

/** What stands beside the drawing. Named needs room; single brings the names one by one. */
export type Mode = "numbered" | "named" | "hidden" | "single";

/** What a tool does to its sheet. */
export interface Master {
  setMode(mode: Mode): void;
  setFollow(path: string): void;
  setApart(apart: boolean): void;
  setStages(n: number): void;
  startQuiz(kind: "name" | "find"): void;
}

/** What a drawing allows, as its page was bound. */
export interface Able {
  id: string;
  build: string;
  follow: string[];
  apart: boolean;
  stages: number;
  names: boolean;
}

export const mostStages = 20;

export class Tools {
  readonly root = make("details", { class: "cuttools" }, make("summary", {}, say("cut.tools")));
  private readonly labels: HTMLFieldSetElement;
  private readonly apart: HTMLButtonElement;
  private readonly tests: HTMLElement;
  private isApart = false;

  constructor(
    able: Able,
    private readonly master: Master,
  ) {
    this.root.open = matchMedia("(min-width: 47.5rem)").matches;
    this.labels = this.makeLabels(able);
    const body = make("div", { class: "toolrow" }, this.labels);
    if (able.follow.length > 0) body.append(this.makeFollow(able));
    this.apart = act(say("cut.apart"), () => master.setApart(!this.isApart));
    if (able.stages > 0) body.append(this.makeStages(able));
    if (able.apart) body.append(this.apart);
    this.tests = make("div", { class: "tests", role: "group", "aria-label": say("cut.quiz") },
      make("span", { class: "legend", "aria-hidden": "true" }, say("cut.quiz")),
      act(say("cut.quiz.name"), () => master.startQuiz("name")), act(say("cut.quiz.find"), () => master.startQuiz("find")));
    body.append(this.tests);
    this.root.append(body);
  }

  /** One tool more, below the others. */
  add(tool: HTMLElement | null): void {
    if (tool) this.root.append(tool);
  }

  showMode(mode: Mode): void {
    setSwitch(this.labels, mode);
  }

  showApart(apart: boolean): void {
    this.isApart = apart;
    this.apart.textContent = say(apart ? "cut.together" : "cut.apart");
  }

  /** While a test runs the labels are not to be had. */
  testing(on: boolean): void {
    this.labels.disabled = on;
    this.tests.querySelectorAll("button").forEach((b) => (b.disabled = on));
  }

  private makeLabels(able: Able): HTMLFieldSetElement {
    const modes: Mode[] = able.names ? ["numbered", "named", "hidden", "single"] : ["numbered", "hidden", "single"];
    const options = modes.map((value): Option => ({ value, text: say("cut.labels." + value) }));
    return makeSwitch("labels-" + able.id, say("cut.labels"), false, options, "numbered", (v) => this.master.setMode(v as Mode));
  }

  private makeFollow(able: Able): HTMLFieldSetElement {
    const options = ["", ...able.follow].map((value): Option => ({ value, text: say("cut.follow." + (value || "none")) }));
    return makeSwitch("follow-" + able.id, say("cut.follow"), false, options, "", (v) => this.master.setFollow(v));
  }

  private makeStages(able: Able): HTMLElement {
    const input = make("input", { type: "number", min: "1", max: String(mostStages), step: "1", value: String(able.stages) });
    input.addEventListener("change", () => {
      const n = Math.min(Math.max(Math.round(input.valueAsNumber) || able.stages, 1), mostStages);
      input.value = String(n);
      this.master.setStages(n);
    });
    return make("label", { class: "stages" }, make("span", {}, say("cut.stages")), input);
  }
}
