// The way to an answer, uncovered no further than is asked for: of each number first the relation it
// follows from, then the numbers put in, then what comes out.
import { make } from "./dom";
import { rightWords, type Item, type KeyItem } from "./exercisetalk";
import { say } from "./words";

/** One step: what is shown of it, one thing at a time; a later one may stand in the place of the one before. */
interface Hint {
  relation: string;
  forms: string[]; // each in the place of the one before
}

export class Hints {
  readonly element = make("ul", { class: "steps", role: "list", "aria-live": "polite" });
  private shown = 0;

  constructor(private readonly item: Item) {}

  /** Whether anything is shown. */
  get begun(): boolean {
    return this.shown > 0;
  }

  /** Shows a little more; false if all is shown. */
  more(key: KeyItem): boolean {
    if (this.shown >= this.most(key)) return false;
    this.shown++;
    this.draw(key);
    return true;
  }

  all(key: KeyItem): void {
    this.shown = this.most(key);
    this.draw(key);
  }

  /** Shows as much as before, of a key that reads otherwise now. */
  draw(key: KeyItem): void {
    let left = this.shown;
    const rows: HTMLElement[] = [];
    for (const hint of this.hints(key)) {
      if (left <= 0) break;
      const row = make("li", {});
      if (hint.relation !== "") {
        row.append(make("p", { class: "relation" }, hint.relation));
        left--;
      }
      const form = hint.forms[Math.min(left, hint.forms.length) - 1];
      if (form !== undefined) row.append(make("p", {}, form));
      left -= hint.forms.length;
      rows.push(row);
    }
    this.element.replaceChildren(...rows);
  }

  private most(key: KeyItem): number {
    return this.hints(key).reduce((n, h) => n + (h.relation === "" ? 0 : 1) + h.forms.length, 0);
  }

  private hints(key: KeyItem): Hint[] {
    const plain = (text: string): Hint => ({ relation: "", forms: [text] });
    const right = say("class.right", rightWords(this.item, key));
    switch (this.item.kind) {
      case "number":
        if (!key.steps?.length) return [plain(right)];
        return key.steps.map((line, i) => ({ relation: key.relations?.[i] ?? "", forms: [key.numbers?.[i] ?? "", line].filter((t) => t !== "") }));
      case "order":
        return Array.from(key.right, (c, i) => plain(say("practice.order.comes", i + 1, this.item.names?.[c.charCodeAt(0) - 65] ?? c)));
      default:
        return key.say ? [plain(key.say), plain(right)] : [plain(right)];
    }
  }
}
