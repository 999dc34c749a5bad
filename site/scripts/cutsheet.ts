// A sheet of the pump: the drawing with its list. What is printed stays until the engine has drawn
// the same anew; from then on parts can be picked, followed, pulled apart and asked for.
import { make, setAttr, setText } from "./dom";
import { EngineError, type Engine } from "./engine";
import { pull } from "./cutapart";
import { Card } from "./cutcard";
import { CutList } from "./cutlist";
import { PumpMade } from "./cutmade";
import { Plate, printedWidth, type Wish } from "./cutplate";
import { fair, Quiz } from "./cutquiz";
import { Tools, type Master, type Mode } from "./cuttools";
import { along, bringIn, showTop, stopAt, walkKeys, whenNear, type Walker } from "./cutwalk";
import { say } from "./words";

const roomForNames = 740; // px: the least width at which the smallest lettering keeps 12 px
const roomForWideNames = 1230;
const reach = 8; // px round a finger or a pointer

export class CutSheet extends HTMLElement implements Master, Walker {
  static engine: () => Promise<Engine>;
  private static live: Engine | null = null; // the engine once it can draw

  private readonly card = new Card({ next: () => this.step(1), before: () => this.step(-1), reveal: () => this.reveal() });
  private plate!: Plate;
  private list!: CutList;
  private tools!: Tools;
  private picture!: HTMLPictureElement;
  private engine: Engine | null = null;
  private waking: Promise<void> | null = null;
  private mode: Mode = "numbered";
  private path = "";
  private isApart = false;
  private stages = 0;
  private drawnFor = 0;
  private label = ""; // id of the label that is picked
  private readonly met = new Set<string>(); // parts whose name the reader has seen
  private told: string[] = []; // labels that were told of those that come one by one
  private quiz: Quiz | null = null;
  private made: PumpMade | null = null;
  private drawnWith = ""; // what is not usual in the pump that is drawn
  private readonly madeNow = make("p", { class: "madenow" });
  at = "";

  connectedCallback(): void {
    const picture = this.querySelector("picture");
    const list = this.querySelector("ol");
    if (!picture || !list || this.tools) return;
    this.picture = picture;
    this.plate = new Plate(picture, "d-" + this.sheet);
    const made = document.querySelector("pump-made");
    this.made = made instanceof PumpMade ? made : null;
    this.list = new CutList(list, (part) => this.made?.pageOf(part) ?? "");
    this.stages = Number(this.getAttribute("stages") ?? 0);
    const follow = (this.getAttribute("follow") ?? "").split(" ").filter(Boolean);
    this.tools = new Tools({ id: this.id, build: this.build, follow, apart: this.hasAttribute("apart"), stages: this.stages, names: this.clientWidth >= roomForNames }, this);
    this.tools.add(this.made?.tool(this.sheet) ?? null);
    this.made?.heard(() => this.otherwise());
    this.madeNow.hidden = true;
    this.querySelector(".cutcols")?.before(this.tools.root, this.madeNow);
    this.querySelector(".cutside")?.prepend(this.card.root);
    this.show("numbered");
    this.listen();
  }

  /** Draws the sheet with the engine, once. */
  wake(): Promise<void> {
    return (this.waking ??= this.begin());
  }

  get order(): string[] {
    return this.plate.order;
  }

  group(part: string): SVGGElement | undefined {
    return this.plate.group(part);
  }

  setMode(mode: Mode): void {
    this.mode = mode;
    this.list.veil(mode === "single");
    this.told = [];
    this.card.steps(mode === "single");
    this.letGo();
    void this.again();
  }

  setFollow(path: string): void {
    this.path = path;
    void this.wake().then(() => this.plate.follow(path));
    this.card.say(path === "" ? say("cut.none") : say("cut.follow-says." + path));
  }

  setApart(apart: boolean): void {
    this.isApart = apart;
    this.tools.showApart(apart);
    void this.wake().then(() => {
      if (!this.plate.svg) return;
      pull(this.plate.svg, apart);
      showTop(this.picture.parentElement!);
    });
  }

  setStages(n: number): void {
    this.stages = n;
    void this.again();
  }

  /** Another pump is to be drawn. A test goes on with the one that it began with. */
  private otherwise(): void {
    if (this.quiz || !this.engine || this.made?.words(this.sheet) === this.drawnWith) return;
    void this.again().then(() => {
      if (this.label !== "" && !this.plate.labels.some((l) => l.id === this.label)) this.letGo();
    });
  }

