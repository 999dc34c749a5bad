// One living drawing: asked from the engine, put in the place of the printed one. It knows which
// group is which part; what is done with the parts is the business of the sheet.
import { make, setAttr } from "./dom";
import { EngineError, type Engine } from "./engine";

/** A numbered thing of a drawing: a part, or a feature of one (part/feature). */
export interface Label {
  n: number;
  id: string;
  part: string;
  name: string;
  turns?: boolean;
}

/** What to draw. labels as the engine knows them; width is a class, not the width in the page. */
export interface Wish {
  build: string;
  sheet: string;
  labels: "numbered" | "named" | "masked" | "single";
  known?: string[]; // labels that are told although the others are put away
  width: number;
  stages: number;
  options?: string[]; // of how the pump is made, what is not usual
  title: string;
}

interface Reply {
  svg?: string;
  labels?: Label[];
  error?: string;
}

/** The width class that the printed picture has at this width of the page. */
export function printedWidth(picture: HTMLPictureElement): number {
  const fits = Array.from(picture.querySelectorAll("source")).find((s) => matchMedia(s.media).matches);
  return Number((fits ?? picture.querySelector("img"))?.getAttribute("width") ?? 360);
}

export class Plate {
  labels: Label[] = [];
  svg: SVGSVGElement | null = null;
  private readonly groups = new Map<string, SVGGElement>();
  private readonly partOf = new Map<Element, string>();
  private readonly place = make("div", { class: "cutlive" });

  constructor(
    private readonly printed: HTMLElement,
    private readonly prefix: string,
  ) {}

  /** Draws, and shows the result where the printed drawing was. */
  draw(engine: Engine, wish: Wish): void {
    const reply = engine.talk<Reply>("cut\t" + fields(wish, this.prefix) + "\n");
    if (reply.svg === undefined) throw new EngineError("refused", reply.error ?? "");
    this.place.innerHTML = reply.svg;
    this.svg = this.place.querySelector("svg");
    this.labels = reply.labels ?? [];
    this.know(wish.labels === "masked" || wish.labels === "single" ? new Set(wish.known) : null);
    if (!this.place.isConnected) this.printed.after(this.place);
    this.printed.hidden = true;
  }

  /** The printed drawing comes back. */
  restore(): void {
    this.place.remove();
    this.printed.hidden = false;
  }

  /** The parts that have a group and a number, from the top, each once. */
  get order(): string[] {
    return [...new Set(this.labels.map((l) => l.part))].filter((p) => this.groups.has(p));
  }

  group(part: string): SVGGElement | undefined {
    return this.groups.get(part);
  }

  /** The name of a part as the drawing tells it, which may be a neutral one. */
  nameOf(part: string): string {
    return this.labelOf(part)?.name ?? "";
  }

  labelOf(part: string): Label | undefined {
    return this.labels.find((l) => l.id === part) ?? this.labels.find((l) => l.part === part);
  }

  /** Lights some parts; everything else steps back. With none all are as they were. */
  light(parts: Iterable<string>): void {
    const lit = new Set(parts);
    for (const [part, g] of this.groups) {
      g.classList.toggle("lit", lit.has(part));
      if (g.getAttribute("role") === "button") setAttr(g, "aria-pressed", String(lit.has(part)));
    }
  }

  /** The label whose balloon or words were hit. */
  balloon(target: Element): Label | undefined {
    const text = target.matches("circle.bal") ? target.nextElementSibling : target.closest("text.cb");
    const n = Number(text?.textContent);
    return text ? this.labels.find((l) => l.n === n) : undefined;
  }

  /** The part of a group, by an element inside it. */
  partAt(target: Element): string | undefined {
    const g = target.closest("g.part");
    return g ? this.partOf.get(g) : undefined;
  }

  /** The parts within reach of a finger or a pointer, the one hit first. */
  near(x: number, y: number, reach: number): string[] {
    const found = new Set<string>();
    for (const r of [0, reach / 2, reach]) {
      for (let i = 0; i < (r === 0 ? 1 : 8); i++) {
        const e = document.elementFromPoint(x + r * Math.cos(i * Math.PI / 4), y + r * Math.sin(i * Math.PI / 4));
        const part = e && this.place.contains(e) ? this.partAt(e) : undefined;
        if (part !== undefined) found.add(part);
      }
    }
    return [...found];
  }

  follow(path: string): void {
    for (const c of [...(this.svg?.classList ?? [])]) if (c.startsWith("follow-")) this.svg?.classList.remove(c);
    if (path !== "") this.svg?.classList.add("follow-" + path);
  }

  /** Finds out which group is which part. Where names are put away, but for some, ids would give them away too. */
  private know(told: Set<string> | null): void {
    this.groups.clear();
    this.partOf.clear();
    for (const g of this.svg?.querySelectorAll<SVGGElement>("g.part") ?? []) {
      const part = g.id.slice(this.prefix.length + 1);
      this.groups.set(part, g);
      this.partOf.set(g, part);
      if (told && !told.has(part)) g.id = `${this.prefix}-n${g.dataset.number ?? this.groups.size + "x"}`;
    }
  }
}

function fields(w: Wish, prefix: string): string {
  const list = [`build=${w.build}`, `sheet=${w.sheet}`, `labels=${w.labels}`, `width=${w.width}`, `prefix=${prefix}`, `title=${w.title}`];
  if (w.stages > 0) list.push(`stages=${w.stages}`);
  if (w.options?.length) list.push(`options=${w.options.join(" ")}`);
  if (w.known?.length) list.push(`known=${w.known.join(" ")}`);
  return list.join("\t");
}
