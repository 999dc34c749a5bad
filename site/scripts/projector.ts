// One exercise for a whole room: large, its steps shown one at a time. A window of its own over the
// page, so that nothing else is seen and Escape ends it.
import { act, make } from "./dom";
import { rightWords, type Drawn } from "./exercisetalk";
import { say } from "./words";

export class Projector {
  private readonly steps = make("ol", { class: "asked", role: "list" });
  private readonly given = make("div", { class: "given", tabindex: "0" });
  private readonly seed = make("span", { class: "o" });
  private readonly at = make("span", { class: "at", role: "status" });
  private readonly dialog: HTMLDialogElement;
  private hidden: HTMLElement[] = [];
  private n = 0;

  constructor(name: string) {
    const next = act(say("practice.projector.next"), () => this.turn(1));
    const before = act(say("practice.projector.before"), () => this.turn(-1));
    const end = act(say("practice.projector.end"), () => this.dialog.close());
    next.classList.add("first");
    this.given.setAttribute("aria-label", say("practice.situation"));
    this.given.setAttribute("role", "region");
    this.dialog = make("dialog", { class: "projector", "aria-label": say("practice.projector.of", name) },
      make("header", {}, make("h2", {}, name), this.seed),
      make("div", { class: "task" }, this.given, this.steps),
      make("footer", {}, next, before, this.at, end));
    this.dialog.addEventListener("keydown", (e) => this.key(e));
    document.body.append(this.dialog);
  }

  /** Shows a drawn sheet with all its steps hidden. */
  show(drawn: Drawn, situation: readonly Element[]): void {
    this.given.replaceChildren(...situation.map((e) => e.cloneNode(true)));
    for (const e of this.given.querySelectorAll("[id]")) e.removeAttribute("id");
    this.seed.textContent = say("practice.sheet", drawn.seed);
    this.hidden = [];
    this.steps.replaceChildren(...drawn.sheet.items.map((item, i) => {
      const key = drawn.key[i] ?? { right: "" };
      const lines = item.kind === "number" && key.steps?.length ? key.steps : [say("class.right", rightWords(item, key)), ...(key.say ? [key.say] : [])];
      const list = make("ul", { class: "steps", role: "list" }, ...lines.map((text) => make("li", {}, text)));
      this.hidden.push(...(Array.from(list.children) as HTMLElement[]));
      const of = make("ul", { class: "options", role: "list" },
        ...(item.options ?? item.names ?? []).map((text, k) => make("li", {}, make("b", {}, String.fromCharCode(65 + k)), " ", text)));
      const ask = make("div", { class: "one" }, make("p", { class: "what" }, item.ask), of, list);
      return make("li", {}, make("span", { class: "n" }, String(i + 1)), ask);
    }));
    this.n = 0;
    this.turn(0);
    if (!this.dialog.open) this.dialog.showModal();
    for (const size of ["0", "1", "2"]) {
      this.dialog.dataset.size = size;
      if (this.given.scrollHeight <= this.given.clientHeight) break;
    }
    this.dialog.querySelector<HTMLElement>(".act.first")?.focus();
  }

  private turn(by: number): void {
    this.n = Math.min(this.hidden.length, Math.max(0, this.n + by));
    this.hidden.forEach((e, i) => (e.hidden = i >= this.n));
    this.at.textContent = say("practice.projector.at", this.n, this.hidden.length);
    const last = this.hidden[this.n - 1] ?? this.steps.firstElementChild;
    last?.scrollIntoView({ block: "nearest" });
  }

  private key(e: KeyboardEvent): void {
    const onOther = e.target instanceof HTMLButtonElement && !e.target.classList.contains("first");
    if (e.key === "ArrowRight" || e.key === "PageDown" || (e.key === " " && !onOther)) this.turn(1);
    else if (e.key === "ArrowLeft" || e.key === "PageUp") this.turn(-1);
    else return;
    e.preventDefault();
  }
}
