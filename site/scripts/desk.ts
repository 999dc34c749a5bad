// The desk: what the customer says becomes facts, the facts a duty, and what is missing is asked.
// The sheet holds the facts; this holds the call around it, keeps it, files it and brings it back.
import { addressWith, fragmentNow } from "./address";
import { AskList, openAsks, type Open } from "./deskasks";
import { DeskBook } from "./deskbook";
import { curveOf, partsOf } from "./curve";
import { DeskBar } from "./deskbar";
import { DeskCurve, faultOf } from "./deskcurve";
import { emptyEnquiry, readFile, writeFile, FileError, type Enquiry, type From } from "./deskfile";
import { HeadFields } from "./deskhead";
import { linkFault, longest } from "./desklink";
import { drawPrint, valueOf } from "./deskprint";
import { drawSaid, type ReadingHost } from "./deskreadings";
import { Said, type AskReply, type Candidate, type Reading } from "./desksaid";
import { SayField } from "./desksay";
import { act, make, setText } from "./dom";
import { WhatIf } from "./deskwhat";
import { Whys } from "./deskwhy";
import { Trial } from "./desktrial";
import { EngineError } from "./engine";
import { joinUnit, readFragment, readList, writeFragment, type Fact } from "./link";
import type { Reply } from "./protocol";
import { FactSheet } from "./sheet";
import { say } from "./words";

/** Terms that stand with the wanted one in the duty. */
const dutyTerms = ["capacity", "least-capacity", "most-capacity", "lowest-level", "setting", "casing-inside-diameter"];

export class Desk implements ReadingHost {
  private readonly book: DeskBook;
  private readonly bookID = document.documentElement.dataset.book ?? "";
  private readonly want: string;
  private readonly head: HeadFields;
  private readonly field: SayField;
  private readonly bar: DeskBar;
  private readonly asks: AskList;
  private readonly saidPlace = make("div", { class: "saids" });
  private readonly extras = make("ul", { role: "list", class: "extras" });
  private readonly duty = make("p", { class: "dutyline", role: "status" });
  private said: Said[] = [];
  private from = new Map<string, { from: From; words?: string }>();
  private texts = new Map<string, string>(); // facts as the desk last saw them
  private readonly trial: Trial;
  private readonly what: WhatIf;
  private readonly whys: Whys;
  private readonly curve: DeskCurve;
  private readonly toBowls = make("a", { class: "act" }, say("desk.bowls"));
  private readonly bowlsURL: string; // "" if the book has no such page
  private open: Open[] = [];
  private drawn = "";
  private saving = 0;
  private touched = false; // whether the caller has begun anything

  constructor(private readonly place: HTMLElement, private readonly sheet: FactSheet, private readonly printPlace: Element) {
    this.book = new DeskBook(place);
    this.want = sheet.getAttribute("want") ?? "";
    this.trial = new Trial(() => sheet.carried);
    place.closest("main")?.classList.add("alive");
    document.documentElement.classList.add("atdesk");
    this.bar = new DeskBar(place, {
      fresh: () => this.confirm("desk.new.sure", () => this.replace(emptyEnquiry(this.want))),
      example: () => this.confirm("desk.example.sure", () => this.replace(this.example())),
      text: () => writeFile(this.bookID, this.enquiry),
      name: () => this.enquiry.head,
      load: (text) => void this.takeFile(text),
      link: () => this.linkOut(),
    });
    const heads = make("div");
    place.append(heads);
    this.field = new SayField(place, (text) => void this.hear(text));
    place.append(this.saidPlace, this.extras);
    this.asks = new AskList(place, this.book, (term) => sheet.row(term)?.focus());
    this.head = new HeadFields(heads, place, () => this.save());
    this.bowlsURL = place.dataset.bowls ?? "";
    place.append(this.duty);
    if (this.bowlsURL !== "") place.append(make("p", { class: "acts" }, this.toBowls));
    this.curve = new DeskCurve(place, sheet, () => this.changed());
    this.what = new WhatIf(place, sheet, (term) => this.book.name(term));
    this.whys = new Whys(place, sheet);
    sheet.addEventListener("facts", () => this.changed());
    addEventListener("hashchange", () => void this.takeLink());
    void this.begin();
  }