  async startQuiz(kind: "name" | "find"): Promise<void> {
    await this.wake();
    if (!this.engine) return;
    const named = new Set(this.list.parts);
    const pool = fair(this.order.filter((p) => named.has(p) && this.plate.labelOf(p)?.id === p), (p) => this.group(p));
    this.tools.testing(true);
    this.label = "";
    this.list.mark(null);
    this.draw("masked");
    this.show("quiz");
    const ground = { card: this.card, nameOf: (p: string) => this.list.known(p)?.name ?? "", light: (p: string[]) => this.lightAll(p), ended: () => this.endQuiz() };
    this.quiz = new Quiz(kind, pool, ground, this.met);
    showTop(this.picture.parentElement!);
    if (kind === "find") this.group(this.at || this.order[0]!)?.focus({ preventScroll: true });
    else this.card.root.querySelector("button")?.focus();
  }

  come(part: string): void {
    this.at = part;
    this.bring(part);
    if (!this.quiz) this.pick(this.plate.labelOf(part)?.id ?? part);
  }

  take(part: string, space: boolean): void {
    if (this.quiz) this.quiz.hit([part]);
    else if (space && this.mode === "single") this.reveal();
    else this.come(part);
  }

  letGo(): void {
    if (this.quiz) return;
    this.label = "";
    this.plate.light([]);
    this.list.mark(null);
    this.card.reset();
  }

  private get sheet(): string {
    return this.getAttribute("sheet") ?? "";
  }

  private get build(): string {
    return this.getAttribute("build") ?? "";
  }

  private async begin(): Promise<void> {
    try {
      const engine = await CutSheet.engine();
      await engine.add("cutaway");
      CutSheet.live = this.engine = engine;
      this.redraw();
    } catch (e) {
      this.fail(e);
    }
  }

  private fail(e: unknown): void {
    const trouble = e instanceof EngineError ? say("engine." + e.kind, e.message) : String(e);
    this.tools.root.hidden = true;
    this.card.say(say("cut.failed", trouble));
  }

  private async again(): Promise<void> {
    if (!this.engine) await this.wake();
    if (!this.engine) return;
    try {
      this.redraw();
    } catch (e) {
      this.fail(e);
    }
  }

  /** Draws in the present mode and puts everything back as it was. */
  private redraw(): void {
    if (this.mode === "named" && this.clientWidth < roomForNames) {
      this.mode = "numbered";
      this.tools.showMode("numbered");
    }
    this.show(this.quiz ? "quiz" : this.mode === "single" && this.clientWidth >= roomForNames ? "told" : this.mode);
    this.draw(this.quiz || this.mode === "hidden" ? "masked" : this.mode);
    if (!this.quiz) this.list.arrange(this.plate.labels);
    if (this.label !== "") this.pick(this.label);
  }

  private draw(labels: Wish["labels"]): void {
    if (!this.engine) return;
    const focused = this.plate.svg?.contains(document.activeElement) ?? false;
    const names = labels === "named" || (labels === "single" && this.clientWidth >= roomForNames);
    const width = names ? (this.clientWidth >= roomForWideNames ? 1280 : 768) : printedWidth(this.picture);
    this.drawnFor = printedWidth(this.picture);
    const words = (this.drawnWith = this.made?.words(this.sheet) ?? "");
    this.madeNow.hidden = words === "";
    setText(this.madeNow, say("cut.made.now", words));
    const title = [this.querySelector("img")?.alt ?? "", words].filter(Boolean).join("; ");
    this.plate.draw(this.engine, { build: this.build, sheet: this.sheet, labels, width, stages: this.stages, options: this.made?.options ?? [], title, known: labels === "single" ? this.told : [] });
    this.plate.follow(this.path);
    if (this.isApart && this.plate.svg) pull(this.plate.svg, true);
    for (const part of this.order) setAttr(this.group(part)!, "role", "button");
    stopAt(this, this.at);
    if (focused) this.group(this.at)?.focus({ preventScroll: true });
  }

  /** What is seen beside the drawing; the style sheet knows these words. */
  private show(what: Mode | "told" | "quiz"): void {
    const section = this.querySelector(".cutsheet");
    if (section) setAttr(section, "data-labels", what);
  }

  private lightAll(parts: string[]): void {
    this.plate.light(parts);
    if (parts[0]) this.bring(parts[0]);
  }

