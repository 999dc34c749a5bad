// Which rows moved when a fact changed, numbered as drawings number their revisions. Everything
// typed into one field until it is left is one revision.

interface Value {
  term: string;
  value: string;
}

export class Revisions {
  private number = 0;
  private source = "";
  private name = "";
  private isOpen = false;
  private base = new Map<string, string>();
  private now = new Map<string, string>();
  private marked = new Map<string, number>();

  /** A change of this term begins, or goes on. */
  open(term: string, name: string): void {
    if (this.isOpen && this.source === term) return;
    this.number++;
    this.source = term;
    this.name = name;
    this.isOpen = true;
    this.base = new Map(this.now);
    this.marked.clear();
  }

  /** The field was left: the next change, even of the same term, is another revision. */
  close(): void {
    this.isOpen = false;
  }

  /** The change was taken back. */
  undo(): void {
    this.isOpen = false;
    this.marked.clear();
    this.base = new Map(this.now);
    if (this.number > 0) this.number--;
    this.source = "";
  }

  clear(): void {
    this.isOpen = false;
    this.number = 0;
    this.source = "";
    this.marked.clear();
    this.base.clear();
    this.now.clear();
  }

  /** Takes the values of a new reply and marks those that differ from the time before the change. */
  look(values: Value[]): void {
    this.marked.clear();
    for (const v of values) {
      this.now.set(v.term, v.value);
      const was = this.base.get(v.term);
      if (this.source !== "" && was !== undefined && was !== v.value && v.term !== this.source) this.marked.set(v.term, this.number);
    }
  }

  /** The number of the revision that moved a term, 0 if none did. */
  of(term: string): number {
    return this.marked.get(term) ?? 0;
  }

  /** The last revision in words: its number and the term that was changed; null if nothing moved. */
  get told(): { number: number; name: string } | null {
    return this.marked.size > 0 ? { number: this.number, name: this.name } : null;
  }
}
