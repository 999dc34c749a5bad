// Columns and shafts for the pump that is drawn, and the price and the years that are counted with.
import { make, setAttr, setText } from "./dom";
import type { ColumnOption, ColumnReply, PieceText } from "./protocol";
import { say } from "./words";

export class Columns {
  private readonly price = make("input", { type: "text", autocomplete: "off", inputmode: "decimal", "aria-describedby": "price-wrong" });
  private readonly years = make("input", { type: "text", autocomplete: "off", inputmode: "numeric", "aria-describedby": "years-wrong" });
  private readonly priceWrong = make("span", { class: "wrong", id: "price-wrong" });
  private readonly yearsWrong = make("span", { class: "wrong", id: "years-wrong" });
  private readonly place: Element | null;

  constructor(section: Element, changed: () => void) {
    this.place = section.querySelector(".options");
    this.years.value = "10";
    const field = (key: string, input: HTMLInputElement, wrong: HTMLElement) => make("div", {}, make("label", {}, make("span", {}, say(key)), input), wrong);
    this.place?.before(make("div", { class: "owngeneral" }, field("columns.price", this.price, this.priceWrong), field("columns.years", this.years, this.yearsWrong)));
    for (const input of [this.price, this.years]) input.addEventListener("input", changed);
  }

  /** The line of a request. */
  get line(): string {
    return ["columns", this.price.value, this.years.value].map((t) => t.replace(/[\t\r\n]+/g, " ").trim()).join("\t");
  }

  show(told: ColumnReply): void {
    setText(this.priceWrong, told.priceWrong ?? "");
    setText(this.yearsWrong, told.yearsWrong ?? "");
    setAttr(this.price, "aria-invalid", told.priceWrong ? "true" : null);
    setAttr(this.years, "aria-invalid", told.yearsWrong ? "true" : null);
    this.place?.replaceChildren(told.options ? table(told, told.options) : make("p", {}, say("columns.none")));
  }
}

/** A price of the pipe fills two columns more; without one they would stand empty. */
function table(told: ColumnReply, options: readonly ColumnOption[]): HTMLElement {
  const priced = options.some((o) => o.price);
  const names = [...told.columns.map((c) => c.name), ...(priced ? [say("columns.pipe"), say("columns.total")] : [])];
  const head = make("tr", {}, make("th", { scope: "col" }, say("columns.size")), ...names.map((n) => make("th", { scope: "col", class: "r" }, n)));
  return make("table", {}, make("thead", {}, head), ...options.map((o) => option(o, names, priced)));
}

/** One column: a line of figures, and below it what is to be said of them. */
function option(o: ColumnOption, names: readonly string[], priced: boolean): HTMLElement {
  const size = o.column + (o.tube ? `, ${say("columns.tube")} ${o.tube}` : "") + (o.shaft ? `, ${say("columns.shaft")} ${o.shaft}` : "");
  const texts = [...o.cells.map(both), ...(priced ? [[o.price ?? ""], [o.total ?? ""]] : [])];
  const cells = texts.map((t, i) => make("td", { class: "r", "data-name": names[i] ?? "" }, ...t));
  const body = make("tbody", { "data-column": o.column }, make("tr", {}, make("th", { scope: "row" }, size), ...cells));
  if (o.reasons) body.append(make("tr", { class: "notes" }, make("td", { colspan: String(names.length + 1) }, ...o.reasons.map((r) => make("span", { class: "note" }, ...both(r))))));
  return body;
}

/** A text in both systems of units, of which one is seen. */
export function both(text: PieceText): (Node | string)[] {
  if (text.us === text.si) return [text.us];
  return [make("span", { class: "only-us" }, text.us), make("span", { class: "only-si" }, text.si)];
}
