// What the engine says of facts before they go on the sheet. Its answers are kept while the facts
// of the sheet stay as they are.
import type { Engine } from "./engine";
import type { Carried, Fact } from "./link";

export class Trial {
  private readonly kept = new Map<string, string>();
  engine: Engine | null = null;

  lines: readonly string[] = []; // a curve of the reader's own

  constructor(private readonly facts: () => Carried) {}

  /** The facts of the sheet changed. */
  forget(): void {
    this.kept.clear();
  }

  /** Whether two texts are the same value: 55 m and 180.4 ft are. */
  same(term: string, a: string, b: string): boolean {
    return a === b || this.value(term, a) === this.value(term, b);
  }

  private value(term: string, text: string): string {
    return this.asked(`value\t${term}\t${text}`, () => {
      const t = this.engine?.ask({ want: "", facts: [{ term, text }], choose: [], show: [term] }).terms[0];
      return t ? `${t.choice ?? ""} ${t.us?.n ?? ""} ${t.error ?? ""}` : text;
    });
  }

  /** What these facts would contradict beside those of the sheet; "" if nothing new. */
  clash(more: readonly Fact[]): string {
    return this.asked("clash\t" + JSON.stringify(more), () => {
      const { facts, choose } = this.facts();
      const clashes = (list: Fact[]) => this.engine?.ask({ want: "", facts: list, choose, show: [], lines: this.lines }).clashes ?? [];
      const before = new Set(clashes(facts).map((c) => c.term));
      const terms = new Set(more.map((f) => f.term));
      return clashes([...facts.filter((f) => !terms.has(f.term)), ...more]).find((c) => !before.has(c.term))?.text ?? "";
    });
  }

  private asked(key: string, ask: () => string): string {
    let text = this.kept.get(key);
    if (text === undefined) this.kept.set(key, (text = ask()));
    return text;
  }
}
