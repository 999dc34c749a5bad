// <practice-sheet>: a printed exercise that draws new sheets, takes answers and says what went wrong.
import { addressWith, fragmentNow } from "./address";
import { AskedItem } from "./asked";
import { act, make, setText, sign } from "./dom";
import { EngineError } from "./engine";
import { Drawn, mostPoints, readAddress } from "./exercisetalk";
import type { Kept } from "./kept";
import { count, dayOf } from "./progress";
import { Projector } from "./projector";
import type { House } from "./sheet";
import { onUnits, unitsNow } from "./units";
import { isSettled } from "./verdict";
import { say } from "./words";

const largestSeed = 999_999; // of those that are drawn here; any whole number may be typed

export class PracticeSheet extends HTMLElement {
  static house: House;
  static kept: Kept;
  private readonly news = make("p", { class: "news", role: "status" });
  private readonly seedField = make("input", { type: "text", inputmode: "numeric", autocomplete: "off", size: "7" });
  private items: AskedItem[] = [];
  private drawn: Drawn | null = null;
  private told = false; // the sheet as a whole is counted

  async wake(): Promise<void> {
    try {
      const engine = await PracticeSheet.house.engine();
      await engine.add("exercises");
      this.begin((seed) => new Drawn(engine, this.dataset.exercise ?? "", seed, unitsNow()));
    } catch (e) {
      this.fail(e);
      this.acting.replaceChildren(this.news);
    }
  }

  private fail(e: unknown): void {
    const kind = e instanceof EngineError ? e.kind : "died";
    this.news.textContent = say("engine." + kind, e instanceof Error ? e.message : String(e));
  }

  /** Does something that asks the engine; if it cannot answer, the reader is told. */
  private safe(work: () => void): void {
    try {
      work();
    } catch (e) {
      this.fail(e);
    }
  }

  private get acting(): HTMLElement {
    return this.querySelector<HTMLElement>(".acting") ?? this;
  }

  private begin(draw: (seed: string) => Drawn): void {
    this.querySelector(".wholeway")?.remove(); // its key is of the printed sheet
    const projector = new Projector(this.querySelector("h1")?.textContent ?? "");
    this.acting.replaceChildren(
      make("div", { class: "acts" },
        act(say("practice.check"), () => this.safe(() => this.check())), act(say("practice.next"), () => this.safe(() => this.hint())),
        act(say("practice.way"), () => this.safe(() => this.wholeWay())),
        act(say("practice.another"), () => this.go(String(1 + Math.floor(Math.random() * largestSeed)))),
        act(say("practice.projector"), () => this.safe(() => this.drawn && projector.show(this.drawn, this.situation))), act(say("practice.print"), () => print())),
      this.news, this.seedLine());
    this.acting.querySelector(".act")?.classList.add("first");
    const look = () => {
      const { seed, view } = readAddress(fragmentNow());
      if (seed === "" ? this.drawn === null : seed !== this.drawn?.seed) this.show(draw(seed === "" ? this.dataset.seed ?? "" : seed));
      if (view === "projector" && this.drawn) projector.show(this.drawn, this.situation);
    };
    addEventListener("hashchange", () => this.safe(look));
    onUnits(() => this.safe(() => this.drawn && this.turn(draw(this.drawn.seed))));
    look();
    this.dataset.alive = "";
  }

  private get situation(): Element[] {
    return Array.from(this.querySelectorAll(".situation, .raised"));
  }

  /** A seed can be typed, so that a class works on one sheet. */
  private seedLine(): HTMLElement {
    const take = () => this.go(this.seedField.value.trim());
    this.seedField.addEventListener("keydown", (e) => {
      if (e.key === "Enter") take();
    });
    return make("p", { class: "seed" }, make("label", {}, say("practice.seed"), " ", this.seedField), " ", act(say("practice.seed.take"), take));
  }

  private go(seed: string): void {
    if (/^\d{1,19}$/.test(seed)) location.href = addressWith("#seed=" + seed);
    else this.news.textContent = say("practice.seed.bad", seed);
  }

