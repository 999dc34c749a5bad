// What is still to ask, in the order of asking: the question, why it matters, and how much of the
// sheet waits for the answer.
import { act, make } from "./dom";
import type { Ask, DeskBook } from "./deskbook";
import type { Reply } from "./protocol";
import { say } from "./words";

const few = 4; // questions that are shown before the rest is asked for

/** A question that is open, and the terms of the sheet that wait for its answer. */
export interface Open extends Ask {
  waiting: string[];
}

/** The open questions, in order. Without a reply nothing is known, and all are open. */
export function openAsks(book: DeskBook, reply: Reply | null): Open[] {
  const states = new Map(reply?.terms.map((t) => [t.id, t]));
  const waiting = waitersOf(reply);
  return book.asks
    .filter((a) => reply === null || states.get(a.term)?.state === "missing")
    .map((a) => ({ ...a, waiting: waiting.get(a.term) ?? [] }));
}

/** For each missing term the lines that wait for it, straight or through others. */
function waitersOf(reply: Reply | null): Map<string, string[]> {
  const waits = new Map(reply?.terms.map((t) => [t.id, t.waits ?? []]));
  const out = new Map<string, string[]>();
  for (const [id, direct] of waits) {
    const seen = new Set<string>();
    const walk = (list: readonly string[]) => {
      for (const t of list) {
        if (seen.has(t)) continue;
        seen.add(t);
        walk(waits.get(t) ?? []);
      }
    };
    walk(direct);
    for (const t of seen) out.set(t, [...(out.get(t) ?? []), id]);
  }
  return out;
}

/** The list on the page. go leads to the line of a term. */
export class AskList {
  private all = false;
  private open: Open[] = [];
  private readonly list = make("ol", { role: "list" });
  private readonly more: HTMLButtonElement;

  constructor(place: Element, private readonly book: DeskBook, private readonly go: (term: string) => void) {
    this.more = act("", () => {
      this.all = !this.all;
      this.draw();
    });
    const title = make("h2", { id: "desk-next" }, say("desk.next"));
    place.append(make("section", { class: "asknext", "aria-labelledby": "desk-next" }, title, this.list, make("div", { class: "acts" }, this.more)));
  }

  show(open: Open[]): void {
    if (JSON.stringify(open) === JSON.stringify(this.open) && this.list.childNodes.length > 0) return;
    this.open = open;
    this.draw();
  }

  private draw(): void {
    const shown = this.all ? this.open : this.open.slice(0, few);
    const items = shown.map((q) => this.item(q));
    this.list.replaceChildren(...(items.length > 0 ? items : [make("li", {}, say("desk.next.none"))]));
    this.more.hidden = this.open.length <= few;
    this.more.textContent = this.all ? say("desk.next.few") : say("desk.next.all", this.open.length);
    this.more.setAttribute("aria-expanded", String(this.all));
  }

  private item(q: Open): HTMLElement {
    const name = make("button", { type: "button", class: "to" }, this.book.name(q.term));
    name.addEventListener("click", () => this.go(q.term));
    const li = make("li", {}, make("span", { class: "ask" }, q.ask), " ", name, " ", make("span", { class: "why" }, q.why));
    if (q.waiting.length > 0) li.append(" ", make("span", { class: "waits" }, say(q.waiting.length === 1 ? "desk.waits.one" : "desk.waits.many", q.waiting.length)));
    return li;
  }
}