  /** Opens with the link of the address, or with the enquiry that this browser kept. */
  private async begin(): Promise<void> {
    const linked = await this.takeLink();
    this.changed();
    const kept = await this.kept();
    if (!kept || (linked === "same call" && !this.touched)) return;
    const same = JSON.stringify(kept.facts.map(pair)) === JSON.stringify(this.enquiry.facts.map(pair));
    if (!this.touched && (linked === "" || same)) this.apply(kept);
    else this.offer(kept);
  }

  /** The enquiry that this browser keeps; null if there is none to bring back. */
  private async kept(): Promise<Enquiry | null> {
    const text = await FactSheet.house.store.get("desk");
    if (text === null || text === "") return null;
    try {
      const e = readFile(text, this.bookID, (t) => this.book.has(t));
      return isEmpty(e) ? null : e;
    } catch {
      return null; // kept by another edition of the book
    }
  }

  // the enquiry as a whole

  get enquiry(): Enquiry {
    const { facts, choose, want } = this.sheet.carried;
    return {
      head: this.head.head,
      notes: this.head.answers,
      sentences: this.said.map((s) => ({ text: s.text, dropped: [...s.dropped] })),
      facts: facts.map((f) => ({ ...f, from: "typed" as From, ...this.from.get(f.term) })),
      choose: choose.map((c) => ({ term: c.term, estimate: c.text })),
      want: want || this.want,
      ...(this.curve.curve ? { curve: this.curve.curve } : {}),
    };
  }

  /** Puts another enquiry in the place of this one, and offers the way back. */
  private replace(e: Enquiry): void {
    const before = this.enquiry;
    this.apply(e);
    this.bar.tell("");
    if (!isEmpty(before)) this.offer(before);
    this.save();
  }

  private apply(e: Enquiry): void {
    this.curve.set(e.curve); // first: the sheet answers at once, with the facts of before
    this.head.set(e.head, e.notes);
    this.said = e.sentences.map((s) => new Said(s.text, [], s.dropped));
    this.from = new Map(e.facts.map((f) => [f.term, f.words === undefined ? { from: f.from } : { from: f.from, words: f.words }]));
    this.texts = new Map(e.facts.map((f) => [f.term, f.text]));
    this.sheet.take({ facts: e.facts.map(({ term, text }) => ({ term, text })), choose: e.choose.map((c) => ({ term: c.term, text: c.estimate })), want: e.want, bad: [] });
    if (this.said.length > 0) void this.readAgain();
    this.changed();
  }

  private offer(kept: Enquiry): void {
    this.bar.offer(say("desk.undo", kept.head.customer || say("desk.nameless")), () => this.replace(kept));
  }

  private example(): Enquiry {
    const facts: Fact[] = [];
    readList(this.place.dataset.example ?? "", facts, []);
    const e = emptyEnquiry(this.want);
    e.head.customer = this.place.dataset.exampleName ?? "";
    e.facts = facts.map((f) => ({ ...f, from: "example" }));
    return e;
  }

  /** Asks before an enquiry that holds something is put away. */
  private confirm(key: string, then: () => void): void {
    const now = this.enquiry;
    if (isEmpty(now)) then();
    else this.bar.ask(say(key, now.head.customer || say("desk.nameless")), then);
  }

  private async takeFile(text: string): Promise<void> {
    try {
      const e = readFile(text, this.bookID, (t) => this.book.has(t));
      const fault = await this.curveFault(e);
      if (fault !== "") throw new FileError("curve", fault);
      this.replace(e);
      this.bar.tell(say("desk.file.taken", e.facts.length));
    } catch (e) {
      const error = e instanceof FileError ? e : new FileError("damaged", String(e));
      this.bar.tell(say("desk.file." + error.kind, error.detail), true);
    }
  }

  /** What the engine has against the curve of an enquiry; "" if it takes it, or there is none. */
  private async curveFault(e: Enquiry): Promise<string> {
    return e.curve ? faultOf(await FactSheet.house.engine(), e.curve) : "";
  }

  private get fragment(): string {
    const { facts, choose, want } = this.sheet.carried;
    return writeFragment(facts, want || this.want, choose);
  }

  /** The fragment with the curve as well. */
  private get whole(): string {
    const { facts, choose, want } = this.sheet.carried;
    return writeFragment(facts, want || this.want, choose, { curve: this.curve.curve ? partsOf(this.curve.curve) : undefined });
  }

