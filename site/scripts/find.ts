// The search of the masthead: a field with a list under it, worked by keys as well as by hand.
// The words are loaded when the field is first used; the engine finds, the page only shows.
import { make, setAttr } from "./dom";
import { EngineError, type Engine } from "./engine";
import { say } from "./words";

interface Found {
  kind: string;
  id: string;
  name: string;
  href: string;
  why: string;
  match?: string;
  first?: string;
}

interface FoundReply {
  found?: Found[];
  error?: string;
}

export class FindBox {
  private readonly field = make("input", {
    type: "search", id: "find", role: "combobox", "aria-expanded": "false", "aria-controls": "found", "aria-autocomplete": "list",
    "aria-label": say("find"), placeholder: say("find"), autocomplete: "off", spellcheck: "false", enterkeyhint: "search",
  });
  private readonly list = make("ul", { id: "found", role: "listbox", "aria-label": say("find.found"), class: "found", hidden: "" });
  private readonly told = make("p", { class: "off", role: "status" });
  private engine: Engine | null = null;
  private loading: Promise<void> | null = null;
  private shown: Found[] = [];
  private at = -1; // the line that is marked
  private due = 0;

  constructor(place: Element, private readonly root: string, private readonly start: () => Promise<Engine>) {
    const box = make("div", { class: "find", role: "search" }, this.field, this.list, this.told);
    place.prepend(box);
    this.field.addEventListener("focus", () => void this.wake());
    this.field.addEventListener("input", () => this.soon());
    this.field.addEventListener("keydown", (e) => this.key(e));
    box.addEventListener("focusout", (e) => {
      if (!(e.relatedTarget instanceof Node) || !box.contains(e.relatedTarget)) this.close();
    });
    document.addEventListener("keydown", (e) => this.call(e));
  }

  /** A stroke on "/" anywhere but in a field begins a search. */
  private call(e: KeyboardEvent): void {
    const busy = e.target instanceof Element && e.target.closest("input, select, textarea, [contenteditable]");
    if (e.key !== "/" || e.ctrlKey || e.metaKey || e.altKey || busy) return;
    e.preventDefault();
    this.field.focus();
    this.field.select();
  }

  private async wake(): Promise<void> {
    this.loading ??= (async () => {
      const engine = await this.start();
      await engine.add("words");
      this.engine = engine;
    })();
    try {
      await this.loading;
      if (this.field.value.trim() !== "") this.look();
    } catch (e) {
      this.loading = null;
      this.say(say("find.failed", e instanceof EngineError ? e.message : String(e)));
    }
  }

  private soon(): void {
    if (!this.engine) void this.wake();
    if (this.due) return;
    this.due = requestAnimationFrame(() => {
      this.due = 0;
      this.look();
    });
  }

  private look(): void {
    const text = this.field.value.trim();
    if (!this.engine || text === "") return this.close();
    const reply = this.engine.talk<FoundReply>(`find\t${text.replace(/[\t\r\n]+/g, " ")}`);
    this.shown = (reply.found ?? []).slice(0, 12);
    this.at = this.shown.length > 0 ? 0 : -1;
    this.list.replaceChildren(...this.shown.map((f, i) => this.line(f, i)));
    if (this.shown.length === 0) this.list.replaceChildren(make("li", { class: "none" }, say("find.none", text)));
    this.list.hidden = false;
    this.field.setAttribute("aria-expanded", "true");
    this.mark();
    this.say(say(this.shown.length === 1 ? "find.count.one" : "find.count.many", this.shown.length));
  }

  private line(f: Found, i: number): HTMLLIElement {
    const link = make("a", { href: this.root + f.href, tabindex: "-1" }, make("span", { class: "nm" }, f.name));
    const kind = say("find.kind." + f.kind);
    link.append(make("span", { class: "kind" }, f.why === "also" && f.match ? say("find.also", kind, f.match) : kind));
    if (f.first) link.append(make("span", { class: "first" }, f.first));
    const line = make("li", { role: "option", id: `found-${i}` }, link);
    line.addEventListener("pointermove", () => {
      if (this.at === i) return;
      this.at = i;
      this.mark();
    });
    return line;
  }

  private key(e: KeyboardEvent): void {
    const n = this.shown.length;
    if (e.key === "Escape") {
      this.field.value = "";
      return this.close();
    }
    if (n === 0 || this.list.hidden) return;
    if (e.key === "ArrowDown") this.at = (this.at + 1) % n;
    else if (e.key === "ArrowUp") this.at = (this.at + n - 1) % n;
    else if (e.key === "Enter") {
      const goal = this.shown[this.at];
      if (goal) location.href = this.root + goal.href;
    } else return;
    e.preventDefault();
    this.mark();
  }

  private mark(): void {
    this.list.querySelectorAll("[role=option]").forEach((line, i) => setAttr(line, "aria-selected", String(i === this.at)));
    setAttr(this.field, "aria-activedescendant", this.at < 0 ? null : `found-${this.at}`);
    document.getElementById(`found-${this.at}`)?.scrollIntoView({ block: "nearest" });
  }

  private close(): void {
    this.list.hidden = true;
    this.shown = [];
    this.at = -1;
    this.field.setAttribute("aria-expanded", "false");
    this.field.removeAttribute("aria-activedescendant");
  }

  private say(text: string): void {
    this.told.textContent = text;
  }
}
