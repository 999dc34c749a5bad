// The edition of one file: all pages are in the document, one is shown. Without scripts the style
// sheet shows the one that the address names, in a plain form; with scripts the whole page comes
// from the store of the document, and lives as in the folder edition.
import { placeOf } from "./address";
import { unecho } from "./echo";
import { packed } from "./packed";

const home = "index";
let pages = new Map<string, string>();
let shown: HTMLElement | null = null;

/** What must be taken back when a page goes: what its parts listen to outside of it. */
const listening: (() => void)[] = [];

/** Opens the document: enliven wakes what lives on a page that has just been put in. */
export async function openFile(prepare: (page: ParentNode) => void, enliven: () => void): Promise<void> {
  try {
    const text = await stored();
    pages = new Map(text.split("\u0001").map((p): [string, string] => {
      const at = p.indexOf("\u0002");
      return [p.slice(0, at), p.slice(at + 1)];
    }));
  } catch (e) {
    showStill();
    throw e;
  }
  const turn = () => {
    const { page, anchor } = placeOf(location.hash);
    const to = pages.has(page) ? page : home;
    if (shown === null || to !== document.documentElement.dataset.page) show(to, prepare, enliven);
    if (anchor !== "") document.getElementById(anchor)?.scrollIntoView();
  };
  addEventListener("hashchange", turn);
  remember(window);
  remember(document);
  turn();
}

/** The pages of the store, which are told by what stands in the plain forms. */
async function stored(): Promise<string> {
  const plain = Array.from(document.querySelectorAll("noscript"), (n) => n.textContent ?? "").join("");
  return unecho(new TextEncoder().encode(plain), new Uint8Array(await new Response(packed("pages")).arrayBuffer()));
}

function show(page: string, prepare: (page: ParentNode) => void, enliven: () => void): void {
  for (const stop of listening.splice(0)) stop();
  const isFirst = shown === null;
  shown?.remove();
  const sheet = document.createElement("template");
  sheet.innerHTML = pages.get(page) ?? "";
  const main = sheet.content.firstElementChild as HTMLElement;
  main.id = "main";
  prepare(main);
  document.documentElement.dataset.page = page;
  document.querySelector(".pagestart")?.after(main);
  shown = main;
  const heading = main.querySelector("h1");
  const book = document.querySelector(".mast .book")?.textContent?.trim() ?? "";
  document.title = page === home || !heading ? book : `${heading.textContent?.trim()} · ${book}`;
  point(page, main.dataset.place ?? "");
  enliven();
  if (isFirst) return;
  scrollTo(0, 0);
  if (heading) {
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
  }
}

/** Shows in the masthead and on the rail where one is. */
function point(page: string, place: string): void {
  const folder = page.split("/")[0];
  for (const a of document.querySelectorAll(".mast .go a")) {
    const to = placeOf(a.getAttribute("href") ?? "").page;
    const here = to === page || (to.endsWith("/index") && to.split("/")[0] === folder);
    if (here) a.setAttribute("aria-current", "page");
    else a.removeAttribute("aria-current");
  }
  for (const a of document.querySelectorAll(".rail a.place")) {
    const here = a.getAttribute("href") === `#places/${place}`;
    a.querySelector(".balloon")?.classList.toggle("lit", here);
    a.querySelector(".no")?.classList.toggle("pap", here);
  }
  document.querySelector<HTMLDetailsElement>("details.strip")?.removeAttribute("open");
}

/** From now on, what is listened to here ends with the page. */
function remember(target: EventTarget): void {
  const add = target.addEventListener.bind(target);
  target.addEventListener = (type: string, then: EventListenerOrEventListenerObject | null, options?: boolean | AddEventListenerOptions) => {
    listening.push(() => target.removeEventListener(type, then, options));
    add(type, then, options);
  };
}

/** The store cannot be opened: the plain forms, which the browser took for text, become pages. */
function showStill(): void {
  document.documentElement.classList.remove("scripted");
  for (const n of document.querySelectorAll("noscript")) n.insertAdjacentHTML("afterend", n.textContent ?? "");
}
