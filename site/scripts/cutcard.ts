// What is said about the part that was picked, with the steps up and down. It is told to those
// who do not see it as well.
import { act, make } from "./dom";
import { say } from "./words";

/** What the list beside a drawing knows of a part. */
export interface Known {
  n: number;
  name: string;
  motion: string;
  says: string;
  url: string;
}

export class Card {
  readonly root = make("div", { class: "cutcard" });
  private readonly text = make("div", { class: "cuttext", role: "status" });
  private readonly acts = make("div", { class: "acts" });

  constructor(
    private readonly walk: { next(): void; before(): void; reveal(): void },
  ) {
    this.root.append(this.text, this.acts);
    this.reset();
    this.steps(false);
  }

  /** The buttons of the ordinary state. */
  steps(reveals: boolean): void {
    const list = [act(say("cut.before"), () => this.walk.before()), act(say("cut.next"), () => this.walk.next())];
    if (reveals) list.push(act(say("cut.show-next"), () => this.walk.reveal()));
    this.buttons(list);
  }

  buttons(list: HTMLElement[]): void {
    this.acts.replaceChildren(...list);
  }

  /** A part: its number, name, motion, what it is for, and the way to its page. */
  part(k: Known): void {
    const head = make("p", { class: "cutname" }, make("span", { class: "no" }, String(k.n)), " ", make("b", {}, k.name));
    if (k.motion !== "") head.append(" ", make("span", { class: "key" }, k.motion));
    const lines: HTMLElement[] = [head];
    if (k.says !== "") lines.push(make("p", {}, k.says));
    if (k.url !== "") lines.push(make("p", { class: "cutway" }, make("a", { href: k.url }, say("cut.page"))));
    this.text.replaceChildren(...lines);
  }

  say(...lines: string[]): void {
    this.text.replaceChildren(...lines.filter((l) => l !== "").map((l) => make("p", {}, l)));
  }

  reset(): void {
    this.say(say("cut.none"));
  }
}
