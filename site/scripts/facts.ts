// The facts of one sheet, without the page: what is known, what is looked for, how both change.
import { writeFragment, type Carried, type Fact } from "./link";

export class Facts {
  private facts = new Map<string, string>();
  private chosen = new Map<string, string>();
  want: string;

  constructor(
    private readonly example: readonly Fact[],
    private readonly exampleChoose: readonly Fact[],
    private readonly exampleWant: string,
  ) {
    this.want = exampleWant;
    this.reset();
  }

  get list(): Fact[] {
    return pairs(this.facts);
  }

  get choose(): Fact[] {
    return pairs(this.chosen);
  }

  text(term: string): string {
    return this.facts.get(term) ?? "";
  }

  /** Takes a fact as typed; an empty text withdraws it. */
  set(term: string, text: string): void {
    if (text.trim() === "") this.facts.delete(term);
    else this.facts.set(term, text);
  }

  /** Chooses one of several estimates of a term. */
  pick(term: string, estimate: string): void {
    this.chosen.set(term, estimate);
  }

  /**
   * Looks for another term: its own fact is withdrawn, and the term looked for until now keeps its
   * present value (present, "" if it has none) as a given fact.
   */
  find(term: string, present: string): void {
    const before = this.want;
    if (term === before) return;
    this.facts.delete(term);
    if (before !== "" && present !== "") this.set(before, present);
    this.want = term;
  }

  /** Back to the facts that the sheet opened with. */
  reset(): void {
    this.facts = new Map(this.example.map((f) => [f.term, f.text]));
    this.chosen = new Map(this.exampleChoose.map((f) => [f.term, f.text]));
    this.want = this.exampleWant;
  }

  /** Takes all that a link carried. A link without a wanted term leaves the present one. */
  load(carried: Carried): void {
    this.facts = new Map(carried.facts.map((f) => [f.term, f.text]));
    this.chosen = new Map(carried.choose.map((f) => [f.term, f.text]));
    if (carried.want !== "") this.want = carried.want;
  }

  /** The facts as a fragment. */
  get fragment(): string {
    return writeFragment(this.list, this.want, this.choose);
  }

  get isExample(): boolean {
    return this.fragment === writeFragment(this.example, this.exampleWant, this.exampleChoose);
  }
}

function pairs(map: Map<string, string>): Fact[] {
  return Array.from(map, ([term, text]) => ({ term, text }));
}