  /** The link to hand on, and what is to be said of it. */
  private linkOut(): { link: string; note: string } {
    const link = addressWith(this.whole);
    if (!this.curve.curve || this.whole.length <= longest) return { link, note: "" };
    return { link: addressWith(this.fragment), note: say("desk.link.short") };
  }

  /**
   * Takes the link of the address, if it carries facts and is whole. Facts that come back from the
   * page of the bowls belong to the call that is kept: its head and its sentences stay.
   */
  private async takeLink(): Promise<"" | "link" | "same call"> {
    const now = fragmentNow();
    const carried = readFragment(now);
    if (!carried || (carried.facts.length > 0 && now === this.fragment)) return "";
    const fault = linkFault(carried, (t) => this.book.has(t));
    const refuse = (kind: string, detail: string): "" => {
      this.bar.tell(say("desk.link." + kind, detail), true);
      return "";
    };
    if (fault) return refuse(fault.kind, fault.detail);
    const call = carried.same ? await this.kept() : null;
    const e = call ?? emptyEnquiry(carried.want);
    const before = new Map(call?.facts.map((f) => [f.term, f]));
    e.facts = carried.facts.map((f) => {
      const had = before.get(f.term);
      return had && joinUnit(had.text) === joinUnit(f.text) ? had : { ...f, from: "link" };
    });
    e.choose = carried.choose.map((c) => ({ term: c.term, estimate: c.text }));
    const curve = carried.curve ? curveOf(carried.curve) : undefined;
    if (typeof curve === "object") e.curve = curve;
    const wrong = await this.curveFault(e);
    if (wrong !== "") return refuse("curve", wrong);
    this.replace(e);
    return call ? "same call" : "link";
  }

  // sentences

  private async hear(text: string): Promise<void> {
    this.touched = true;
    try {
      const readings = await this.read(text);
      this.said.push(new Said(text, readings));
      this.head.dateIfNone(new Date());
      this.field.clear();
      this.changed();
      this.next();
    } catch (e) {
      this.field.trouble(e);
    }
  }

  private async read(text: string): Promise<Reading[]> {
    const engine = await FactSheet.house.engine();
    await engine.add("words");
    await this.sheet.wake();
    this.trial.engine = engine;
    const reply = engine.talk<AskReply>(`ask\t${text.replace(/[\t\r\n]+/g, " ")}`);
    if (reply.error) throw new EngineError("refused", reply.error);
    return reply.readings ?? [];
  }

  private async readAgain(): Promise<void> {
    const list = this.said;
    try {
      const again = [];
      for (const s of list) again.push(new Said(s.text, await this.read(s.text), [...s.dropped]));
      if (this.said !== list) return; // another enquiry came meanwhile
      this.said = again;
      this.changed();
    } catch (e) {
      this.field.trouble(e);
    }
  }

  /**
   * The next thing to decide, or else the next sentence. What could mean two things gets the focus
   * as a line and not on its first button: a second Enter must not decide it.
   */
  private next(): void {
    const find = (selector: string) => this.saidPlace.querySelector<HTMLElement>(selector);
    (find(".putall") ?? find(".piece:is(.open, .differs, .clashes)") ?? this.field).focus();
  }

  // what the lines of the readings ask

  text(term: string): string {
    return this.texts.get(term) ?? "";
  }

  shown(term: string, text: string): string {
    return this.book.shown(term, text);
  }

  same(term: string, a: string, b: string): boolean {
    return this.trial.same(term, a, b);
  }

  clash(c: Candidate): string {
    return this.trial.clash([{ term: c.term, text: c.value }]);
  }

  words(term: string): string {
    return this.from.get(term)?.words ?? "";
  }

  put(c: Candidate, r: Reading, instead: Candidate | undefined): void {
    const facts = [{ term: c.term, text: c.value }];
    if (instead && instead.term !== c.term) facts.unshift({ term: instead.term, text: "" });
    this.putFacts(facts, new Map([[c.term, r.text]]));
    this.next();
  }

