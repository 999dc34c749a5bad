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
 * in full elsewhere, by their ids, are counted only.
 */
export function warnings(place: Element, cautions: CautionReply[], elsewhere: readonly string[] = []): void {
  const fires = cautions.filter((c) => c.state === "fires");
  const open = cautions.filter((c) => c.state === "unchecked");
  const own = fires.filter((c) => !elsewhere.includes(c.id));
  const key = JSON.stringify([own, open.length, cautions.length, fires.length]);
  if (place.getAttribute("data-key") !== key) {
    setAttr(place, "data-key", key);
    place.replaceChildren(...own.map(warning), ...summary(cautions.length, open.length, fires.length));
  }
  for (const c of cautions) onPage(c);
}

function warning(c: CautionReply): HTMLElement {
  const word = make("b", {}, say(c.danger ? "danger" : "caution"));
  return make("p", c.danger ? { class: "danger" } : {}, sign(c.danger ? "danger" : "caution"), make("span", {}, word, " ", c.text));
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
