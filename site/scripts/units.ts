// Which numbers stand large: US customary or SI. Both are always in the page.
import { makeSwitch, setSwitch } from "./dom";
import { recall, type Store } from "./store";
import { say } from "./words";

export type Units = "us" | "si";
const changed = "columnbowl-units";

export function unitsNow(): Units {
  return document.documentElement.dataset.units === "si" ? "si" : "us";
}

function asUnits(text: string | null): Units | null {
  return text === "us" || text === "si" ? text : null;
}

function show(units: Units): void {
  if (units === unitsNow()) return;
  document.documentElement.dataset.units = units;
  document.dispatchEvent(new CustomEvent(changed));
}

export function onUnits(then: () => void): void {
  document.addEventListener(changed, then);
}

/** Before the first paint: what this tab last showed. */
export function earlyUnits(book: string): void {
  const units = asUnits(recall(book, "units"));
  if (units) document.documentElement.dataset.units = units;
}

/** Puts the switch into the masthead. */
export async function unitSwitch(place: Element, store: Store): Promise<void> {
  const options = [{ value: "us", text: say("units.us") }, { value: "si", text: say("units.si") }];
  const set = makeSwitch("units", say("units"), true, options, unitsNow(), (value) => {
    show(value as Units);
    void store.set("units", value);
  });
  place.append(set);
  const kept = asUnits(await store.get("units"));
  if (kept) {
    show(kept);
    setSwitch(set, kept);
  }
}
