// The page on which bowls are chosen: its list and its curves follow the sheet. The duty can be
// drawn along the curve, by the slider or on the drawing; where it comes to rest the engine says.
import { act, make } from "./dom";
import { FactSheet, answered } from "./sheet";
import { readFragment, writeFragment, type Fact } from "./link";
import { fragmentNow, pageURL } from "./address";
import { curveOf, partsOf } from "./curve";
import { OwnCurve } from "./bowlsown";
import { Columns, both } from "./columns";
import { turnItems } from "./hangs";
import { writeRequest, type ChoiceFamily, type ChoiceReply, type Reply } from "./protocol";
import { unitsNow } from "./units";
import { say } from "./words";

const narrow = matchMedia("(max-width: 44rem)");

export class Bowls {
  private readonly curves: Element | null;
  private readonly listing: Element | null;
  private readonly slider = make("input", { type: "range", min: "0", max: "1000", step: "10", "aria-label": say("bowls.move") });
  private readonly own: OwnCurve;
  private readonly columns: Columns;
  private resting = 0;
  private followed = ""; // the family along whose curves the duty is moved
  private movedBeside = ""; // all other facts while it is
  private readonly desk: string; // "" if the book has no desk
  private readonly turns = make("section", { class: "turns", hidden: "" });
  private readonly back = make("a", { class: "act" }, say("bowls.back"));

  constructor(
    section: HTMLElement,
    private readonly sheet: FactSheet,
    private readonly root: string,
  ) {
    this.desk = section.dataset.desk ?? "";
    this.curves = section.querySelector(".curves");
    this.listing = section.querySelector(".ranking");
    this.curves?.after(make("label", { class: "along" }, make("span", {}, say("bowls.move")), this.slider));
    this.slider.addEventListener("input", () => void this.move(Number(this.slider.value)));
    this.curves?.addEventListener("pointerdown", (e) => this.grip(e as PointerEvent));
    this.curves?.addEventListener("pointermove", (e) => this.pull(e as PointerEvent));
    this.columns = new Columns(section, () => void this.weighColumns());
    this.own = new OwnCurve(section, () => this.sheet.bring(this.own.lines));
    sheet.addEventListener(answered, (e) => {
      this.own.told((e as CustomEvent<Reply>).detail.bowls ?? []);
      void this.show();
    });
    narrow.addEventListener("change", () => void this.show());
    const linked = fragmentNow();
    void this.own.remember(FactSheet.house.store).then(() => {
      if (this.own.lines.length > 0) this.sheet.bring(this.own.lines);
      this.takeCurve(linked);
    });
    addEventListener("hashchange", () => this.takeCurve(fragmentNow()));
    this.listing?.before(this.turns);
    if (this.desk !== "") section.querySelector(".order")?.after(make("p", { class: "acts" }, this.back));
  }

  /** The curve that a link carries. */
  private takeCurve(fragment: string): void {
    const parts = readFragment(fragment)?.curve;
    if (!parts) return;
    const curve = curveOf(parts);
    if (typeof curve === "object") this.own.take(curve);
    else this.own.refuse(curve);
  }

  /** The family whose curves are to be drawn: the chosen one, or the one along whose curves the duty is moved; "" for the first. */
  private get drawn(): string {
    const chosen = this.sheet.carried.facts.find((f) => f.term === "bowl-family")?.text;
    if (this.besideDuty !== this.movedBeside) this.followed = ""; // something else has changed
    return chosen ?? this.followed;
  }

  /** All facts but the duty that is moved. */
  private get besideDuty(): string {
    return JSON.stringify(this.sheet.carried.facts.filter((f) => f.term !== "capacity"));
  }

  private async ask(move = "", columns = false): Promise<ChoiceReply | undefined> {
    const { facts, choose } = this.sheet.carried;
    const line = ["choice", this.drawn, unitsNow(), narrow.matches ? "narrow" : "wide", move].join("\t");
    const engine = await FactSheet.house.engine();
    return engine.talk<Reply>(writeRequest({ want: "", facts, choose, show: [], lines: [...this.own.lines, line, ...(columns ? [this.columns.line] : [])] })).choice;
  }

  private async show(): Promise<void> {
    const told = await this.ask();
    if (!told || !this.curves || !this.listing) return;
    this.curves.innerHTML = told.svg;
    if (told.at !== undefined) this.slider.value = String(told.at);
    this.slider.setAttribute("aria-valuetext", told.capacity ?? "");
    const held = this.listing.contains(document.activeElement) ? (document.activeElement?.closest("li.family") as HTMLElement | null)?.dataset.family : undefined;
    clearTimeout(this.resting);
    this.resting = window.setTimeout(() => void this.weighColumns(), 150);
    this.listing.replaceChildren(this.list(told));
    this.back.href = this.deskWith(null);
    if (held !== undefined) this.listing.querySelector<HTMLElement>(`[data-family="${held}"] button, [data-family="${held}"] a`)?.focus();
  }

