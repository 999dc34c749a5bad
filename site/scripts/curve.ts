// A curve of the reader's own as it travels: in a request, in a link, in the file of an enquiry.
// What its numbers mean and whether they make a curve, the engine says. This file knows neither the
// page nor the words, so that it can be tested by itself.
import type { Fact } from "./link";

/** The place that the book keeps for a family of the reader's own. */
export const ownFamily = "other-bowl";

export const figureKeys = ["speed", "outside-diameter", "shaft-diameter", "thrust-factor", "impeller-weight"] as const;
export const pointKeys = ["capacity", "head", "efficiency", "npsh"] as const;
export const fewest = 3;
export const most = 12;

type Figure = (typeof figureKeys)[number];
export type CurvePoint = { capacity: string; head: string; efficiency?: string; npsh?: string };

/** All texts as typed; a figure that was not typed is left out. */
export interface Curve {
  name: string;
  figures: { speed: string } & Partial<Record<Figure, string>>;
  points: CurvePoint[];
}

/** The parts of a curve in the order in which they are told: a key, and its text. */
export function partsOf(c: Curve): Fact[] {
  const figures = figureKeys.filter((k) => c.figures[k] !== undefined).map((k) => ({ term: k as string, text: c.figures[k] ?? "" }));
  const points = c.points.map((p) => ({ term: "point", text: pointKeys.map((k) => p[k] ?? "").join("; ").replace(/[;\s]+$/, "") }));
  return [{ term: "name", text: c.name }, ...figures, ...points];
}

/** The curve of such parts; the part that cannot belong to one, if it is none. */
export function curveOf(parts: readonly Fact[]): Curve | string {
  const c = { name: "", figures: {} as Curve["figures"], points: [] as CurvePoint[] };
  for (const { term, text } of parts) {
    const key = figureKeys.find((k) => k === term);
    const point = term === "point" ? pointOf(text) : null;
    if (term === "name" && c.name === "") c.name = text;
    else if (key !== undefined && c.figures[key] === undefined) c.figures[key] = text;
    else if (point !== null) c.points.push(point);
    else return `${term}:${text}`;
  }
  if (c.name === "") return "name";
  if (c.figures.speed === undefined) return "speed";
  return c.points.length >= fewest && c.points.length <= most ? c : "point";
}

function pointOf(text: string): CurvePoint | null {
  const [capacity = "", head = "", efficiency = "", npsh = "", ...more] = text.split(";").map((t) => t.trim());
  if (capacity === "" || head === "" || more.length > 0) return null;
  return { capacity, head, ...(efficiency === "" ? {} : { efficiency }), ...(npsh === "" ? {} : { npsh }) };
}

/** The line of a request that brings the curve. */
export function lineOf(c: Curve): string {
  const [name, ...rest] = partsOf(c);
  const texts = [`name ${name?.text ?? ""}`, "origin builder's sheet", ...rest.map((p) => `${p.term} ${p.text}`)];
  return ["bowl", ownFamily, ...texts].map((t) => t.replace(/[\t\r\n]+/g, " ")).join("\t");
}

/** Where in the line the parts of a curve stand, counted as a reply counts them. */
export function placeOfPart(part: number): number {
  return part === 0 ? 0 : part + 1; // the origin stands behind the name
}
