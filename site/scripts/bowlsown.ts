// A curve of the reader's own, typed point by point. The page only collects what was typed: the
// engine reads it and says, item by item, what is wrong.
import { fewest, lineOf, most, ownFamily, partsOf, placeOfPart, pointKeys, type Curve, type CurvePoint } from "./curve";
import { act, make, setAttr, setText } from "./dom";
import type { BowlReply } from "./protocol";
import type { Store } from "./store";
import { say } from "./words";

const figures: [item: string, word: string][] = [
  ["speed", "speed"], ["outside-diameter", "outside"], ["shaft-diameter", "shaft"], ["thrust-factor", "thrust"], ["impeller-weight", "weight"],
];

/** One field, and the place in the request that speaks of it. */
interface Field {
  input: HTMLInputElement;
  item: string; // "speed", or "point"
  row: number; // of a point
  column: number; // of a point; -1 for a figure
  wrong: HTMLElement;
}

export class OwnCurve {
  private fields: Field[] = [];
  private readonly table = make("tbody");
  private readonly status = make("p", { class: "news", role: "status" });
  private places: { item: string; row: number }[] = []; // of the items of the line that was sent
  private store: Store | null = null;
  private taken = false; // by the engine
  private readonly before = make("div", { class: "acts" }); // the way back to a curve that a link replaced

  constructor(section: Element, private readonly changed: () => void) {
    const head = make("tr", {}, make("td"), ...pointKeys.map((c) => make("th", { scope: "col" }, say("bowls.own." + c))));
    const box = make("details", { class: "owncurve" }, make("summary", {}, say("bowls.own")), make("p", {}, say("bowls.own.say")));
    const general = make("div", { class: "owngeneral" });
    general.append(this.labelled("name", "name"), ...figures.map(([item, word]) => this.labelled(item, word)));
    for (let i = 0; i < 6; i++) this.point();
    const more = act(say("bowls.own.more"), () => this.rows < most && this.point());
    const clear = act(say("bowls.own.clear"), () => this.fill({}));
    box.append(general, make("table", {}, make("thead", {}, head), this.table), make("div", { class: "acts" }, more, clear), this.before, this.status);
    section.append(box);
  }

  /** The line of a request; none while there is too little to read. */
  get lines(): string[] {
    const typed = this.typedCurve();
    if (typed === null) return [];
    const { curve, rows } = typed;
    this.places = [];
    let point = 0;
    partsOf(curve).forEach(({ term }, part) => (this.places[placeOfPart(part)] = { item: term, row: term === "point" ? (rows[point++] ?? -1) : -1 }));
    return [lineOf(curve)];
  }

  /** The curve, if the engine took it. */
  get curve(): Curve | undefined {
    return this.taken ? this.typedCurve()?.curve : undefined;
  }

  /** What the fields hold, and the rows of its points; null while it is too little. */
  private typedCurve(): { curve: Curve; rows: number[] } | null {
    const points = this.points();
    const speed = this.value("speed");
    if (speed === "" || points.length < fewest) return null;
    const more = figures.map(([item]) => [item, this.value(item)]).filter(([, text]) => text !== "");
    return { curve: { name: this.value("name") || say("bowls.own"), figures: { ...Object.fromEntries(more), speed }, points: points.map((p) => p.point) }, rows: points.map((p) => p.row) };
  }

  /** Tells what the engine said, at the fields it spoke of. */
  told(replies: readonly BowlReply[]): void {
    const problems = replies.find((r) => r.id === ownFamily)?.problems ?? [];
    const whole = problems.filter((p) => p.item < 0).map((p) => p.text);
    for (const f of this.fields) {
      const mine = problems.filter((p) => this.speaksOf(f, p.item, p.column)).map((p) => p.text);
      setText(f.wrong, mine.join(" "));
      setAttr(f.input, "aria-invalid", mine.length > 0 ? "true" : null);
    }
    this.taken = this.lines.length > 0 && replies.some((r) => r.id === ownFamily) && problems.length === 0;
    const begun = this.fields.some((f) => f.input.value.trim() !== "");
    const text = this.lines.length === 0 ? (begun ? say("bowls.own.few") : "") : problems.length > 0 ? [say("bowls.own.wrong"), ...whole].join(" ") : say("bowls.own.taken");
    setText(this.status, text);
  }

  /** What the browser keeps of a curve comes back. */
  async remember(store: Store): Promise<void> {
    this.store = store;
    const kept = read(await store.get("bowl"));
    if (Object.keys(kept).length > 0 && this.fields.every((f) => f.input.value === "")) this.fill(kept);
  }

