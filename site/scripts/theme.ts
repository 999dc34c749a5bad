// The paper: as the system, light, dark, or high contrast.
import { makeSwitch, setSwitch } from "./dom";
import { recall, type Store } from "./store";
import { say } from "./words";

const themes = ["auto", "light", "dark", "contrast"];

function show(theme: string | null): theme is string {
  if (theme === null || !themes.includes(theme)) return false;
  document.documentElement.dataset.theme = theme;
  return true;
}

/** The wells are pictures, and cannot see the paper of the page: their address tells them. */
function paint(): void {
  const theme = document.documentElement.dataset.theme ?? "auto";
  for (const well of document.querySelectorAll<HTMLImageElement>("img.well")) {
    const [file = "", now = ""] = (well.getAttribute("src") ?? "").split("#");
    const want = theme === "auto" ? "" : theme;
    if (now !== want) well.setAttribute("src", want === "" ? file : `${file}#${want}`);
  }
}

/** Before the first paint: what this tab last showed. */
export function earlyTheme(book: string): void {
  show(recall(book, "theme"));
}

/** Puts the choice of paper at the foot of the page. */
export async function themeSwitch(place: Element, store: Store): Promise<void> {
  const options = themes.map((value) => ({ value, text: say("theme." + value) }));
  const now = document.documentElement.dataset.theme ?? "auto";
  const set = makeSwitch("theme", say("theme"), false, options, now, (value) => {
    show(value);
    paint();
    void store.set("theme", value);
  });
  place.append(set);
  paint();
  const kept = await store.get("theme");
  if (show(kept)) setSwitch(set, kept);
  paint();
}
