// The living parts of the pages of practice. A page that has none of them is left alone.
import { PracticeCards } from "./cards";
import { PracticeSheet } from "./exercise";
import { Kept } from "./kept";
import { PracticePick } from "./pick";
import { PracticeProgress } from "./progresspage";
import type { House } from "./sheet";

export function practise(house: House): void {
  if (!document.querySelector("practice-sheet, practice-pick, practice-cards, practice-progress")) return;
  if (!customElements.get("practice-sheet")) begin(house);
  for (const sheet of document.querySelectorAll<PracticeSheet>("practice-sheet")) void sheet.wake();
}

function begin(house: House): void {
  const book = document.documentElement.dataset.book ?? "";
  PracticeSheet.house = house;
  PracticeProgress.book = book;
  PracticeSheet.kept = PracticePick.kept = PracticeCards.kept = PracticeProgress.kept = new Kept(house.store, book);
  customElements.define("practice-sheet", PracticeSheet);
  customElements.define("practice-pick", PracticePick);
  customElements.define("practice-cards", PracticeCards);
  customElements.define("practice-progress", PracticeProgress);
}
