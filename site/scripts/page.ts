// Entry of every page. It runs in the head, before the first paint, so that paper and units do not
// jump; all that needs the page waits for it. What needs a script is made by the script: without
// one nothing on the page is dead.
import { beginBowls } from "./bowls";
import { CutCompare } from "./cutcompare";
import { PumpMade } from "./cutmade";
import { CutSheet } from "./cutsheet";
import { CutWhich } from "./cutwhich";
import { Desk } from "./desk";
import { inside } from "./address";
import { act, make } from "./dom";
import { Engine } from "./engine";
import { readFragment } from "./link";
import { FindBox } from "./find";
import { openFile } from "./onefile";
import { hosted } from "./hosted";
import { practise } from "./practise";
import { followRules } from "./rules";
import { answered, FactSheet } from "./sheet";
import { bringSigns } from "./signs";
import { Store } from "./store";
import { TakeOff } from "./takeoff";
import { earlyTheme, themeSwitch } from "./theme";
import { earlyUnits, unitSwitch } from "./units";
import { nameTerms } from "./warnings";
import { say } from "./words";

const root = document.documentElement.dataset.root ?? "";
const book = document.documentElement.dataset.book ?? "";

document.documentElement.classList.add("scripted"); // room is kept for what the script will bring
earlyTheme(book);
earlyUnits(book);
let engine: Promise<Engine> | null = null;
const start = (): Promise<Engine> => (engine ??= Engine.start(root));
if (root !== inside) atFirstSheet(start);
document.addEventListener("DOMContentLoaded", begin);

/**
 * The engine is sent for as soon as a sheet is seen, while the rest of the page is still being read: it
 * is unpacked and compiled beside that. Nothing else that the page fetches comes before it.
 */
function atFirstSheet(send: () => Promise<Engine>): void {
  const seen = new MutationObserver(() => {
    if (!document.querySelector("fact-sheet")) return;
    seen.disconnect();
    send().catch(() => undefined); // whoever asks it hears of the trouble
  });
  seen.observe(document, { subtree: true, childList: true });
}

function begin(): void {
  bringSigns();
  const sheets = document.querySelector("fact-sheet") !== null;
  const store = new Store(root, book, sheets ? firstAnswer() : Promise.resolve());
  const tools = document.querySelector(".tools");
  if (tools) void unitSwitch(tools, store);
  FactSheet.house = { store, engine: start };
  if (tools) new FindBox(tools, root, start);
  CutSheet.engine = CutCompare.engine = CutWhich.engine = start;
  const wake = () => {
    choosePaper(store);
    enliven();
  };
  if (root === inside) return void openFile(prepare, wake);
  prepare(document);
  wake();
  hosted(root);
}

/** The switch of papers stands at the foot of the page that is shown; a page of the single file comes without its place. */
function choosePaper(store: Store): void {
  const main = document.getElementById("main");
  if (!main) return;
  const foot = main.querySelector(":scope > .paper") ?? make("div", { class: "paper" }); // drawings have things of that class too
  main.append(foot);
  void themeSwitch(foot, store);
}

/** What must be known before the parts of a page wake. */
function prepare(page: ParentNode): void {
  nameTerms(namesOn(page));
}

/** Wakes what lives on the page. */
function enliven(): void {
  whenAtRest(reachScrolled); // it has to lay the page out
  if (!customElements.get("fact-sheet")) {
    customElements.define("fact-sheet", FactSheet);
    customElements.define("pump-made", PumpMade);
    customElements.define("cut-sheet", CutSheet);
    customElements.define("cut-compare", CutCompare);
    customElements.define("cut-which", CutWhich);
  }
  followPieces();
  for (const section of document.querySelectorAll<HTMLElement>(".ruleset")) {
    const sheet = document.getElementById(section.dataset.sheet ?? "");
    if (sheet instanceof FactSheet) followRules(section, sheet);
  }
  beginBowls(root);
  beginDesk();
  offerExamples();
  wakeWhenIdle();
  practise(FactSheet.house);
}

/** The page of the desk has a place for it beside its sheet. */
function beginDesk(): void {
  const place = document.getElementById("desk");
  const sheet = document.querySelector("fact-sheet");
  const print = document.querySelector(".deskprint");
  if (place && print && sheet instanceof FactSheet) new Desk(place, sheet, print);
}

/**
 * The engine is asked when the page has been painted and is at rest, or at the first touch of a sheet.
 * Nothing waits for the pictures of the page.
 */
function wakeWhenIdle(): void {
  const sheets = document.querySelectorAll<FactSheet>("fact-sheet");
  if (sheets.length === 0) return;
  let woken = false;
  const wake = () => {
    if (!woken) sheets.forEach((s) => void s.wake());
    woken = true;
  };
  whenAtRest(wake);
}

/** Does something, once or twice, when the page has been painted and has nothing else to do. */
function whenAtRest(work: () => void): void {
  const idle = () => (typeof requestIdleCallback === "function" ? requestIdleCallback(work, { timeout: 2000 }) : setTimeout(work, 50));
  if (document.readyState === "complete") idle();
  else addEventListener("load", idle); // also where nothing is painted: in a tab behind others
  requestAnimationFrame(idle);
}

/** When the first sheet has answered, or cannot, or has been waited for long enough. */
function firstAnswer(): Promise<void> {
  return new Promise((resolve) => {
    document.addEventListener(answered, () => resolve(), { once: true, capture: true });
    start().catch(() => resolve());
    setTimeout(resolve, 3000);
  });
}

/** The list of a take-off follows its sheet. */
function followPieces(): void {
  for (const section of document.querySelectorAll<HTMLElement>(".pieces[data-sheet]")) {
    const sheet = document.getElementById(section.dataset.sheet ?? "");
    if (sheet instanceof FactSheet) new TakeOff(section, sheet, root);
  }
}

/** A worked example can be put on the sheet of its page. */
function offerExamples(): void {
  for (const example of document.querySelectorAll<HTMLElement>(".worked[data-take]")) {
    const sheet = document.getElementById(example.dataset.sheet ?? "");
    const carried = readFragment(example.dataset.take ?? "");
    if (!(sheet instanceof FactSheet) || !carried) continue;
    const title = sheet.querySelector("h2");
    example.append(act(say("sheet.take"), () => {
      sheet.take(carried, example.dataset.name ?? "");
      if (!title) return;
      title.tabIndex = -1;
      title.focus();
    }));
  }
}

/** A formula, a table or set lines wider than its place scrolls; the keyboard must reach it then. */
function reachScrolled(): void {
  for (const e of document.querySelectorAll<HTMLElement>(".rel > div, .slips .wrong, .prose > table, .prose pre")) {
    if (e.scrollWidth > e.clientWidth) e.tabIndex = 0;
  }
}

function namesOn(page: ParentNode): Map<string, string> {
  const rows = page.querySelectorAll<HTMLElement>("li.row[data-term]");
  return new Map(Array.from(rows, (li) => [li.dataset.term ?? "", li.querySelector(".nm")?.textContent?.trim() ?? ""]));
}
