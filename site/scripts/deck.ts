// The cards that the printed list of terms and parts makes.

export interface Card {
  id: string; // t/total-head/definition
  place: string; // where it hangs on the rail
  asks: "definition" | "formula" | "name" | "function";
  name: string;
  url: string;
  says: string;
  formula: Node[];
  picture: string;
}

/** Reads the list of the page; its order is that of reading, so that what comes first is learnt first. */
export function readDeck(page: ParentNode): Card[] {
  const list: Card[] = [];
  for (const e of page.querySelectorAll<HTMLElement>(".deck [data-card]")) {
    const link = e.querySelector("a");
    const of = {
      name: link?.textContent ?? "", url: link?.getAttribute("href") ?? "", says: e.querySelector("dd")?.textContent ?? "",
      formula: Array.from(e.querySelectorAll(".formula > *")), picture: e.dataset.picture ?? "", place: e.dataset.place ?? "",
    };
    const id = e.dataset.card ?? "";
    const add = (asks: Card["asks"]) => list.push({ ...of, id: `${id}/${asks}`, asks });
    if (id.startsWith("p/")) {
      add("function");
      add("name");
    } else {
      add("definition");
      if (of.formula.length > 0) add("formula");
    }
  }
  return list;
}

/** A text without the name that it would give away; the words of a name may stand in another case. */
export function blanked(text: string, name: string): string {
  const words = name.replace(/\(.*?\)/g, "").trim().split(/\s+/).map((w) => w.replace(/[.*+?^$()|[\]\\{}]/g, "\\$&"));
  return words[0] === "" ? text : text.replace(new RegExp(`\\b${words.join("[\\s-]+")}(s|es)?\\b`, "gi"), "…");
}
