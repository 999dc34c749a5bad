// Two of the three pumps side by side: what one has and the other has not is lit in the drawings,
// named below them, and marked in the table. The table is what the page knows; nothing is computed.
import { make, makeSwitch } from "./dom";
import { EngineError, type Engine } from "./engine";
import { Plate } from "./cutplate";
import { say } from "./words";

/** A part of the table and the pumps that have it. */
export interface TableRow {
  row: HTMLTableRowElement;
  part: string;
  link: HTMLAnchorElement;
  builds: string[];
}

/** Reads the table of parts; builds are the pumps in the order of its columns. */
export function readTable(root: ParentNode, builds: readonly string[]): TableRow[] {
  return Array.from(root.querySelectorAll<HTMLTableRowElement>("table.compare tr[data-part]"), (row) => ({
    row,
    part: row.dataset.part ?? "",
    link: row.querySelector("a")!,
    builds: Array.from(row.cells).slice(1).flatMap((td, i) => (td.querySelector(".has") ? builds[i] ?? [] : [])),
  }));
}

interface Pump {
  build: string;
  section: HTMLElement;
  plate: Plate;
  only: HTMLElement;
}

export class CutCompare extends HTMLElement {
  static engine: () => Promise<Engine>;
  private pumps: Pump[] = [];
  private rows: TableRow[] = [];
  private news = make("p", { class: "news", role: "status" });

  connectedCallback(): void {
    if (this.pumps.length > 0) return;
    this.pumps = Array.from(this.querySelectorAll<HTMLElement>("section.pump"), (section) => this.pump(section));
    this.rows = readTable(this, this.pumps.map((p) => p.build));
    const all = { value: "", text: say("builds.compare.all") };
    const pairs = [[0, 1], [1, 2], [0, 2]].map(([a, b]) => ({ value: `${a} ${b}`, text: say("builds.compare.pair", this.name(a!), this.name(b!)) }));
    const choice = makeSwitch("compare", say("builds.compare"), false, [all, ...pairs], "", (v) => void this.choose(v));
    this.querySelector(".pumps")?.before(make("div", { class: "toolrow" }, choice), this.news);
    this.offerRows();
    this.markRows(this.pumps);
  }

  private pump(section: HTMLElement): Pump {
    const build = section.dataset.build ?? "";
    const only = make("p", { class: "key onlyin" });
    only.hidden = true;
    section.append(only);
    return { build, section, plate: new Plate(section.querySelector<HTMLElement>("a.pumpdraw")!, "m-" + build), only };
  }

  private name(i: number): string {
    return say("build." + this.pumps[i]?.build);
  }

  private async choose(pair: string): Promise<void> {
    const chosen = pair === "" ? this.pumps : pair.split(" ").map((i) => this.pumps[Number(i)]!);
    this.querySelector(".pumps")?.classList.toggle("two", pair !== "");
    for (const p of this.pumps) {
      p.section.hidden = !chosen.includes(p);
      p.only.hidden = pair === "";
      if (pair === "") p.plate.restore();
    }
    this.markRows(chosen);
    this.news.textContent = "";
    if (pair === "") return;
    try {
      const engine = await CutCompare.engine();
      await engine.add("cutaway");
      chosen.forEach((p, i) => this.draw(engine, p, chosen[1 - i]!));
    } catch (e) {
      this.news.textContent = say("builds.compare.failed", e instanceof EngineError ? say("engine." + e.kind, e.message) : String(e));
    }
  }

  private draw(engine: Engine, p: Pump, other: Pump): void {
    const alone = this.rows.filter((r) => r.builds.includes(p.build) && !r.builds.includes(other.build));
    p.plate.draw(engine, { build: p.build, sheet: "whole", labels: "numbered", width: 360, stages: 8, title: p.section.querySelector("h2")?.textContent ?? "" });
    p.plate.svg?.classList.add("plain");
    p.plate.light(alone.map((r) => r.part));
    p.only.replaceChildren(say("builds.compare.only", say("build." + p.build)), ...alone.flatMap((r, i) => (i === 0 ? [r.link.cloneNode(true)] : [", ", r.link.cloneNode(true)])));
  }

  /** Marks the rows in which the chosen pumps differ, and leaves the columns of the others out. */
  private markRows(chosen: readonly Pump[]): void {
    const builds = chosen.map((p) => p.build);
    for (const r of this.rows) {
      const have = builds.filter((b) => r.builds.includes(b)).length;
      r.row.classList.toggle("differs", have > 0 && have < builds.length);
    }
    const table = this.querySelector("table.compare");
    this.pumps.forEach((p, i) => table?.classList.toggle("without-" + (i + 1), !chosen.includes(p)));
  }

  private offerRows(): void {
    const box = make("input", { type: "checkbox" });
    box.addEventListener("change", () => this.querySelector("table.compare")?.classList.toggle("differing", box.checked));
    this.querySelector("table.compare")?.before(make("label", { class: "check" }, box, make("span", {}, say("builds.compare.rows"))));
  }
}
