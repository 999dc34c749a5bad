// What a result hangs on: the facts that are ranges and the values nobody gave, by how far each alone
// moves the result. The engine ranks them; the first one is what to ask for.
import { make } from "./dom";
import type { Hang, Reply, Turn } from "./protocol";
import { say } from "./words";

const most = 6; // lines that are shown
export const mostPrinted = 3; // and on the enquiry, where room is short

/** Redraws the list in its place; empty where nothing is a range and nothing assumed. */
export function drawHangs(place: HTMLElement, reply: Reply, wanted: string): void {
  const items = hangItems(reply);
  const turns = turnItems(reply.turns);
  place.hidden = items.length + turns.length === 0;
  const titled = (title: string, list: string, lines: HTMLElement[]) => (lines.length === 0 ? [] : [make("h3", {}, title), make(list as "ol", { role: "list" }, ...lines)]);
  place.replaceChildren(...titled(say("sheet.hangs", wanted), "ol", items), ...titled(say("sheet.turns"), "ul", turns));
}

/** Where the ranges make the choice another one, a line for each. */
export function turnItems(turns: readonly Turn[] | undefined): HTMLElement[] {
  return (turns ?? []).map((t) => {
    const words = (text: string) => (t.name === undefined ? say("sheet.turns.pump", t.by, text) : say("sheet.turns.line", t.name, t.by, text));
    return make("li", {}, make("span", { class: "only-us" }, words(t.us)), make("span", { class: "only-si" }, words(t.si)));
  });
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
