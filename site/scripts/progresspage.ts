// <practice-progress>: what this browser remembers of somebody's practice; saved to a file and loaded.
import { act, make } from "./dom";
import type { Kept } from "./kept";
import { dateOf, dayOf, join, ProgressError, read, together, write, type Progress, type Tally } from "./progress";
import { session } from "./sm2";
import { say } from "./words";

interface Learnt {
  id: string;
  name: string;
  url: string;
  of?: string[];
}

const columns = ["name", "times", "well", "helped", "last"];

export class PracticeProgress extends HTMLElement {
  static kept: Kept;
  static book = "";
  private readonly news = make("p", { class: "news", role: "status" });
  private readonly tables = make("div", {});
  private readonly summary = make("p", {});

  connectedCallback(): void {
    const file = make("input", { type: "file", accept: ".json,application/json", class: "off", id: "progress-file", tabindex: "-1", "aria-label": say("progress.load") });
    file.addEventListener("change", () => void this.load(file));
    const clear = act(say("progress.clear"), () => this.clear(clear));
    this.replaceChildren(this.summary, make("div", { class: "acts" }, act(say("progress.save"), () => this.save()), act(say("progress.load"), () => file.click()), file, clear), this.news, this.tables);
    void PracticeProgress.kept.now().then((p) => {
      this.show(p);
      const { fault } = PracticeProgress.kept;
      if (fault !== null) this.news.textContent = say("progress.kept." + fault);
    });
  }

  private list(name: string): Learnt[] {
    return (JSON.parse(this.getAttribute("data-" + name) ?? "[]") as Learnt[] | null) ?? [];
  }

  private show(p: Progress): void {
    const ids = Object.keys(p.cards);
    const due = session(ids, p.cards, dayOf(new Date()), 0).length;
    this.summary.textContent = say("progress.summary", Object.keys(p.tallies).filter((id) => id.startsWith("e/")).length, ids.length, due);
    this.tables.replaceChildren(...["chapters", "exercises", "terms", "parts"].flatMap((name) => this.table(name, p)));
    this.dataset.alive = "";
  }

  private table(name: string, p: Progress): HTMLElement[] {
    const rows: HTMLElement[] = [];
    for (const l of this.list(name)) {
      if (l.of) {
        const all = together(p, l.of);
        if (all.done > 0) rows.push(row(l, all.tally, say("progress.of", all.done, all.of)));
      } else if (p.tallies[l.id]) rows.push(row(l, p.tallies[l.id] as Tally, ""));
    }
    const title = make("h2", {}, say("progress." + name));
    if (rows.length === 0) return [title, make("p", {}, say("progress.none"))];
    const head = make("tr", {}, ...columns.map((c) => make("th", { scope: "col" }, say("progress.column." + c))));
    return [title, make("table", { class: "plain" }, make("thead", {}, head), make("tbody", {}, ...rows))];
  }

  private async save(): Promise<void> {
    const p = await PracticeProgress.kept.now();
    const url = URL.createObjectURL(new Blob([write(p)], { type: "application/json" }));
    make("a", { href: url, download: `${PracticeProgress.book}-progress-${dateOf(dayOf(new Date()))}.json` }).click();
    setTimeout(() => URL.revokeObjectURL(url), 10_000);
    this.news.textContent = say("progress.saved");
  }

  /** Takes a file as a whole, or says why not and changes nothing. */
  private async load(input: HTMLInputElement): Promise<void> {
    const file = input.files?.[0];
    if (!file) return;
    try {
      const there = read(await file.text(), PracticeProgress.book);
      this.show(await PracticeProgress.kept.change((here) => join(here, there)));
      this.news.textContent = say(PracticeProgress.kept.fault === null ? "progress.loaded" : "progress.loaded.unkept", file.name);
    } catch (e) {
      this.news.textContent = say("progress.file." + (e instanceof ProgressError ? e.kind : "damaged"), file.name);
    }
    input.value = ""; // the same file may be chosen again
  }

  /** Forgetting is asked for twice. */
  private async clear(button: HTMLButtonElement): Promise<void> {
    if (button.dataset.sure === undefined) {
      button.dataset.sure = "";
      button.textContent = say("progress.clear.sure");
      return;
    }
    delete button.dataset.sure;
    button.textContent = say("progress.clear");
    this.show(await PracticeProgress.kept.clear());
    this.news.textContent = say("progress.cleared");
  }
}

function row(l: Learnt, t: Tally, of: string): HTMLElement {
  const cells = [String(t.n) + (of === "" ? "" : ` (${of})`), `${Math.round((100 * t.good) / t.n)} %`, String(t.helped), dateOf(t.last)];
  return make("tr", {}, make("th", { scope: "row" }, make("a", { href: l.url }, l.name)),
    ...cells.map((text, i) => make("td", { "data-h": say("progress.column." + (columns[i + 1] ?? "")) }, text)));
}
