// One line of a calculation sheet: a field where the printed number stood, and the parts of the
// line that follow from the engine's reply. It touches only what differs, so focus and caret stay.
import { make, setAttr, setText } from "./dom";
import type { Alternative, TermReply } from "./protocol";
import { Working, type Both } from "./working";
import { say } from "./words";
import type { Units } from "./units";

/** What a row tells its sheet. */
export interface RowEvents {
  begin(row: Row): void;
  typed(row: Row, text: string): void;
  done(row: Row): void;
  restore(row: Row): void;
  next(row: Row): void;
  pick(row: Row, estimate: string): void;
}

/** What a row needs beside the reply to show itself. */
export interface Shown {
  units: Units;
  fact: string; // the text of the row's own fact, "" if none
  ask: string;
  clash: Both;
  revision: number; // 0: not changed
  wanted: boolean;
}

/** One value of a term that is a choice. */
export interface Choice {
  id: string;
  name: string;
}

export class Row {
  readonly term: string;
  readonly name: string;
  readonly field: HTMLInputElement | HTMLSelectElement;
  reply: TermReply;
  private dirty = false;
  private readonly unit = make("i");
  private readonly other: Element;
  private readonly mark = make("span", { class: "rev", "aria-hidden": "true" });
  private readonly title: Element;
  private readonly word: Element;
  private readonly use: Element | null;
  private readonly note: Element;
  private readonly working: Working;

  constructor(
    private readonly li: HTMLElement,
    sheetID: string,
    private readonly on: RowEvents,
  ) {
    this.term = li.dataset.term ?? "";
    this.title = part(li, ".nm");
    this.name = (this.title.textContent ?? this.term).trim();
    this.word = part(li, ".st span");
    this.use = li.querySelector(".st use");
    this.other = part(li, ".o");
    this.note = part(li, ".say");
    this.note.id = `${sheetID}-say-${this.term}`;
    this.reply = printed(li, this.term);
    this.working = new Working(part(li, ".wk"), `${sheetID}-${this.term}`, this.name, (name) => on.pick(this, name));
    this.field = this.isChoice ? this.makeSelect() : this.makeInput();
    this.field.setAttribute("aria-describedby", this.note.id);
    part(li, ".v").replaceChildren(this.field, ...(this.isChoice ? [] : [this.unit]));
    li.classList.toggle("pick", this.isChoice);
  }

  /** The line itself, for what a page hangs on it. */
  get line(): HTMLElement {
    return this.li;
  }

  get isChoice(): boolean {
    return this.li.dataset.choices !== undefined;
  }

  /** The unit that stands beside the field. */
  unitIn(units: Units): string {
    return (units === "si" ? this.li.dataset.si : this.li.dataset.us) ?? "";
  }

  /** The value as text with its unit, in US units, as a fact could carry it. */
  get present(): string {
    if (this.isChoice) return this.reply.choice ?? "";
    const { n, u } = this.reply.us ?? { n: "", u: "" };
    return n === "" ? "" : `${n} ${u}`.trim();
  }

  focus(): void {
    this.field.focus();
    if (this.field instanceof HTMLInputElement) this.field.select();
  }

  /** The typed text no longer stands for anything: show what is known instead. */
  drop(): void {
    this.dirty = false;
  }

  show(reply: TermReply, s: Shown): void {
    this.reply = reply;
    const error = reply.error ?? "";
    this.li.className = ["row", reply.state, s.wanted ? "sum" : "", this.isChoice ? "pick" : "", error ? "bad" : ""].filter(Boolean).join(" ");
    setText(this.word, say("state." + reply.state));
    if (this.use) setAttr(this.use, "href", "#sign-" + reply.state);
    this.showValue(reply, s, error);
    this.working.show(reply, s.ask, s.clash);
    setText(this.note, error);
    setAttr(this.field, "aria-invalid", error ? "true" : null);
    this.showRevision(s.revision);
  }

  private showValue(reply: TermReply, s: Shown, error: string): void {
    const large = (s.units === "si" ? reply.si : reply.us) ?? { n: "", u: "" };
    const small = (s.units === "si" ? reply.us : reply.si) ?? { n: "", u: "" };
    if (this.field instanceof HTMLSelectElement) {
      const value = reply.choice ?? "";
      if (this.field.value !== value) this.field.value = value;
      setAttr(this.field.parentElement as Element, "data-chosen", this.field.selectedOptions[0]?.text ?? ""); // for paper, where a long name has to break
    } else if (!this.dirty) {
      const text = error ? s.fact : large.n;
      if (this.field.value !== text) this.field.value = text;
    }
    this.li.classList.toggle("ranged", large.n.includes(" to "));
    const unit = large.u || this.unitIn(s.units);
    setText(this.unit, unit);
    setAttr(this.field, "aria-label", [say("sheet.value", this.name), unit].filter(Boolean).join(", "));
    const same = small.n === large.n && small.u === large.u;
    setText(this.other, same || small.n === "" ? "" : `${small.n} ${small.u}`.trim());
  }

  private showRevision(revision: number): void {
    if (revision === 0) return this.mark.remove();
    setText(this.mark, String(revision));
    if (!this.mark.isConnected) this.title.append(this.mark);
  }

  private makeInput(): HTMLInputElement {
    const input = make("input", { type: "text", autocomplete: "off", autocapitalize: "none", spellcheck: "false", enterkeyhint: "next" });
    input.addEventListener("focus", () => this.on.begin(this));
    input.addEventListener("input", () => {
      this.dirty = true;
      this.on.typed(this, input.value);
    });
    input.addEventListener("blur", () => {
      this.dirty = false;
      this.on.done(this);
    });
    input.addEventListener("keydown", (event) => {
      if (event.isComposing) return;
      if (event.key === "Enter") {
        event.preventDefault();
        this.on.next(this);
      } else if (event.key === "Escape") {
        event.preventDefault();
        this.dirty = false;
        this.on.restore(this);
        input.select();
      }
    });
    return input;
  }

  private makeSelect(): HTMLSelectElement {
    const choices = JSON.parse(this.li.dataset.choices ?? "[]") as Choice[];
    const select = make("select", {}, make("option", { value: "" }, say("sheet.choose")));
    for (const c of choices) select.append(make("option", { value: c.id }, c.name));
    select.addEventListener("focus", () => this.on.begin(this));
    select.addEventListener("change", () => {
      this.on.typed(this, select.value);
      this.on.done(this);
    });
    return select;
  }
}

function part(li: Element, selector: string): Element {
  const found = li.querySelector(selector);
  if (!found) throw new Error(`a line of the sheet has no ${selector}`);
  return found;
}

/** What the page was printed with, as if the engine had said it. */
function printed(li: HTMLElement, term: string): TermReply {
  const d = li.dataset;
  const states = Array.from(li.classList).filter((c) => c !== "row" && c !== "sum");
  const both = (scope: string): string => li.querySelector(`.wk .work ${scope}`)?.textContent ?? "";
  const work = li.querySelector(".wk .work")?.textContent ?? "";
  const reply: TermReply = {
    id: term,
    state: (states[0] ?? "missing") as TermReply["state"],
    us: { n: d.un ?? "", u: d.us ?? "" },
    si: { n: d.sn ?? "", u: d.si ?? "" },
    work: { us: both(".only-us") || work, si: both(".only-si") || work },
    relation: li.querySelector(".wk .why")?.textContent ?? "",
    note: li.querySelector(".wk .note")?.textContent ?? "",
    alternatives: JSON.parse(d.alternatives ?? "[]") as Alternative[],
  };
  if (d.choice !== undefined) reply.choice = d.choice;
  return reply;
}
