// What to ask a person for, as the engine worked it out: at most five sets, any one of them enough.
import { make } from "./dom";
import type { Question, Reply } from "./protocol";
import { say } from "./words";

interface Target {
  focus(): void;
}

/** The list of questions as elements; a question whose row is on the sheet leads to its field. */
export function questions(reply: Reply, wanted: string, rowOf: (term: string) => Target | undefined): HTMLElement[] {
  const sets = (reply.missing ?? []).map((s) => s.terms).filter((terms) => terms.length > 0);
  const title = make("h3", {}, say("sheet.missing.title"));
  if (sets.length === 0) {
    return [title, make("p", {}, wanted === "" ? say("sheet.missing.none.all") : say("sheet.missing.none", wanted))];
  }
  const lead = make("p", {}, say(sets.length === 1 ? "sheet.missing.one" : "sheet.missing.set"));
  const out: HTMLElement[] = [title, lead];
  sets.forEach((terms, i) => {
    if (i > 0) out.push(make("p", { class: "key" }, say("sheet.missing.or")));
    out.push(make("ul", { role: "list" }, ...terms.map((q) => line(q, rowOf(q.id)))));
  });
  return out;
}

function line(q: Question, row: Target | undefined): HTMLElement {
  const ask = make("span", { class: "ask" }, q.ask);
  if (!row) return make("li", {}, make("b", {}, q.name), q.ask === "" ? "" : ": ", ask);
  const button = make("button", { type: "button", class: "to" }, q.name);
  button.addEventListener("click", () => row.focus());
  return make("li", {}, button, q.ask === "" ? "" : ": ", ask);
}
