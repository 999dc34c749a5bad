// Tests on a drawing: name the part that is marked, find the part that is named. What the reader
// has looked at comes first, what was missed comes again; nothing is kept beyond the page.
import { act } from "./dom";
import type { Card } from "./cutcard";
import { say } from "./words";

/** What a test needs of its sheet. */
export interface Ground {
  readonly card: Card;
  nameOf(part: string): string;
  light(parts: string[]): void;
  ended(): void;
}

const again = 3; // a part that was missed comes back after this many others
const choices = 4;

export class Quiz {
  private readonly queue: string[];
  private readonly missed = new Set<string>();
  private now = "";
  private asked = 0;
  private right = 0;
  private open = false; // waits for an answer
  private readonly greeting: string; // told with the first question

  constructor(
    readonly kind: "name" | "find",
    private readonly pool: string[],
    private readonly ground: Ground,
    met: ReadonlySet<string>,
  ) {
    const first = pool.filter((p) => met.has(p));
    this.greeting = first.length > 0 ? say("cut.quiz.met") : "";
    this.queue = [...shuffled(first), ...shuffled(pool.filter((p) => !met.has(p)))];
    this.next();
  }

  /** Parts were hit in the drawing. Whoever aims at a small one may hit its neighbour as well. */
  hit(parts: string[]): void {
    if (this.kind !== "find" || !this.open || parts.length === 0) return;
    this.settle(parts.includes(this.now) ? this.now : parts[0]!);
  }

  private next(): void {
    this.now = this.queue.shift() ?? "";
    if (this.now === "") return this.finish();
    this.open = true;
    const { card } = this.ground;
    if (this.kind === "name") {
      this.ground.light([this.now]);
      card.say(say("cut.quiz.ask-name"), this.score() || this.greeting);
      card.buttons([...this.offers().map((p) => this.offer(p)), this.end()]);
    } else {
      this.ground.light([]);
      card.say(say("cut.quiz.ask-find", this.ground.nameOf(this.now)), this.score() || this.greeting);
      card.buttons([this.end()]);
    }
  }

  private offer(part: string): HTMLButtonElement {
    return act(this.ground.nameOf(part), () => this.settle(part));
  }

  /** Four names, the neighbours in the drawing among them: they are the ones that are mixed up. */
  private offers(): string[] {
    const i = this.pool.indexOf(this.now);
    const near = this.pool.filter((p, k) => p !== this.now && Math.abs(k - i) <= 4);
    const far = this.pool.filter((p) => p !== this.now && !near.includes(p));
    const others = [...shuffled(near).slice(0, 2), ...shuffled(far), ...shuffled(near).slice(2)];
    const names = new Map([[this.ground.nameOf(this.now), this.now]]);
    for (const p of others) if (names.size < choices && !names.has(this.ground.nameOf(p))) names.set(this.ground.nameOf(p), p);
    return shuffled([...names.values()]);
  }

  private settle(given: string): void {
    if (!this.open) return;
    this.open = false;
    const right = given === this.now;
    const name = this.ground.nameOf(this.now);
    this.asked++;
    if (right) this.right++;
    else {
      this.missed.add(this.now);
      this.queue.splice(Math.min(again, this.queue.length), 0, this.now);
    }
    this.ground.light([this.now]);
    this.ground.card.say(right ? say("cut.quiz.right", name) : this.wrong(given, name), this.score());
    const on = act(say("cut.quiz.next"), () => this.next());
    this.ground.card.buttons([on, this.end()]);
    if (this.kind === "name") on.focus();
  }

  /** What was hit instead is told where that helps: in a search. */
  private wrong(given: string, name: string): string {
    if (this.kind === "name") return say("cut.quiz.was", name);
    return `${say("cut.quiz.wrong", this.ground.nameOf(given))} ${say("cut.quiz.lit", name)}`;
  }

  private score(): string {
    return this.asked === 0 ? "" : say("cut.quiz.score", this.right, this.asked);
  }

  private finish(): void {
    this.ground.light([]);
    const n = this.pool.length;
    this.ground.card.say(say("cut.quiz.done", n, n - this.missed.size));
    const end = this.end();
    this.ground.card.buttons([end]);
    end.focus();
  }

  private end(): HTMLButtonElement {
    return act(say("cut.quiz.end"), () => this.ground.ended());
  }
}

/** In another order, each order as likely. */
export function shuffled<T>(list: readonly T[]): T[] {
  const out = [...list];
  for (let i = out.length - 1; i > 0; i--) {
    const k = Math.floor(Math.random() * (i + 1));
    [out[i], out[k]] = [out[k]!, out[i]!];
  }
  return out;
}

/** The parts that are large enough to be asked for; all of them if these are too few. */
export function fair(parts: string[], group: (part: string) => Element | undefined): string[] {
  const large = parts.filter((p) => {
    const r = group(p)?.getBoundingClientRect();
    return r !== undefined && Math.min(r.width, r.height) >= 5 && Math.max(r.width, r.height) >= 14;
  });
  return large.length >= choices ? large : parts;
}
