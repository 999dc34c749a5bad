// One thing asked on a living exercise: its field, what the marker said, and the steps shown so far.
import { fieldFor, type Field } from "./answers";
import { make } from "./dom";
import type { Item, KeyItem, Mark } from "./exercisetalk";
import { Hints } from "./hints";
import { showMark } from "./verdict";

export class AskedItem {
  readonly element: HTMLElement;
  mark: Mark | null = null;
  /** Points of the first answer; null while there was none. */
  first: number | null = null;
  helped = false;
  /** Whether help had been taken before the first answer. */
  helpedFirst = false;
  private readonly field: Field;
  private readonly verdict: HTMLElement;
  private readonly hints: Hints;

  constructor(readonly item: Item, i: number, private readonly root: string, done: () => void) {
    const says = `said-${i}`;
    this.hints = new Hints(item);
    this.verdict = make("div", { class: "verdict", id: says, role: "status" });
    this.field = fieldFor(item, `item-${i}`, says, () => this.clear(), done);
    const what = item.term ? make("a", { href: `${root}terms/${item.term}.html` }, item.ask) : item.ask;
    this.element = make("li", { "data-kind": item.kind }, make("span", { class: "n" }, String(i + 1)),
      make("div", { class: "one" }, make("p", { class: "what" }, what), this.field.element, this.verdict, this.hints.element));
  }

  get value(): string {
    return this.field.value;
  }

  focus(): void {
    this.field.focus();
  }

  /** Shows a mark; says whether it judges the first answer of this item. */
  judge(mark: Mark | null): boolean {
    this.mark = mark;
    showMark(this.verdict, mark, this.root);
    if (this.first !== null || mark === null || mark.verdict === "empty" || mark.verdict === "unread") return false;
    this.first = mark.points;
    this.helpedFirst = this.helped;
    return true;
  }

  /** Counts an item that was never answered as one that needed help; says whether it was. */
  giveUp(): boolean {
    this.helped = true;
    if (this.first !== null) return false;
    this.first = 0;
    this.helpedFirst = true;
    return true;
  }

  /** Shows a little more of the way; false if all is shown. */
  reveal(key: KeyItem): boolean {
    if (!this.hints.more(key)) return false;
    this.helped = true;
    return true;
  }

  revealAll(key: KeyItem): void {
    this.hints.all(key);
    this.helped = true;
  }

  /** Asks the same in the other units: what is typed stays, what was said of it does not. */
  turn(item: Item, key: KeyItem): void {
    this.field.inUnit(item.unit ?? "");
    if (this.mark !== null) this.clear();
    if (this.hints.begun) this.hints.draw(key);
  }

  private clear(): void {
    this.mark = null;
    showMark(this.verdict, null, this.root);
  }
}
