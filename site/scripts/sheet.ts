// <fact-sheet>: a printed calculation sheet that answers. The set and order of its rows never
// changes; typing asks the engine, and the rows take what it says within the same frame.
import { EngineError, type Engine } from "./engine";
import { fragmentNow, keepFragment } from "./address";
import { Facts } from "./facts";
import { Foot } from "./foot";
import { readFragment, readList, withUnit, type Carried, type Fact } from "./link";
import { states, type Clash, type Reply, type Request, type Table } from "./protocol";
import { Pictures } from "./pictures";
import { Revisions } from "./revisions";
import { Row, type RowEvents } from "./row";
import type { Store } from "./store";
import { onUnits, unitsNow, type Units } from "./units";
import type { Both } from "./working";
import { many, say } from "./words";

const none: Both = { us: "", si: "" };

/** ms within which a key may be answered before the next frame. */
const quick = 12;

/** The event of a sheet that has a new reply; its detail is the reply. */
export const answered = "columnbowl-answered";

/** What the page lends to its sheets. */
export interface House {
  engine(): Promise<Engine>;
  store: Store;
}

export class FactSheet extends HTMLElement implements RowEvents {
  static house: House;

  private facts!: Facts;
  private rows: Row[] = [];
  private foot!: Foot;
  private engine: Engine | null = null;
  private readonly revisions = new Revisions();
  private factBefore = ""; // of the row being typed into, for Escape
  private reply: Reply | null = null;
  private pictures: Pictures | null = null; // of the page, for its first sheet
  private brought: readonly string[] = []; // lines that go with every request
  private due = 0;
  private took = 0; // ms that the last question took, with what the page did about it
  private drawing = 0;
  private saving = 0;
  private built = false;

  connectedCallback(): void {
    if (this.built) return;
    this.built = true;
    this.facts = new Facts(this.attributeFacts("facts"), this.attributeFacts("choose"), this.getAttribute("want") ?? "");
    this.rows = Array.from(this.querySelectorAll<HTMLElement>("li.row"), (li) => new Row(li, this.id, this));
    this.foot = new Foot(this, this.rows, this.getAttribute("want") ?? "", this.dataset.carry ?? "");
    this.render();
    onUnits(() => this.ask());
    this.addEventListener("focusin", () => void this.wake(), { once: true });
    if (this.isFirst && !this.isDesk) {
      this.pictures = new Pictures(document);
      matchMedia("(max-width: 44rem)").addEventListener("change", () => this.ask());
      addEventListener("hashchange", () => this.takeFragment(fragmentNow()));
      this.takeFragment(fragmentNow());
    }
    if (!this.isDesk) void this.offerLast();
  }

  // what the desk tells: it looks after the address and the memory of its sheet, and hears of every
  // change by the event "facts"

  /** Whether this is the enquiry sheet of the desk. */
  get isDesk(): boolean {
    return this.hasAttribute("data-desk");
  }

  /** The facts as they stand. */
  get carried(): Carried {
    return { facts: this.facts.list, choose: this.facts.choose, want: this.facts.want, bad: [] };
  }

  get lines(): readonly Row[] {
    return this.rows;
  }

  /** Puts facts on the sheet beside those that are there, as if they had been typed; "" withdraws. */
  put(facts: readonly Fact[]): void {
    for (const f of facts) {
      const row = this.row(f.term);
      if (row) this.revisions.open(f.term, row.name);
      row?.drop();
      this.facts.set(f.term, f.text);
    }
    this.askNow();
    this.revisions.close();
    this.foot.announce(this.wantedText());
    void this.wake();
  }

  /** Brings lines that go with every request: families of bowls of the reader's own. */
  bring(lines: readonly string[]): void {
    this.brought = lines;
    if (this.engine) this.ask();
    else void this.wake();
  }

  /** Loads the engine, if it is not there, and asks for the first time. */
  async wake(): Promise<void> {
    if (this.engine) return;
    try {
      this.engine = await FactSheet.house.engine();
      this.ask();
    } catch (e) {
      this.foot.trouble(e instanceof EngineError ? e : new EngineError("failed", String(e)));
    }
  }

  // what the rows tell

  begin(row: Row): void {
    this.factBefore = this.facts.text(row.term);
  }

  typed(row: Row, text: string): void {
    this.revisions.open(row.term, row.name);
    this.facts.set(row.term, unitsNow() === "si" && !row.isChoice ? withUnit(text, row.unitIn("si")) : text);
    this.soon();
  }

  done(row: Row): void {
    this.revisions.close();
    if (this.due) this.askNow();
    else this.render();
    if (this.facts.text(row.term) !== this.factBefore) this.foot.announce(this.wantedText());
  }

