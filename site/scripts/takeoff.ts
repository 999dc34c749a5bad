// The page that counts the pieces of a pump: its list follows the sheet, and can be copied as a
// table or saved as a file. Both texts come from the engine, the same that the command writes.
import { act, make, setText } from "./dom";
import type { Reply } from "./protocol";
import { showPieces } from "./pieces";
import { answered, type FactSheet } from "./sheet";
import { unitsNow } from "./units";
import { say } from "./words";

export class TakeOff {
  private readonly status = make("p", { class: "news", role: "status" });
  private build = "";

  constructor(
    private readonly section: Element,
    private readonly sheet: FactSheet,
    root: string,
  ) {
    const listing = section.querySelector(".listing");
    sheet.addEventListener(answered, (event) => {
      const { pieces } = (event as CustomEvent<Reply>).detail;
      if (!pieces || !listing) return;
      this.build = pieces.build ?? "";
      showPieces(listing, pieces, root);
    });
    const copy = act(say("takeoff.copy"), () => this.copy());
    const save = act(say("takeoff.save"), () => this.save());
    section.querySelector("header")?.append(make("div", { class: "acts" }, copy, save), this.status);
  }

  private async copy(): Promise<void> {
    const text = (await this.sheet.table(unitsNow()))?.tabs;
    if (!text) return this.tell(say("takeoff.nothing"));
    this.section.querySelector(".copytext")?.remove();
    try {
      await navigator.clipboard.writeText(text);
      this.tell(say("takeoff.copied"));
    } catch {
      this.offer(text);
    }
  }

  /** Where a page may not reach the clipboard the text stands there, selected, to be copied by hand. */
  private offer(text: string): void {
    const box = make("textarea", { class: "copytext", readonly: "", rows: "6", spellcheck: "false", "aria-label": say("takeoff.copytext") });
    box.value = text;
    this.status.after(box);
    box.focus();
    box.select();
    this.tell(say("takeoff.selected"));
  }

  private async save(): Promise<void> {
    const text = (await this.sheet.table(unitsNow()))?.csv;
    if (!text) return this.tell(say("takeoff.nothing"));
    const name = `take-off-${this.build}.csv`;
    const url = URL.createObjectURL(new Blob([text], { type: "text/csv;charset=utf-8" }));
    make("a", { href: url, download: name }).click();
    setTimeout(() => URL.revokeObjectURL(url), 60_000); // a browser may read it a while later
    this.tell(say("takeoff.saved", name));
  }

  private tell(text: string): void {
    setText(this.status, text);
  }
}
