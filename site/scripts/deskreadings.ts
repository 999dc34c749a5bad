// The sentences on the page: each with its pieces marked, and under it a line for every piece with
// the one click that puts it on the sheet, takes another meaning, or drops it.
import { act, make } from "./dom";
import { cut, type Candidate, type Known, type Reading, type Said, type Standing } from "./desksaid";
import { say } from "./words";

/** What the lines of the readings ask of the desk. */
export interface ReadingHost extends Known {
  put(c: Candidate, r: Reading, instead: Candidate | undefined): void;
  putAll(said: Said, readings: readonly Reading[]): void;
  off(c: Candidate): void;
  dropped(): void;
  forget(said: Said): void;
  shown(term: string, text: string): string;
}

const most = 4; // candidates that are offered for one piece

/** Draws all sentences, the last one first: the caller looks at what was just said. */
export function drawSaid(place: Element, list: readonly Said[], host: ReadingHost): void {
  place.replaceChildren(...list.map((s, i) => sentence(s, i, host)).reverse());
}

function sentence(s: Said, i: number, host: ReadingHost): HTMLElement {
  const ready = s.readings.filter((r) => s.standing(r, host) === "ready");
  const box = make("section", { class: "said", "aria-label": say("desk.said", i + 1) });
  const quote = make("p", { class: "quote" });
  for (const piece of cut(s.text, s.readings)) {
    quote.append(piece.reading === null ? piece.text : make("mark", { class: s.standing(piece.reading, host) }, piece.text));
  }
  const acts = make("div", { class: "acts" });
  if (ready.length > 0) {
    const all = act(ready.length === 1 ? say("desk.put.one") : say("desk.put.all", ready.length), () => host.putAll(s, ready));
    all.classList.add("first", "putall");
    acts.append(all);
  }
  acts.append(act(say("desk.forget"), () => host.forget(s)));
  const lines = s.readings.map((r) => line(s, r, host));
  if (lines.length === 0) box.append(quote, make("p", { class: "news" }, say("desk.nothing")), acts);
  else box.append(quote, acts, make("ul", { role: "list" }, ...lines)); // a thumb finds the one button for all that is sure before the lines
  return box;
}

function line(s: Said, r: Reading, host: ReadingHost): HTMLElement {
  const standing = s.standing(r, host);
  const li = make("li", { class: `piece ${standing}`, tabindex: "-1" }, make("q", {}, r.text));
  const meaning = make("span", { class: "meaning" });
  const buttons = make("span", { class: "choices" });
  const first = s.onSheet(r, host) ?? r.candidates?.[0];
  meaning.append(make("span", { class: "is" }, say("desk.is." + standing)), " ", ...meant(r, standing, first, host));
  buttons.append(...choices(s, r, standing, first, host));
  li.append(meaning, buttons);
  return li;
}

/** What a line says about its piece. */
function meant(r: Reading, standing: Standing, first: Candidate | undefined, host: ReadingHost): (Node | string)[] {
  if (standing === "open" || standing === "unknown") return [make("span", { class: "ask" }, r.message ?? "")];
  if (first === undefined) return [];
  const fact = make("b", {}, first.name, " ", make("span", { class: "num" }, host.shown(first.term, first.value)));
  if (standing === "differs") return [fact, " ", make("span", { class: "against" }, say("desk.differs", host.shown(first.term, host.text(first.term))))];
  if (standing === "clashes") return [fact, " ", make("span", { class: "against" }, host.clash(first))];
  return [fact, ...(standing === "ready" && first.reason ? [" ", make("span", { class: "note" }, first.reason)] : [])];
}

function choices(s: Said, r: Reading, standing: Standing, first: Candidate | undefined, host: ReadingHost): HTMLElement[] {
  const drop = (words: string) => act(words, () => {
    s.dropped.add(r.text);
    host.dropped();
  });
  if (standing === "dropped") {
    return [act(say("desk.undrop"), () => {
      s.dropped.delete(r.text);
      host.dropped();
    })];
  }
  if (standing === "unknown" || first === undefined) return [drop(say("desk.drop"))];
  const others = (r.candidates ?? []).filter((c) => c !== first).slice(0, most - 1);
  if (standing === "open") return [...(r.candidates ?? []).slice(0, most).map((c) => take(c, r, undefined, host)), drop(say("desk.drop"))];
  if (standing === "on") return [...others.map((c) => take(c, r, first, host)), act(say("desk.off"), () => host.off(first))];
  if (standing === "differs") {
    return [
      drop(say("desk.keep", host.shown(first.term, host.text(first.term)))),
      act(say("desk.take", host.shown(first.term, first.value)), () => host.put(first, r, undefined)),
      ...others.map((c) => take(c, r, undefined, host)),
    ];
  }
  const put = act(standing === "clashes" ? say("desk.put.still") : say("desk.put"), () => host.put(first, r, undefined));
  return [put, ...others.map((c) => take(c, r, undefined, host)), drop(say("desk.drop"))];
}

/** A button that takes one meaning; it says so if a value on the sheet would go. */
function take(c: Candidate, r: Reading, instead: Candidate | undefined, host: ReadingHost): HTMLElement {
  const there = host.text(c.term);
  const value = host.shown(c.term, c.value);
  const words = there !== "" && !host.same(c.term, there, c.value) ? say("desk.instead", c.name, value, host.shown(c.term, there)) : `${c.name} ${value}`;
  return act(words, () => host.put(c, r, instead));
}
