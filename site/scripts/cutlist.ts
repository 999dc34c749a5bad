// The list beside a drawing: what it numbers, from the top. The drawing and the list point at
// each other; names can be put away and come back one by one.
import { make, setAttr } from "./dom";
import type { Known } from "./cutcard";
import type { Label } from "./cutplate";
import { say } from "./words";

export class CutList {
  private readonly lines = new Map<string, HTMLLIElement>();
  private readonly veiled = new Set<string>();

  /** pageOf tells the page of a part that the printed list has not, "" if there is none. */
  constructor(
    private readonly list: HTMLOListElement,
    private readonly pageOf: (part: string) => string,
  ) {
    for (const li of list.querySelectorAll("li")) this.lines.set(li.dataset.label ?? "", li);
    list.after(make("p", { class: "key names-away" }, say("cut.names-away")));
  }

  /** Puts the lines into the order of a drawing, with its numbers. A label without a line gets one. */
  arrange(labels: readonly Label[]): void {
    const same = this.list.childElementCount === labels.length
      && labels.every((l, i) => this.list.children[i] === this.lines.get(l.id) && this.lines.get(l.id)?.value === l.n);
    if (!same) this.list.replaceChildren(...labels.map((l) => this.line(l)));
  }

  /** The id of the label of a line, by an element inside it. */
  labelAt(target: Element): string | undefined {
    const li = target.closest<HTMLLIElement>("li[data-label]");
    return li && this.list.contains(li) ? li.dataset.label : undefined;
  }

  known(id: string): Known | undefined {
    const li = this.lines.get(id);
    if (!li) return undefined;
    const link = li.querySelector("a");
    const name = (link ?? li.querySelector(".feature"))?.textContent ?? "";
    return { n: li.value, name: name.trim(), motion: motion(li, link), says: li.querySelector(".o")?.textContent ?? "", url: link?.getAttribute("href") ?? "" };
  }

  /** Labels that are parts with a page of their own. */
  get parts(): string[] {
    return [...this.lines].filter(([, li]) => li.dataset.label === li.dataset.part && li.querySelector("a") !== null).map(([id]) => id);
  }

  /** Marks the line that is spoken of, and brings it into view inside the list alone. */
  mark(id: string | null): void {
    for (const [label, li] of this.lines) setAttr(li, "aria-current", label === id ? "true" : null);
    const li = id === null ? undefined : this.lines.get(id);
    const box = this.list.parentElement;
    if (!li || !box || box.scrollHeight <= box.clientHeight) return;
    const at = li.getBoundingClientRect();
    const in_ = box.getBoundingClientRect();
    if (at.top < in_.top) box.scrollTop -= in_.top - at.top + 8;
    else if (at.bottom > in_.bottom) box.scrollTop += at.bottom - in_.bottom + 8;
  }

  /** Puts all names away; shown(id) brings one back. */
  veil(on: boolean): void {
    this.veiled.clear();
    for (const [id, li] of this.lines) {
      if (on) this.veiled.add(id);
      li.classList.toggle("veiled", on);
    }
  }

  isVeiled(id: string): boolean {
    return this.veiled.has(id);
  }

  unveil(id: string): void {
    this.veiled.delete(id);
    this.lines.get(id)?.classList.remove("veiled");
  }

  get nextVeiled(): string | undefined {
    const order = Array.from(this.list.querySelectorAll("li"), (li) => li.dataset.label ?? "");
    return order.find((id) => this.veiled.has(id));
  }

  private line(l: Label): HTMLLIElement {
    let li = this.lines.get(l.id);
    if (!li) {
      const url = l.id === l.part ? this.pageOf(l.part) : "";
      const name = url === "" ? make("span", { class: "feature" }, l.name) : make("a", { href: url }, l.name);
      li = make("li", { "data-label": l.id, "data-part": l.part, ...(l.turns ? { class: "turns" } : {}) }, name);
      this.lines.set(l.id, li);
    }
    li.value = l.n;
    return li;
  }
}

function motion(li: HTMLLIElement, link: Element | null): string {
  if (link?.classList.contains("both")) return say("motion.both");
  if (li.classList.contains("turns")) return say("motion.turns");
  return link ? say("motion.stands") : "";
}
