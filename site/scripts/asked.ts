// One thing asked on a living exercise: its field, what the marker said, and the steps shown so far.
import { fieldFor, type Field } from "./answers";
import { make } from "./dom";
import { rightWords, type Item, type KeyItem, type Mark } from "./exercisetalk";
import { showMark } from "./verdict";
import { say } from "./words";

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
  private readonly shown = make("ul", { class: "steps", role: "list", "aria-live": "polite" });

  constructor(readonly item: Item, i: number, private readonly root: string, done: () => void) {
    const says = `said-${i}`;
    this.verdict = make("div", { class: "verdict", id: says, role: "status" });
    this.field = fieldFor(item, `item-${i}`, says, () => this.clear(), done);
    const what = item.term ? make("a", { href: `${root}terms/${item.term}.html` }, item.ask) : item.ask;
    this.element = make("li", { "data-kind": item.kind }, make("span", { class: "n" }, String(i + 1)),
      make("div", { class: "one" }, make("p", { class: "what" }, what), this.field.element, this.verdict, this.shown));
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

  /** Shows one more step of the key; false if all are shown. */
  reveal(key: KeyItem): boolean {
    const all = this.lines(key);
    const next = all[this.shown.children.length];
    if (next === undefined) return false;
    this.shown.append(make("li", {}, next));
    this.helped = true;
    return true;
  }

  revealAll(key: KeyItem): void {
    while (this.reveal(key));
  }

  private lines(key: KeyItem): string[] {
    const right = say("class.right", rightWords(this.item, key));
    if (this.item.kind === "number") return key.steps?.length ? key.steps : [right];
    return key.say ? [key.say, right] : [right];
  }

  private clear(): void {
    this.mark = null;
    showMark(this.verdict, null, this.root);
  }
}
