// What stands under a sheet: what to look for, the buttons, the questions, cautions and news.
import { act, make, setText } from "./dom";
import type { EngineError } from "./engine";
import type { Facts } from "./facts";
import { drawHangs } from "./hangs";
import type { Carried } from "./link";
import type { Reply } from "./protocol";
import { questions } from "./questions";
import type { Row } from "./row";
import type { FactSheet } from "./sheet";
import { warnings } from "./warnings";
import { say } from "./words";

export class Foot {
  private readonly place: Element;
  private readonly select: HTMLSelectElement;
  private readonly acts = make("div", { class: "acts" });
  private readonly carry: HTMLAnchorElement | null;
  private readonly stepsButton = act(say("sheet.steps"), () => this.toggleSteps());
  private readonly revised = make("p", { class: "key" });
  private readonly list = make("ul", { class: "news", role: "status" });
  private readonly problem = make("p", { class: "news", role: "status" });
  private readonly asks = make("div", { class: "asks" });
  private readonly warned = make("div", { class: "warnings", role: "status" });
  private readonly hangs = make("section", { class: "hangs" });
  private readonly steps = make("div", { class: "steps-to" });
  private readonly quiet = make("p", { class: "off", role: "status" });
  private readonly findLine: HTMLElement;

  constructor(
    private readonly sheet: FactSheet,
    rows: Row[],
    want: string,
    private readonly carryTo: string,
  ) {
    this.place = sheet.querySelector(".sheetfoot") ?? sheet.appendChild(make("div", { class: "sheetfoot" }));
    this.select = this.makeFind(rows, want);
    const label = make("label", { for: this.select.id }, say("sheet.find"));
    this.findLine = make("div", { class: "find" }, label, this.select);
    this.carry = carryTo === "" ? null : make("a", { class: "act", href: carryTo }, say("sheet.carry"));
    const print = act(say("sheet.print"), () => window.print());
    print.classList.add("first");
    // the desk has its own list of questions, and no example to fall back to
    const own = sheet.isDesk ? [] : [act(say("sheet.ask"), () => this.ask())];
    const back = sheet.isDesk ? [] : [act(say("sheet.back"), () => sheet.back())];
    this.acts.append(print, ...own, this.stepsButton, ...back, ...(this.carry ? [this.carry] : []));
    this.stepsButton.setAttribute("aria-pressed", "false");
    this.place.prepend(this.warned, this.problem, this.list, this.findLine, this.acts, this.asks, this.hangs, this.steps, this.revised, this.quiet);
  }

  focus(): void {
    this.acts.querySelector("button")?.focus();
  }

  /** Shows what follows from a reply: the link to the chain, cautions, steps, the last revision. */
  show(reply: Reply | null, facts: Facts, told: { number: number; name: string } | null): void {
    if (this.select.value !== facts.want) this.select.value = facts.want;
    if (this.carry) this.carry.href = this.carryTo + facts.fragment;
    this.revised.hidden = told === null;
    if (told) this.revised.replaceChildren(make("span", { class: "rev", "aria-hidden": "true" }, String(told.number)), " ", say("sheet.revised", told.name));
    if (!reply) return;
    warnings(this.warned, reply.cautions ?? [], reply.pieces?.cautions?.map((c) => c.text));
    drawHangs(this.hangs, reply, this.sheet.row(reply.want)?.name ?? "");
    this.showSteps(reply);
    if (this.asks.childNodes.length > 0) this.listQuestions(reply);
  }

  news(lines: string[]): void {
    this.list.replaceChildren(...lines.map((l) => make("li", {}, l)));
  }

  /** Says why there are no new numbers; null when there are again. */
  trouble(e: EngineError | null): void {
    setText(this.problem, e === null ? "" : say("engine." + e.kind, e.message));
  }

  /** For those who do not see the rows change. */
  announce(text: string): void {
    setText(this.quiet, text);
  }

  /** Offers the facts of the last sheet. */
  offer(carried: Carried): void {
    const button = act(say("sheet.last"), () => {
      this.sheet.take(carried);
      button.remove();
      this.select.focus();
    });
    this.acts.append(button);
  }

  private makeFind(rows: Row[], want: string): HTMLSelectElement {
    const select = make("select", { id: this.sheet.id + "-find" });
    if (want === "") select.append(make("option", { value: "" }, say("sheet.find.none")));
    for (const r of rows) if (!r.isChoice) select.append(make("option", { value: r.term }, r.name));
    select.value = want;
    select.addEventListener("change", () => this.sheet.find(select.value));
    return select;
  }

  private async ask(): Promise<void> {
    await this.sheet.wake();
    const reply = this.sheet.lastReply;
    if (!reply) return;
    const first = this.listQuestions(reply);
    if (first) first.focus();
    else this.asks.focus();
  }

  /** Lists the questions; returns the first row of this sheet that is asked for. */
  private listQuestions(reply: Reply): Row | undefined {
    const wanted = this.sheet.row(reply.want)?.name ?? "";
    const close = act(say("sheet.missing.close"), () => {
      this.asks.replaceChildren();
      this.focus();
    });
    this.asks.tabIndex = -1;
    this.asks.replaceChildren(...questions(reply, wanted, (term) => this.sheet.row(term)), close);
    const ids = (reply.missing ?? []).flatMap((set) => set.terms).map((q) => q.id);
    return ids.map((id) => this.sheet.row(id)).find((r) => r !== undefined);
  }

  private toggleSteps(): void {
    const shown = this.sheet.querySelector(".calc")?.classList.toggle("steps-shown") ?? false;
    this.stepsButton.setAttribute("aria-pressed", String(shown));
    this.steps.hidden = !shown;
    void this.sheet.wake();
  }

  private showSteps(reply: Reply): void {
    const us = reply.steps ?? [];
    const si = reply.stepsSi ?? [];
    this.steps.hidden = this.stepsButton.getAttribute("aria-pressed") !== "true";
    const list = (lines: string[], scope: string) => make("ol", { class: scope, role: "list" }, ...lines.map((l) => make("li", {}, l)));
    const name = this.sheet.row(reply.want)?.name ?? "";
    if (us.length === 0) return this.steps.replaceChildren();
    this.steps.replaceChildren(make("h3", {}, say("sheet.steps.title", name)), list(us, si.length ? "only-us" : ""), ...(si.length ? [list(si, "only-si")] : []));
  }
}