  restore(row: Row): void {
    this.facts.set(row.term, this.factBefore);
    this.revisions.undo();
    this.askNow();
  }

  next(row: Row): void {
    const after = this.rows[this.rows.indexOf(row) + 1];
    if (after) after.focus();
    else this.foot.focus();
  }

  pick(row: Row, estimate: string): void {
    this.revisions.open(row.term, row.name);
    this.facts.pick(row.term, estimate);
    this.askNow();
    this.revisions.close();
  }

  // what the foot tells

  find(term: string): void {
    const former = this.rows.find((r) => r.term === this.facts.want);
    const present = former ? former.present : "";
    const had = this.facts.text(term) !== "";
    const kept = present !== "" && former !== undefined && former.reply.state !== "given";
    this.facts.find(term, former && former.reply.state === "given" ? this.facts.text(former.term) : present);
    const row = this.rows.find((r) => r.term === term);
    this.foot.news([
      ...(had && row ? [say("sheet.withdrawn", row.name)] : []),
      ...(kept && former ? [say("sheet.kept", former.name)] : []),
    ]);
    this.fresh();
  }

  back(): void {
    this.facts.reset();
    this.foot.news([]);
    this.fresh();
  }

  /** Takes facts from a link, from the last sheet or from a worked example. */
  take(carried: Carried, title = ""): void {
    const known = new Set(this.rows.map((r) => r.term));
    const strange = carried.want !== "" && !known.has(carried.want) ? carried.want : "";
    this.facts.load(strange === "" ? carried : { ...carried, want: "" });
    this.foot.news([
      ...(title !== "" ? [say("sheet.taken", title)] : []),
      ...carried.bad.map((b) => say("sheet.link.bad", b)),
      ...(strange !== "" ? [say("sheet.link.want", strange)] : []),
      ...carried.facts.filter((f) => !known.has(f.term)).map((f) => say("sheet.link.unknown", f.term)),
    ]);
    this.fresh();
  }

  row(term: string): Row | undefined {
    return this.rows.find((r) => r.term === term);
  }

  get lastReply(): Reply | null {
    return this.reply;
  }

  /** Asks for another set of facts: the marks of earlier changes go. */
  private fresh(): void {
    for (const r of this.rows) r.drop();
    this.revisions.clear();
    this.askNow();
    void this.wake();
  }

  /**
   * After a key. A quick machine has the numbers before the next frame begins; on a slow one the keys
   * of a frame are answered together.
   */
  private soon(): void {
    if (!this.engine) void this.wake();
    if (this.due) return;
    if (this.engine && this.took < quick) return this.askNow();
    this.due = requestAnimationFrame(() => this.askNow());
  }

  private askNow(): void {
    cancelAnimationFrame(this.due);
    this.due = 0;
    const start = performance.now();
    this.ask();
    this.took = performance.now() - start;
    this.save();
  }

  private ask(): void {
    if (!this.engine) return this.tell();
    try {
      const show = this.rows.map((r) => r.term);
      const question = { want: this.wantNow(show), facts: this.facts.list, choose: this.facts.choose, lines: this.brought };
      this.reply = this.engine.ask({ ...question, show, pieces: this.dataset.pieces !== undefined, rows: this.dataset.rules });
      this.drawSoon(question);
      this.dispatchEvent(new CustomEvent(answered, { detail: this.reply }));
      this.foot.trouble(null);
    } catch (e) {
      this.foot.trouble(e instanceof EngineError ? e : new EngineError("died", String(e)));
    }
    this.tell();
  }

  /**
   * The pictures come behind the numbers: the engine still knows the answer to the question. A question
   * that follows at once takes the place of this one.
   */
  private drawSoon(question: Omit<Request, "show">): void {
    clearTimeout(this.drawing);
    if (this.facts.isExample) return this.pictures?.reset();
    if (!this.pictures || this.pictures.none) return;
    this.drawing = window.setTimeout(() => {
      const drawn = this.engine?.ask({ ...question, show: [], pictures: this.pictures?.wanted ?? [] });
      this.pictures?.show(drawn?.pictures ?? []);
    });
  }

  private tell(): void {
    this.render();
    this.dispatchEvent(new CustomEvent("facts"));
  }

  /**
   * A sheet that looks for a term which cannot be had yet asks only for what leads there. The desk
   * asks for everything, so its sheet looks for its term from the moment it can be had.
   */
  private wantNow(show: readonly string[]): string {
    const want = this.facts.want;
    if (!this.isDesk || want === "" || !this.engine) return want;
    const probe = this.engine.ask({ want: "", facts: this.facts.list, choose: this.facts.choose, show: [...show, want], lines: this.brought });
    return (probe.terms.at(-1)?.us?.n ?? "") === "" ? "" : want;
  }

