// What the marker said of an answer, as a reader sees it: a word, what went wrong, what to read again.
import { make, sign } from "./dom";
import type { Mark } from "./exercisetalk";
import { say } from "./words";

const signs: Record<string, string> = {
  right: "follows", carried: "follows", rounded: "estimated", unit: "caution", "in-part": "estimated",
  mistake: "clash", "could-be": "several", "not-recognised": "clash", wrong: "clash", unread: "missing",
};

/** Whether nothing more is to be done about an answer. */
export function isSettled(mark: Mark | null): boolean {
  return mark !== null && (mark.verdict === "right" || mark.verdict === "carried");
}

/** Shows a mark in its place; null clears it. */
export function showMark(place: HTMLElement, mark: Mark | null, root: string): void {
  place.replaceChildren();
  place.dataset.verdict = mark === null || mark.verdict === "empty" ? "" : mark.verdict;
  if (mark === null || mark.verdict === "empty") return;
  const word = make("p", { class: "word" }, sign(signs[mark.verdict] ?? "missing"), " ", make("b", {}, say("class.verdict." + mark.verdict)));
  if (mark.own) word.append(" ", make("span", { class: "o" }, say("practice.own")));
  place.append(word);
  if (mark.verdict === "not-recognised" && !mark.say) place.append(make("p", {}, say("practice.unknown")));
  if (mark.say) place.append(make("p", {}, mark.say));
  const causes = mark.causes ?? [];
  causes.forEach((cause, i) => {
    if (i > 0) place.append(make("p", { class: "o" }, say("practice.or")));
    for (const slip of cause.slips ?? []) {
      const again = make("a", { href: `${root}terms/${slip.term}.html` }, slip.name);
      place.append(make("p", { class: "slip" }, slip.say, " ", make("span", { class: "again" }, say("practice.again"), " ", again)));
    }
  });
}
