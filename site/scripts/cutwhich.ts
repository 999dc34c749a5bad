// Which pump is this? A piece of one of the three without names, and three answers.
import { act, make } from "./dom";
import { EngineError, type Engine } from "./engine";
import { readTable, type TableRow } from "./cutcompare";
import { Plate } from "./cutplate";
import { shuffled } from "./cutquiz";
import { say } from "./words";

const builds = ["water-lubricated", "oil-lubricated", "submersible"];

// the pieces in which the three differ: one stage looks the same in all of them, and the bowls of a
// water-lubricated pump have nothing that the others lack
const pieces: Record<string, string[]> = {
  "water-lubricated": ["column", "head", "stuffing-box"],
  "oil-lubricated": ["column", "head", "bowls", "tube-tension"],
  submersible: ["column", "head", "bowls", "motor"],
};

const mostNames = 4;

export class CutWhich extends HTMLElement {
  static engine: () => Promise<Engine>;
  private readonly place = make("div", { class: "whichdraw" });
  private readonly text = make("div", { class: "whichtext", role: "status" });
  private readonly acts = make("div", { class: "acts" });
  private readonly empty = make("div");
  private readonly plate = new Plate(this.empty, "w");
  private rows: TableRow[] = [];
  private queue: { build: string; sheet: string }[] = [];
  private now = { build: "", sheet: "" };
  private asked = 0;
  private right = 0;

  connectedCallback(): void {
    if (this.childElementCount > 0) return;
    this.rows = readTable(document, builds);
    this.place.append(this.empty);
    this.acts.append(act(say("which.start"), () => this.next()));
    this.append(make("h2", {}, say("which.title")), make("p", {}, say("which.lead")), this.place, this.text, this.acts);
  }

  private async next(): Promise<void> {
    if (this.queue.length === 0) this.queue = shuffled(builds.flatMap((build) => pieces[build]!.map((sheet) => ({ build, sheet }))));
    this.now = this.queue.shift()!;
    try {
      const engine = await CutWhich.engine();
      await engine.add("cutaway");
      const width = this.clientWidth >= 768 ? 768 : 360;
      this.plate.draw(engine, { ...this.now, labels: "masked", width, stages: 8, title: say("which.drawing") });
      this.plate.svg?.classList.add("plain");
    } catch (e) {
      this.text.replaceChildren(make("p", {}, e instanceof EngineError ? say("engine." + e.kind, e.message) : String(e)));
      return;
    }
    this.text.replaceChildren();
    const answers = builds.map((b) => act(say("build." + b), () => this.settle(b)));
    this.acts.replaceChildren(...answers);
    answers[0]?.focus({ preventScroll: true });
  }

  private settle(given: string): void {
    const right = given === this.now.build;
    this.asked++;
    if (right) this.right++;
    else this.queue.splice(Math.min(2 + this.asked - this.right, this.queue.length), 0, this.now); // missed: again, later with each miss, so that the others come too
    const told = this.tellTale();
    this.plate.light(told.inDrawing);
    const lines = [say(right ? "which.right" : "which.wrong", say("build." + this.now.build)), told.says, say("cut.quiz.score", this.right, this.asked)];
    this.text.replaceChildren(...lines.filter((l) => l !== "").map((l) => make("p", {}, l)));
    const on = act(say("which.next"), () => this.next());
    this.acts.replaceChildren(on);
    on.focus({ preventScroll: true });
  }

  /** Parts of the drawing that only this pump has; failing that, what both others have and it has not. */
  private tellTale(): { inDrawing: string[]; says: string } {
    const drawn = new Set(this.plate.order);
    const names = (rows: TableRow[]) => rows.slice(0, mostNames).map((r) => r.link.textContent ?? "").join(", ");
    const own = this.rows.filter((r) => drawn.has(r.part) && r.builds.length === 1 && r.builds[0] === this.now.build);
    if (own.length > 0) return { inDrawing: own.map((r) => r.part), says: say("which.by", names(own)) };
    const lacking = this.rows.filter((r) => r.builds.length === builds.length - 1 && !r.builds.includes(this.now.build));
    return { inDrawing: [], says: lacking.length > 0 ? say("which.by-lack", names(lacking)) : "" };
  }
}
