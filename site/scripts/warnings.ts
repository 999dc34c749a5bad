// The cautions of a sheet: those that fire stand there in full; how many were not checked is
// always said, so that silence never reads as all well.
import { make, setAttr, setText, sign } from "./dom";
import type { CautionReply } from "./protocol";
import { say } from "./words";

let names = new Map<string, string>();

/** Gives the names of terms, so that a caution can say what it lacks in words. */
export function nameTerms(known: Map<string, string>): void {
  names = known;
}

/**
 * Fills the place under the sheet, and the cautions that stand elsewhere on the page. Those told
 * in full elsewhere, by their texts, are counted only.
 */
export function warnings(place: Element, cautions: CautionReply[], elsewhere: readonly string[] = []): void {
  const fires = cautions.filter((c) => c.state === "fires");
  const open = cautions.filter((c) => c.state === "unchecked");
  const own = fires.filter((c) => !elsewhere.includes(c.text));
  const key = JSON.stringify([own, open.length, cautions.length, fires.length]);
  if (place.getAttribute("data-key") !== key) {
    setAttr(place, "data-key", key);
    place.replaceChildren(...told(own, opened(place)).map(warning), ...summary(cautions.length, open.length, fires.length));
  }
  for (const c of cautions) onPage(c);
}

/** What is said at one go: the words of a hazard, or of one caution, and what the cases of the hazard add. */
export interface Told {
  danger: boolean;
  kind?: string; // the name of the hazard
  words: string;
  cases: string[];
}

/**
 * Groups cautions by their hazard, dangers first, so that the words of a hazard are said once.
 * Hazards that the page opens with (above, by id) are named together and point to its head.
 */
export function told(cautions: readonly CautionReply[], above: ReadonlySet<string> = new Set()): Told[] {
  const groups = new Map<string, Told>();
  for (const c of cautions) {
    const known = c.hazard !== undefined && above.has(c.hazard);
    const words = known ? say("sheet.caution.above") : c.stop ?? c.text;
    const group = groups.get(words) ?? { danger: c.danger, words, cases: [] };
    if (c.kind && !group.kind?.split(", ").includes(c.kind)) group.kind = group.kind ? `${group.kind}, ${c.kind}` : c.kind;
    if (c.text !== (c.stop ?? c.text) && !group.cases.includes(c.text)) group.cases.push(c.text);
    groups.set(words, group);
  }
  const all = [...groups.values()];
  return [...all.filter((g) => g.danger), ...all.filter((g) => !g.danger)];
}

/** The hazards that the page of an element opens with. */
function opened(place: Element): Set<string> {
  const page = place.closest("main") ?? document;
  return new Set(Array.from(page.querySelectorAll<HTMLElement>(".stops [data-hazard]"), (li) => li.dataset.hazard ?? ""));
}

/** The words of a group behind its sign: Danger, the hazard's name, what it says. */
export function sentence(t: Told): (Node | string)[] {
  const name = t.kind ? [make("b", {}, t.kind + "."), " "] : [];
  return [make("b", { class: "w" }, say(t.danger ? "danger" : "caution")), " ", ...name, t.words];
}

function warning(t: Told): HTMLElement {
  const line = make("p", {}, sign(t.danger ? "danger" : "caution"), make("span", {}, ...sentence(t)));
  const cases = t.cases.length > 0 ? [make("ul", {}, ...t.cases.map((c) => make("li", {}, c)))] : [];
  return make("div", t.danger ? { class: "danger" } : {}, line, ...cases);
}

function summary(all: number, open: number, fires: number): HTMLElement[] {
  if (all === 0) return [];
  if (open > 0) return [make("p", { class: "open" }, say("sheet.cautions.some", open, all))];
  return fires > 0 ? [] : [make("p", { class: "open" }, say("sheet.cautions.all"))];
}

/** A caution printed on the page says whether it fires for the facts of the sheet. */
function onPage(c: CautionReply): void {
  for (const aside of document.querySelectorAll<HTMLElement>(".caution[data-caution]")) {
    if (aside.dataset.caution !== c.id) continue;
    setAttr(aside, "data-state", c.state);
    const place = aside.querySelector(".is");
    if (place) setText(place, stateText(c));
  }
}

function stateText(c: CautionReply): string {
  if (c.state !== "unchecked" || !c.lacks?.length) return say("sheet.caution." + c.state);
  return say("sheet.caution.lacks", c.lacks.map((id) => names.get(id) ?? id.replace(/-/g, " ")).join(", "));
}