  putAll(said: Said, readings: readonly Reading[]): void {
    const facts: Fact[] = [];
    const words = new Map<string, string>();
    for (const r of readings) {
      const c = r.candidates?.[0];
      if (!c || words.has(c.term) || said.dropped.has(r.text)) continue;
      const fact = { term: c.term, text: c.value };
      // facts of one sentence may contradict each other: the one that does waits for a choice
      if (this.trial.clash([...facts, fact]) !== "") continue;
      facts.push(fact);
      words.set(c.term, r.text);
    }
    this.putFacts(facts, words);
    this.next();
  }

  off(c: Candidate): void {
    this.putFacts([{ term: c.term, text: "" }], new Map());
    this.next();
  }

  dropped(): void {
    this.changed();
    this.next();
  }

  forget(said: Said): void {
    this.said = this.said.filter((s) => s !== said);
    this.changed();
    this.field.focus();
  }

  private putFacts(facts: readonly Fact[], words: Map<string, string>): void {
    for (const f of facts) {
      if (f.text === "") {
        this.texts.delete(f.term);
        this.from.delete(f.term);
        continue;
      }
      this.texts.set(f.term, f.text);
      this.from.set(f.term, { from: "said", words: words.get(f.term) ?? f.text });
    }
    this.sheet.put(facts);
  }

  // what follows from a change

  private changed(): void {
    this.notice();
    this.trial.forget();
    this.trial.lines = this.curve.lines;
    this.toBowls.href = this.bowlsURL + (this.sheet.carried.facts.length > 0 ? this.whole : "");
    const reply = this.sheet.lastReply;
    this.open = openAsks(this.book, reply);
    this.asks.show(this.open);
    this.drawReadings();
    this.drawExtras();
    this.drawDuty(reply);
    this.what.changed();
    this.whys.changed();
    const enquiry = this.enquiry;
    drawPrint(this.printPlace, this.book, { enquiry, lines: this.sheet.lines, reply, open: this.open, limits: dutyTerms });
    this.save();
  }

  /** Facts that changed on the sheet itself were typed there. */
  private notice(): void {
    const now = new Map(this.sheet.carried.facts.map((f) => [f.term, f.text]));
    for (const [term, text] of now) if (this.texts.get(term) !== text) this.from.set(term, { from: "typed" });
    for (const term of this.from.keys()) if (!now.has(term)) this.from.delete(term);
    this.texts = now;
  }

  private drawReadings(): void {
    const key = JSON.stringify(this.said.map((s) => [s.text, s.readings.map((r) => [s.standing(r, this), r.candidates?.map((c) => this.text(c.term))])]));
    if (key === this.drawn) return;
    this.drawn = key;
    drawSaid(this.saidPlace, this.said, this);
  }

  /** Facts without a line on the sheet count all the same, so they are shown. */
  private drawExtras(): void {
    const extra = this.sheet.carried.facts.filter((f) => !this.sheet.row(f.term));
    const items = extra.map((f) => make("li", {}, make("b", {}, this.book.name(f.term)), " ", make("span", { class: "num" }, this.shown(f.term, f.text)), " ",
      act(say("desk.off"), () => this.putFacts([{ term: f.term, text: "" }], new Map()))));
    this.extras.replaceChildren(...(items.length > 0 ? [make("li", { class: "key" }, say("desk.extras")), ...items] : []));
  }

  private drawDuty(reply: Reply | null): void {
    const row = this.sheet.row(this.sheet.carried.want || this.want);
    if (!row || !reply) return setText(this.duty, "");
    const { large, small } = valueOf(row.reply, (c) => c);
    const head = large === "" ? say("desk.duty.open", this.book.name(row.term)) : `${this.book.name(row.term)}: ${small === "" ? large : `${large} (${small})`}`;
    setText(this.duty, `${head}. ${this.open.length === 0 ? say("desk.duty.done") : say("desk.duty.asks", this.open.length)}`);
  }

  private save(): void {
    clearTimeout(this.saving);
    this.saving = window.setTimeout(() => {
      const e = this.enquiry;
      if (!isEmpty(e)) this.touched = true;
      if (this.touched) void FactSheet.house.store.set("desk", writeFile(this.bookID, e));
    }, 300);
  }
}

function pair(f: Fact): string[] {
  return [f.term, f.text];
}

function isEmpty(e: Enquiry): boolean {
  const { customer, telephone, job } = e.head;
  return customer + telephone + job === "" && Object.keys(e.notes).length + e.sentences.length + e.facts.length === 0 && !e.curve;
}