  private bring(part: string): void {
    const card = this.card.root;
    bringIn(this.group(part), getComputedStyle(card).position === "sticky" ? card.offsetHeight : 0);
  }

  /** Lights a part, names it, and marks its line. */
  private pick(id: string): void {
    const label = this.plate.labels.find((l) => l.id === id);
    const part = label?.part ?? id.split("/")[0]!;
    this.label = id;
    this.at = part;
    stopAt(this, part);
    this.plate.light([part]);
    const known = this.list.known(id);
    const secret = this.mode === "hidden" || this.list.isVeiled(id);
    if (secret) this.card.part({ n: label?.n ?? known?.n ?? 0, name: label?.name ?? this.group(part)?.getAttribute("aria-label") ?? "", motion: "", says: "", url: "" });
    else if (known) {
      this.met.add(part);
      this.card.part(known);
    } else this.card.say(this.plate.svg ? (this.group(part)?.querySelector("title")?.textContent ?? "") : "");
    this.list.mark(id); // last: what the card says takes room from the list
  }

  private async step(by: number): Promise<void> {
    await this.wake();
    const part = along(this.order, this.label === "" ? "" : this.at, by);
    if (part !== "") this.come(part);
  }

  /** Gives the name of the part that is picked, or else of the next one down. */
  private reveal(): void {
    const id = this.list.isVeiled(this.label) ? this.label : this.list.nextVeiled;
    if (id === undefined) return;
    this.list.unveil(id);
    this.told.push(id);
    this.label = id;
    this.redraw();
    this.bring(id);
  }

  private endQuiz(): void {
    this.quiz = null;
    this.tools.testing(false);
    this.card.steps(this.mode === "single");
    this.letGo();
    this.redraw();
    this.card.root.querySelector("button")?.focus();
  }

  private listen(): void {
    const drawing = this.picture.parentElement!;
    drawing.addEventListener("click", (e) => void this.clicked(e));
    drawing.addEventListener("keydown", (e) => e.target instanceof SVGElement && walkKeys(e, this));
    drawing.addEventListener("focusin", (e) => {
      const part = e.target instanceof Element && e.target.matches(":focus-visible") ? this.plate.partAt(e.target) : undefined;
      if (part !== undefined && part !== this.at) this.come(part);
      else if (part !== undefined && !this.quiz && this.label === "") this.come(part);
    });
    const side = this.querySelector("ol")!;
    const point = (e: Event) => {
      const id = e.target instanceof Element ? this.list.labelAt(e.target) : undefined;
      if (id === undefined || this.quiz || id === this.label) return;
      this.pick(id);
      void this.wake();
    };
    side.addEventListener("click", point);
    side.addEventListener("focusin", point);
    this.addEventListener("pointerdown", () => void this.wake(), { once: true });
    this.addEventListener("focusin", () => void this.wake(), { once: true });
    whenNear(this, () => void this.wake());
    new ResizeObserver(() => {
      if (this.engine && this.drawnFor !== printedWidth(this.picture)) void this.again();
    }).observe(this);
    let kept: Mode = "numbered";
    addEventListener("beforeprint", () => this.forPaper((kept = this.mode), "numbered"));
    addEventListener("afterprint", () => this.forPaper(this.mode, kept));
  }

  private async clicked(e: MouseEvent): Promise<void> {
    await this.wake();
    if (!(e.target instanceof Element) || !this.plate.svg) return;
    const balloon = this.quiz ? undefined : this.plate.balloon(e.target);
    const parts = this.plate.near(e.clientX, e.clientY, reach);
    if (this.quiz) {
      const first = this.plate.partAt(e.target);
      return this.quiz.hit(first === undefined ? parts : [first, ...parts.filter((p) => p !== first)]);
    }
    const label = balloon ?? (parts[0] === undefined ? undefined : this.plate.labelOf(parts[0]));
    if (label) this.pick(label.id);
    else if (parts[0] !== undefined) this.pick(parts[0]);
    else this.letGo();
  }

  /** Paper gets the drawing with numbers, in the inks of paper, if the engine is there. */
  private forPaper(from: Mode, to: Mode): void {
    if (this.quiz || !CutSheet.live || (from === to && this.engine)) return;
    this.engine = CutSheet.live;
    this.waking ??= Promise.resolve();
    this.mode = to;
    this.redraw();
  }
}
