// Requests about exercises and what comes back (calcwasm/answer/practice.go).
import type { Engine } from "./engine";
import type { Units } from "./units";

export interface Item {
  kind: "number" | "choice" | "order";
  ask: string;
  term?: string;
  unit?: string;
  options?: string[]; // of a choice
  names?: string[]; // of an order, as shown: A, B, C …
}

export interface Sheet {
  error?: string;
  facts?: { id: string; text: string }[];
  cautions?: string[];
  items: Item[];
}

export interface KeyItem {
  right: string; // a value, or the letters
  say?: string;
  steps?: string[];
  relations?: string[]; // beside steps: in words, "" for what is assumed
  numbers?: string[]; // beside steps: not worked out yet, "" where nothing is left to reckon
}

export interface Slip {
  id: string;
  term: string;
  name: string;
  say: string;
}

export interface Mark {
  verdict: string;
  points: number;
  say?: string;
  own?: boolean;
  causes?: { slips?: Slip[] }[];
}

export interface Marks {
  error?: string;
  marks: Mark[];
  points: number;
  most: number;
}

export const mostPoints = 2; // of one item

/** One exercise with one seed: the same sheet in every browser and on paper. */
export class Drawn {
  readonly sheet: Sheet;
  private kept: KeyItem[] | null = null;

  constructor(
    private readonly engine: Engine,
    private readonly id: string,
    readonly seed: string,
    private readonly units: Units,
  ) {
    this.sheet = engine.talk<Sheet>(this.line("sheet"));
  }

  /** The right answers with their steps, as KeyItems in the order of the items. */
  get key(): KeyItem[] {
    return (this.kept ??= this.engine.talk<{ items?: KeyItem[] }>(this.line("key")).items ?? []);
  }

  mark(answers: readonly string[]): Marks {
    const lines = answers.map((text, i) => `answer\t${i}\t${text.replace(/[\t\r\n]+/g, " ")}`);
    return this.engine.talk<Marks>([this.line("mark"), ...lines].join("\n"));
  }

  private line(what: string): string {
    return [what, this.id, this.seed, this.units].join("\t");
  }
}

/** The letter of the i-th option. */
export function letter(i: number): string {
  return String.fromCharCode(65 + i);
}

/** The right answer of an item in words: letters with what they stand for. */
export function rightWords(item: Item, key: KeyItem): string {
  const of = item.options ?? item.names;
  if (item.kind === "number" || !of) return key.right;
  return `${key.right}: ${Array.from(key.right, (c) => of[c.charCodeAt(0) - 65] ?? c).join(", ")}`;
}

/** The seed and the view that an address asks for; an empty seed if it names none. */
export function readAddress(hash: string): { seed: string; view: string } {
  const parts = hash.replace(/^#/, "").split("&");
  const of = (key: string) => parts.find((p) => p.startsWith(key + "="))?.slice(key.length + 1) ?? "";
  return { seed: of("seed"), view: of("view") };
}
