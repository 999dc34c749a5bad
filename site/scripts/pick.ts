// <practice-pick>: an exercise by place and level, without an end: of those that fit, one of the least
// practised comes, with a new sheet.
import { act, make } from "./dom";
import type { Kept } from "./kept";
import { dateOf } from "./progress";
import { say } from "./words";

export class PracticePick extends HTMLElement {
  static kept: Kept;

  connectedCallback(): void {
    const place = select("practice.pick.place", [["", say("practice.pick.all")], ...places()]);
    const level = select("practice.pick.level", [["", say("practice.pick.all")], ...["1", "2", "3"].map((l): [string, string] => [l, say("class.level", l)])]);
    const news = make("p", { class: "news", role: "status" });
    const go = act(say("practice.pick.go"), async () => {
      const url = await choose(place.value, level.value);
      if (url === "") news.textContent = say("practice.pick.none");
      else location.href = `${url}#seed=${1 + Math.floor(Math.random() * 999_999)}`;
    });
    go.classList.add("first");
    this.replaceChildren(make("div", { class: "acts" }, label(place), label(level), go), news);
    void tellDone();
  }
}

interface Named extends HTMLSelectElement {
  words?: string;
}

function select(words: string, options: [string, string][]): Named {
  const s: Named = make("select", {}, ...options.map(([value, text]) => make("option", { value }, text)));
  s.words = words;
  return s;
}

function label(s: Named): HTMLElement {
  return make("label", {}, say(s.words ?? ""), " ", s);
}

function places(): [string, string][] {
  return Array.from(document.querySelectorAll<HTMLElement>(".trainset"), (s) => [s.dataset.place ?? "", s.querySelector("h2")?.textContent ?? ""]);
}

function entries(place: string): HTMLElement[] {
  const all = Array.from(document.querySelectorAll<HTMLElement>(".trainset li[data-exercise]"));
  return place === "" ? all : all.filter((li) => li.closest<HTMLElement>(".trainset")?.dataset.place === place);
}

/** The address of one of the exercises that were done least often. */
async function choose(place: string, level: string): Promise<string> {
  const fit = entries(place).filter((li) => level === "" || li.dataset.level === level);
  const p = await PracticePick.kept.now();
  const done = (li: HTMLElement) => p.tallies["e/" + (li.dataset.exercise ?? "")]?.n ?? 0;
  const least = Math.min(...fit.map(done));
  const list = fit.filter((li) => done(li) === least);
  return list[Math.floor(Math.random() * list.length)]?.querySelector("a")?.getAttribute("href") ?? "";
}

/** Writes behind each exercise how often it was done. */
async function tellDone(): Promise<void> {
  const p = await PracticePick.kept.now();
  for (const li of entries("")) {
    const t = p.tallies["e/" + (li.dataset.exercise ?? "")];
    if (t) li.append(make("span", { class: "done o" }, say("practice.done", t.n, Math.round((100 * t.good) / t.n), dateOf(t.last))));
  }
}
