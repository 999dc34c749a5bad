// What a result hangs on: the facts that are ranges and the values nobody gave, by how far each alone
// moves the result. The engine ranks them; the first one is what to ask for.
import { make } from "./dom";
import type { Hang, Reply } from "./protocol";
import { say } from "./words";

const most = 6; // lines that are shown
export const mostPrinted = 3; // and on the enquiry, where room is short

/** Redraws the list in its place; empty where nothing is a range and nothing assumed. */
export function drawHangs(place: HTMLElement, reply: Reply, wanted: string): void {
  const items = hangItems(reply);
  place.hidden = items.length === 0;
  if (items.length === 0) return place.replaceChildren();
  place.replaceChildren(make("h3", {}, say("sheet.hangs", wanted)), make("ol", { role: "list" }, ...items));
}

/** The lines of the list, the most first. */
export function hangItems(reply: Reply, n = most): HTMLElement[] {
  return (reply.hangs ?? []).slice(0, n).map((h, i) => make("li", {}, ...inBoth(h, (move) => line(h, move, i === 0))));
}

function line(h: Hang, move: string, first: boolean): string {
  if (first) return say(h.assumed ? "sheet.hangs.first.assumed" : "sheet.hangs.first", h.name, move);
  return say(h.assumed ? "sheet.hangs.more.assumed" : "sheet.hangs.more", h.name, move);
}

/** The same sentence in both systems of units; the style sheet shows the one in force. */
function inBoth(h: Hang, words: (move: string) => string): HTMLElement[] {
  return [make("span", { class: "only-us" }, words(h.us)), make("span", { class: "only-si" }, words(h.si))];
}
