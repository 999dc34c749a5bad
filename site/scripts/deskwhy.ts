// “Why?”: the chain behind a number of the desk, from the given facts to it. Each line leads to its
// term and, where a published value checks the term, to the check.
import { act, make, setAttr } from "./dom";
import type { WhyLine } from "./protocol";
import type { Row } from "./row";
import type { FactSheet } from "./sheet";
import { say } from "./words";

const derived = ["follows", "estimated", "assumed", "clash"];

export class Whys {
  private open: Row | null = null;
  private readonly box = make("div", { class: "whybox" });
  private readonly buttons = new Map<Row, HTMLButtonElement>();
  private readonly checks: Record<string, string>; // by a term the page with its published check
  private turn = 0;

  constructor(place: HTMLElement, private readonly sheet: FactSheet) {
    this.checks = JSON.parse(place.dataset.checks ?? "{}") as Record<string, string>;
  }

  /** Gives every number that was worked out its button, and draws the open chain again. */
  changed(): void {
    for (const row of this.sheet.lines) {
      const { n } = row.reply.us ?? { n: "" };
      const has = derived.includes(row.reply.state) && n !== "" && !row.isChoice;
      const button = this.buttons.get(row) ?? this.make(row);
      // an empty working column drops what is in it
      if (has && !button.isConnected) (row.line.querySelector(".wk") ?? row.line).append(" ", button);
      button.hidden = !has;
      if (!has && this.open === row) this.toggle(row);
    }
    if (this.open) void this.tell(this.open);
  }

  private make(row: Row): HTMLButtonElement {
    const button = act(say("desk.why"), () => this.toggle(row));
    button.classList.add("whybutton");
    setAttr(button, "aria-label", say("desk.why.of", row.name));
    setAttr(button, "aria-expanded", "false");
    this.buttons.set(row, button);
    return button;
  }

  private toggle(row: Row): void {
    this.open = this.open === row ? null : row;
    for (const [r, b] of this.buttons) setAttr(b, "aria-expanded", String(r === this.open));
    if (!this.open) return this.box.remove();
    this.box.replaceChildren();
    row.line.append(this.box);
    void this.tell(row);
  }

  private async tell(row: Row): Promise<void> {
    const turn = ++this.turn;
    const reply = await this.sheet.inquire({ want: row.term, why: row.term });
    if (!reply?.why || turn !== this.turn || this.open !== row) return;
    const middle = reply.why.some((l) => l.ranged) ? [make("p", {}, say("desk.why.ranged"))] : [];
    this.box.replaceChildren(...middle, make("ol", { role: "list" }, ...reply.why.map((l) => this.step(l))));
  }

  private step(l: WhyLine): HTMLElement {
    const li = make("li", { class: l.state }, make("span", { class: "only-us" }, l.us), make("span", { class: "only-si" }, l.si));
    if (l.state === "given") li.append(" ", make("i", {}, say("state.given")));
    li.append(" ", make("a", { href: `terms/${l.id}.html` }, l.name));
    const check = this.checks[l.id];
    if (check) li.append(" ", make("a", { href: check }, say("desk.why.check")));
    return li;
  }
}