  /** Puts a drawn sheet on the page; a seed of which none comes leaves the sheet as it is. */
  private show(drawn: Drawn): void {
    if (drawn.sheet.error) {
      this.news.textContent = drawn.sheet.error;
      return;
    }
    this.drawn = drawn;
    this.told = false;
    this.news.textContent = "";
    this.seedField.value = drawn.seed;
    const no = this.querySelector(".sheetno");
    if (no) setText(no, say("practice.sheet", drawn.seed));
    const block = Array.from(document.querySelectorAll(".blockt dt")).find((e) => e.textContent === say("block.sheet"))?.nextElementSibling;
    if (block) setText(block, drawn.seed); // what is printed tells its sheet
    this.tell(drawn);
    this.querySelector(".raised")?.replaceChildren(...(drawn.sheet.cautions ?? []).map(caution));
    const root = PracticeSheet.root;
    this.items = drawn.sheet.items.map((item, i) => new AskedItem(item, i, root, () => this.safe(() => this.check(i))));
    this.querySelector(".asked")?.replaceChildren(...this.items.map((i) => i.element));
  }

  /** The same sheet in the other units: what was answered stays. */
  private turn(drawn: Drawn): void {
    this.drawn = drawn;
    this.news.textContent = "";
    this.tell(drawn);
    this.items.forEach((item, i) => {
      const asked = drawn.sheet.items[i];
      if (asked) item.turn(asked, drawn.key[i] ?? { right: "" });
    });
  }

  private tell(drawn: Drawn): void {
    const facts = new Map((drawn.sheet.facts ?? []).map((f) => [f.id, f.text]));
    for (const place of this.querySelectorAll<HTMLElement>(".situation [data-fact]")) setText(place, facts.get(place.dataset.fact ?? "") ?? "");
  }

  private static get root(): string {
    return document.documentElement.dataset.root ?? "";
  }

  /** Judges what was answered; at, if it was the end of one answer, leads on from it. */
  private check(at = -1): void {
    if (!this.drawn) return;
    const marks = this.drawn.mark(this.items.map((i) => i.value));
    const fresh = this.items.filter((item, i) => item.judge(marks.marks[i] ?? null));
    const answered = this.items.filter((i) => i.value !== "").length;
    if (answered === 0) {
      this.news.textContent = say("practice.nothing");
      return;
    }
    this.news.textContent = say("class.points", marks.points, marks.most) + (answered < this.items.length ? ". " + say("practice.open", this.items.length - answered) : ".");
    this.remember(fresh);
    const next = this.items[at + 1];
    if (at >= 0 && next && isSettled(this.items[at]?.mark ?? null)) next.focus();
  }

  /** Shows a little more of the way to what is not right yet. */
  private hint(): void {
    if (!this.drawn) return;
    for (const [i, item] of this.items.entries()) {
      const key = this.drawn.key[i];
      if (isSettled(item.mark) || !key) continue;
      if (!item.reveal(key)) continue;
      this.news.textContent = say("practice.helped", i + 1);
      return;
    }
    this.news.textContent = say("practice.next.none");
  }

  /** Shows everything. What was not answered until now counts as done with help. */
  private wholeWay(): void {
    if (!this.drawn) return;
    for (const [i, item] of this.items.entries()) {
      const key = this.drawn.key[i];
      if (key) item.revealAll(key);
    }
    this.news.textContent = say("practice.way.shown");
    this.remember(this.items.filter((i) => i.giveUp()));
  }

  /** Counts the first answer of each item, and the sheet when the last of them is there. */
  private remember(fresh: AskedItem[]): void {
    const today = dayOf(new Date());
    const whole = !this.told && this.items.every((i) => i.first !== null);
    this.told ||= whole;
    if (fresh.length === 0 && !whole) return;
    const items = this.items;
    void PracticeSheet.kept.change((p) => {
      for (const i of fresh) if (i.item.term) count(p, "t/" + i.item.term, (i.first ?? 0) / mostPoints, i.helpedFirst, today);
      if (!whole) return;
      const good = items.reduce((sum, i) => sum + (i.helpedFirst ? 0 : (i.first ?? 0) / mostPoints), 0);
      count(p, "e/" + (this.dataset.exercise ?? ""), good / items.length, false, today);
      const tally = p.tallies["e/" + (this.dataset.exercise ?? "")];
      if (tally && items.some((i) => i.helpedFirst)) tally.helped++;
    });
  }
}

function caution(text: string): HTMLElement {
  return make("div", { role: "note", class: "caution" }, make("p", { class: "w" }, sign("caution"), " ", say("caution")), make("div", {}, text));
}