  /** Asks something else about the facts of the sheet, without a change to it. */
  async inquire(more: Partial<Request>): Promise<Reply | null> {
    await this.wake();
    return this.engine?.ask({ want: "", facts: this.facts.list, choose: this.facts.choose, show: [], lines: this.brought, ...more }) ?? null;
  }

  /** The pieces for the facts of the sheet as a table; null if it is not known which pump it is. */
  async table(units: Units): Promise<Table | null> {
    await this.wake();
    return this.engine?.ask({ want: "", facts: this.facts.list, choose: this.facts.choose, show: [], table: units }).table ?? null;
  }

  private render(): void {
    const units = unitsNow();
    const reply = this.reply;
    const asks = new Map(reply?.missing?.flatMap((set) => set.terms).map((q) => [q.id, q.ask]));
    const clashes = clashTexts(reply?.clashes ?? []);
    const said = new Map(reply?.terms.map((t) => [t.id, t]));
    if (reply) this.revisions.look(this.rows.map((r) => ({ term: r.term, value: said.get(r.term)?.us?.n ?? "" })));
    for (const r of this.rows) {
      const own = said.get(r.term) ?? r.reply;
      r.show(own, {
        units,
        fact: this.facts.text(r.term),
        ask: asks.get(r.term) ?? this.printedAsk(r),
        clash: reply && own.state === "clash" ? clashes.get(r.term) ?? none : reply ? none : this.printedClash(r),
        revision: this.revisions.of(r.term),
        wanted: r.term === this.facts.want,
      });
    }
    if (reply) this.count(reply);
    this.foot.show(reply, this.facts, this.revisions.told);
  }

  private count(reply: Reply): void {
    const parts = states.filter((s) => (reply.count[s] ?? 0) > 0).map((s) => many("count." + s, reply.count[s] ?? 0));
    const place = this.querySelector(".count");
    const text = parts.join(", ");
    if (place && place.textContent !== text) place.textContent = text;
  }

  private readonly asked = new Map<string, string>();
  private printedAsk(r: Row): string {
    return this.printed(r, ".ask");
  }

  private printedClash(r: Row): Both {
    const us = this.printed(r, ".clashes .only-us");
    return us === "" ? { us: this.printed(r, ".clashes"), si: "" } : { us, si: this.printed(r, ".clashes .only-si") };
  }

  /** Words that the page was printed with, read once before the script writes over them. */
  private printed(r: Row, selector: string): string {
    const key = r.term + selector;
    const known = this.asked.get(key);
    if (known !== undefined) return known;
    const text = this.querySelector(`li[data-term="${r.term}"] .wk ${selector}`)?.textContent ?? "";
    this.asked.set(key, text);
    return text;
  }

  private wantedText(): string {
    const wanted = this.row(this.facts.want);
    if (!wanted) return "";
    const { n, u } = (unitsNow() === "si" ? wanted.reply.si : wanted.reply.us) ?? { n: "", u: "" };
    return n === "" ? `${wanted.name}: ${say("state." + wanted.reply.state)}` : `${wanted.name}: ${n} ${u}`.trim();
  }

  // memory: the address of the page, and the store for the next page

  private get isFirst(): boolean {
    return document.querySelector("fact-sheet") === this;
  }

  private takeFragment(hash: string): void {
    const carried = readFragment(hash);
    if (carried && hash !== this.facts.fragment) this.take(carried);
  }

  private save(): void {
    clearTimeout(this.saving);
    this.saving = window.setTimeout(() => {
      const example = this.facts.isExample;
      const fragment = this.facts.fragment;
      if (this.isFirst) keepFragment(example ? "" : fragment);
      if (!example) void FactSheet.house.store.set("facts", fragment);
    }, 300);
  }

  private async offerLast(): Promise<void> {
    const kept = await FactSheet.house.store.get("facts");
    const carried = kept === null ? null : readFragment(kept);
    if (carried && kept !== this.facts.fragment) this.foot.offer(carried);
  }

  private attributeFacts(name: string): Fact[] {
    const facts: Fact[] = [];
    readList(this.getAttribute(name) ?? "", facts, []);
    return facts;
  }
}

/** What each term of a clash is told: its own clash, or the first that names it among its facts. */
function clashTexts(clashes: Clash[]): Map<string, Both> {
  const texts = new Map<string, Both>();
  const words = (c: Clash): Both => ({ us: c.text, si: c.textSi ?? "" });
  for (const c of clashes) texts.set(c.term, words(c));
  for (const c of clashes) for (const term of c.facts) if (!texts.has(term)) texts.set(term, words(c));
  return texts;
}
