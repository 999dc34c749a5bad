// Prepared questions: they open with the numbers of the sheet in, and tell what is now beside what
// would be. Which questions there are, and what each changes, stands in the book.
import { act, make, setAttr } from "./dom";
import type { Compared, PieceText, Reply, Request } from "./protocol";
import { turnItems } from "./hangs";
import { questions } from "./questions";
import type { FactSheet } from "./sheet";
import { say } from "./words";

interface What {
  ask: string;
  show: string[];
  change?: string[];
  by?: string;
  sizes?: string[];
  href?: string;
}

const mostWays = 2; // sets of questions that are told, of which one is enough

export class WhatIf {
  private readonly list: What[];
  private readonly answer = make("div", { class: "answer", role: "status" });
  private readonly buttons: HTMLButtonElement[];
  private open: What | null = null;
  private by = "";
  private turn = 0; // of the last question to the engine

  constructor(place: HTMLElement, private readonly sheet: FactSheet, private readonly name: (term: string) => string) {
    this.list = JSON.parse(place.dataset.what ?? "[]") as What[];
    this.buttons = this.list.map((w) => act(w.ask, () => this.choose(w)));
    for (const b of this.buttons) setAttr(b, "aria-pressed", "false");
    if (this.list.length === 0) return;
    const title = make("h2", { id: "desk-what" }, say("desk.what"));
    place.append(make("section", { class: "whatif", "aria-labelledby": "desk-what" }, title, make("div", { class: "acts" }, ...this.buttons), this.answer));
  }

  /** The facts of the sheet changed: the open question is answered again. */
  changed(): void {
    if (this.open) void this.tell();
  }

  private choose(w: What): void {
    this.open = this.open === w ? null : w;
    this.by = w.by ?? "";
    this.buttons.forEach((b, i) => setAttr(b, "aria-pressed", String(this.list[i] === this.open)));
    this.answer.replaceChildren();
    if (this.open) void this.tell();
  }

  private async tell(): Promise<void> {
    const w = this.open;
    if (!w) return;
    const turn = ++this.turn;
    const reply = await this.sheet.inquire(this.request(w));
    // what is asked for is the first line that cannot be had yet
    const lack = reply?.terms.find((t) => t.state === "missing" || t.state === "waits")?.id;
    const all = reply && lack && lack !== reply.want ? await this.sheet.inquire({ want: lack }) : reply;
    if (reply && turn === this.turn) this.draw(w, reply, all ?? reply);
  }

  private request(w: What): Partial<Request> {
    const each = (text: string) => (w.change ?? []).map((term) => ({ term, text }));
    return { want: w.show[0] ?? "", show: w.show, shift: w.by ? each(this.by) : [], next: w.sizes ? each(w.sizes.join(";")) : [] };
  }

  private draw(w: What, reply: Reply, lacks: Reply): void {
    const out: (Node | string)[] = [];
    const field = this.answer.querySelector("input");
    if (w.by) out.push(field?.closest("label") ?? this.amount());
    const c = reply.compare;
    if (c?.problem) out.push(make("p", { class: "news" }, c.problem));
    if (c?.needs) out.push(make("p", { class: "news" }, say("desk.what.needs", c.needs.map(this.name).join(", "))));
    for (const text of c?.clashes ?? []) out.push(make("p", { class: "news" }, text));
    if (c?.lines) out.push(table([...(c.changed ?? []), ...c.lines], true));
    else if (!w.change) out.push(table(reply.terms.map((t) => now(t.id, this.name(t.id), t)), false));
    if (reply.turns) out.push(make("p", {}, say("sheet.turns")), make("ul", { role: "list", class: "turns" }, ...turnItems(reply.turns)));
    if (lacks.missing) out.push(make("p", {}, say("desk.what.lacks", this.name(lacks.want))), ...questions({ ...lacks, missing: lacks.missing.slice(0, mostWays) }, this.name(lacks.want), (term) => this.sheet.row(term)));
    if (w.href) out.push(make("p", {}, make("a", { href: w.href }, say("desk.what.more"))));
    if (field) for (const e of Array.from(this.answer.children).slice(1)) e.remove();
    if (field) this.answer.append(...out.slice(1));
    else this.answer.replaceChildren(...out);
  }

  private amount(): HTMLElement {
    const input = make("input", { type: "text", autocomplete: "off", autocapitalize: "none", spellcheck: "false" });
    input.value = this.by;
    input.addEventListener("input", () => {
      this.by = input.value;
      void this.tell();
    });
    return make("label", {}, say("desk.what.by"), " ", input);
  }
}

function now(id: string, name: string, t: Reply["terms"][number]): Compared {
  const text = (n: typeof t.us) => (n && n.n !== "" ? `${n.n} ${n.u}`.trim() : "");
  const us = text(t.us);
  return us === "" ? { id, name } : { id, name, before: { us, si: text(t.si) } };
}

/** Lines with what is now and, where something is changed, what would be and the difference. */
function table(lines: Compared[], changed: boolean): HTMLElement {
  const heads = changed ? ["desk.what.line", "desk.what.now", "desk.what.then", "desk.what.move"] : ["desk.what.line", "desk.what.now"];
  const body = make("tbody");
  const seen = new Set<string>();
  for (const l of lines) {
    if (seen.has(l.id)) continue;
    seen.add(l.id);
    const name = make("th", { scope: "row" }, make("a", { href: `terms/${l.id}.html` }, l.name));
    body.append(make("tr", {}, name, cell(l.before), ...(changed ? [cell(l.after), cell(l.move)] : [])));
  }
  return make("table", {}, make("thead", {}, make("tr", {}, ...heads.map((k) => make("th", { scope: "col" }, say(k))))), body);
}

function cell(text: PieceText | undefined): HTMLElement {
  if (!text) return make("td", {}, say("desk.duty.none"));
  return make("td", { class: "num" }, make("span", { class: "only-us" }, text.us), make("span", { class: "only-si" }, text.si));
}