  /** The columns take several times as long as the bowls: they wait until the facts are at rest. */
  private async weighColumns(): Promise<void> {
    const told = (await this.ask("", true))?.column;
    if (told) this.columns.show(told);
    clearTimeout(this.resting);
    this.resting = window.setTimeout(() => void this.showTurns(), 250);
  }

  /** Where in the ranges of the facts another pump would be chosen: it takes longest, and comes last. */
  private async showTurns(): Promise<void> {
    const { facts, choose } = this.sheet.carried;
    const engine = await FactSheet.house.engine();
    const lines = turnItems(engine.talk<Reply>(writeRequest({ want: "", facts, choose, show: [], lines: [...this.own.lines, "pumps"] })).pumps);
    this.turns.hidden = lines.length === 0;
    this.turns.replaceChildren(...(lines.length === 0 ? [] : [make("h3", {}, say("sheet.turns")), make("ul", { role: "list" }, ...lines)]));
  }

  private async move(thousandths: number): Promise<void> {
    const told = await this.ask(String(thousandths));
    if (!told?.moved) return;
    // another family may come first at the next capacity: its axis would tear the point from the hand
    this.followed = told.drawn;
    this.movedBeside = this.besideDuty;
    this.sheet.put([{ term: "capacity", text: told.moved }]);
  }

  private grip(e: PointerEvent): void {
    if (e.button !== 0) return;
    (e.currentTarget as Element).setPointerCapture(e.pointerId);
    this.pull(e);
  }

  private pull(e: PointerEvent): void {
    const point = this.curves?.querySelector<SVGGElement>("[data-left]");
    const svg = point?.ownerSVGElement;
    if (!point || !svg || (e.buttons & 1) === 0) return;
    const box = svg.getBoundingClientRect();
    const left = box.left + box.width * Number(point.dataset.left);
    const right = box.left + box.width * Number(point.dataset.right);
    void this.move(Math.min(Math.max((1000 * (e.clientX - left)) / (right - left), 0), 1000));
  }

  private list(told: ChoiceReply): HTMLElement {
    const items = told.families.map((f) => {
      const item = make("li", { class: `family ${f.verdict}`, "data-family": f.id });
      item.append(make("h3", {}, f.name + " ", make("span", { class: "label" }, f.speed)));
      if (f.demo) item.append(make("p", { class: "demo" }, f.demo));
      item.append(make("p", { class: "verdict" }, say("bowls." + f.verdict)));
      if (f.stages) item.append(this.cells(told, f));
      if (f.reasons) item.append(this.reasons(f));
      item.append(this.acts(told, f));
      return item;
    });
    return make("ol", { class: "families", role: "list" }, ...items);
  }

  private cells(told: ChoiceReply, f: ChoiceFamily): HTMLElement {
    const list = make("dl", { class: "cells" });
    f.cells.forEach((cell, i) => {
      const column = told.columns[i];
      if (cell.us === "" || !column) return;
      list.append(make("div", { "data-id": column.id }, make("dt", {}, column.name), make("dd", {}, ...both(cell))));
    });
    return list;
  }

  private reasons(f: ChoiceFamily): HTMLElement {
    const lines = (f.reasons ?? []).map((r) =>
      make("li", { class: r.kind }, make("b", {}, say("bowls." + r.kind)), " ", ...both(r), " ", make("a", { href: `${this.root}terms/${r.term}.html` }, say("bowls.why"))));
    return make("ul", { class: "reasons", role: "list" }, ...lines);
  }

  /** What can be done with a family: draw it, and hand it to the desk with the facts of the sheet. */
  private acts(told: ChoiceReply, f: ChoiceFamily): HTMLElement {
    const draw = act(f.id === told.drawn ? say("bowls.drawn") : say("bowls.draw", f.name), () => this.sheet.put([{ term: "bowl-family", text: f.id }]));
    draw.setAttribute("aria-pressed", String(f.id === told.drawn));
    const acts = make("div", { class: "acts" }, draw);
    const pump = [{ term: "bowl-family", text: f.id }, { term: "stages", text: f.stages ?? "" }].filter((x) => x.text !== "");
    if (this.desk !== "" && f.stages && f.verdict !== "out") acts.append(make("a", { href: this.deskWith(pump) }, say("bowls.take")));
    return acts;
  }

  /** The link to the desk, for the call that brought the facts here: with these facts of a pump, or with those of the sheet. */
  private deskWith(pump: readonly Fact[] | null): string {
    const { facts, choose, want } = this.sheet.carried;
    const carried = pump === null ? facts : [...facts.filter((x) => x.term !== "bowl-family" && x.term !== "stages"), ...pump];
    const curve = this.own.curve;
    return pageURL(this.desk) + writeFragment(carried, want, choose, { same: true, curve: curve ? partsOf(curve) : undefined });
  }
}

/** Begins on a page that has the place for it. */
export function beginBowls(root: string): void {
  for (const section of document.querySelectorAll<HTMLElement>(".bowls[data-sheet]")) {
    const sheet = document.getElementById(section.dataset.sheet ?? "");
    if (sheet instanceof FactSheet) new Bowls(section, sheet, root);
  }
}