  /** Takes the curve of a link. One that was typed here is kept for the way back. */
  take(curve: Curve): void {
    const was = this.texts;
    const texts = textsOf(curve);
    if (JSON.stringify(was) === JSON.stringify(texts)) return;
    this.fill(texts);
    const box = this.table.closest("details");
    if (box) box.open = true;
    if (Object.keys(was).length === 0) return;
    this.before.replaceChildren(act(say("bowls.own.back"), () => {
      this.before.replaceChildren();
      this.fill(was);
    }));
  }

  /** Says that the curve of a link could not be taken. */
  refuse(detail: string): void {
    this.before.replaceChildren(make("p", { class: "news" }, say("bowls.own.link", detail)));
  }

  /** What stands in the fields, by their ids. */
  private get texts(): Record<string, string> {
    return Object.fromEntries(this.fields.filter((f) => f.input.value !== "").map((f) => [f.wrong.id, f.input.value]));
  }

  private speaksOf(f: Field, item: number, column: number): boolean {
    const place = this.places[item];
    if (!place || place.item !== f.item || place.row !== f.row) return false;
    return f.column < 0 || f.column === Math.max(column, 0);
  }

  private get rows(): number {
    return this.table.rows.length;
  }

  private value(item: string): string {
    return this.fields.find((f) => f.item === item)?.input.value.trim() ?? "";
  }

  /** The rows in which something stands. */
  private points(): { row: number; point: CurvePoint }[] {
    const text = (row: number, column: number) => this.fields.find((f) => f.item === "point" && f.row === row && f.column === column)?.input.value.replace(/;/g, " ").trim() ?? "";
    return Array.from(this.table.rows, (_, row) => {
      const [capacity = "", head = "", efficiency = "", npsh = ""] = pointKeys.map((_key, column) => text(row, column));
      return { row, point: { capacity, head, ...(efficiency === "" ? {} : { efficiency }), ...(npsh === "" ? {} : { npsh }) } };
    }).filter((p) => Object.values(p.point).some((t) => t !== ""));
  }

  private labelled(item: string, word: string): HTMLElement {
    const field = this.field(item, -1, -1);
    return make("div", {}, make("label", {}, make("span", {}, say("bowls.own." + word)), field.input), field.wrong);
  }

  private point(): void {
    const row = this.rows;
    const name = say("bowls.own.point", row + 1);
    const cells = pointKeys.map((c, column) => {
      const field = this.field("point", row, column);
      field.input.setAttribute("aria-label", `${name}, ${say("bowls.own." + c)}`);
      return make("td", {}, field.input, field.wrong);
    });
    this.table.append(make("tr", {}, make("th", { scope: "row" }, name), ...cells));
  }

  private field(item: string, row: number, column: number): Field {
    const id = fieldID(item, row, column);
    const wrong = make("span", { class: "wrong", id });
    const input = make("input", { type: "text", autocomplete: "off", spellcheck: "false", "aria-describedby": id });
    const field = { input, item, row, column, wrong };
    this.fields.push(field);
    input.addEventListener("input", () => this.typed());
    return field;
  }

  private typed(): void {
    void this.store?.set("bowl", JSON.stringify(this.texts));
    this.changed();
  }

  private fill(texts: Record<string, string>): void {
    while (this.rows < most && Object.keys(texts).some((id) => Number(/^own-point-(\d+)-/.exec(id)?.[1] ?? -1) >= this.rows)) this.point();
    for (const f of this.fields) f.input.value = texts[f.wrong.id] ?? "";
    this.typed();
  }
}

function fieldID(item: string, row: number, column: number): string {
  return `own-${item}-${row}-${column}`;
}

function textsOf(curve: Curve): Record<string, string> {
  const out: Record<string, string> = { [fieldID("name", -1, -1)]: curve.name };
  for (const [item, text] of Object.entries(curve.figures)) out[fieldID(item, -1, -1)] = text;
  curve.points.forEach((p, row) => pointKeys.forEach((key, column) => p[key] !== undefined && (out[fieldID("point", row, column)] = p[key])));
  return out;
}

/** What was kept, if it is what this page keeps. */
function read(kept: string | null): Record<string, string> {
  try {
    const value: unknown = JSON.parse(kept ?? "{}");
    if (typeof value !== "object" || value === null) return {};
    return Object.fromEntries(Object.entries(value).filter((e): e is [string, string] => typeof e[1] === "string"));
  } catch {
    return {};
  }
}
