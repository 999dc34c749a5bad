// The head of an enquiry: who calls, and the answers that are no numbers. Plain fields; the engine
// is not asked about them.
import { make } from "./dom";
import type { Head } from "./deskfile";
import { limits } from "./deskfile";
import { say } from "./words";

/** The questions whose answers are words, in the order of asking. Their words are desk.note.KEY. */
export const noteKeys = ["use", "pump-now", "plates", "well-tag", "plumb", "gas", "outlet", "control", "supply", "flood", "wires", "hatch", "clauses", "installer", "needed"] as const;

const headKeys = ["customer", "telephone", "date", "job"] as const;

export class HeadFields {
  private readonly heads = new Map<string, HTMLInputElement | HTMLTextAreaElement>();
  private readonly notes = new Map<string, HTMLInputElement>();
  private strange: Record<string, string> = {}; // answers of a file to questions that are not asked here: kept

  constructor(headPlace: Element, notePlace: Element, changed: () => void) {
    const box = make("fieldset", { class: "deskhead" }, make("legend", { class: "off" }, say("desk.head")));
    for (const key of headKeys) box.append(this.field(key));
    headPlace.append(box);
    const notes = make("details", { class: "desknotes" }, make("summary", {}, say("desk.notes")));
    const list = make("div", { class: "notes" });
    for (const key of noteKeys) {
      const input = make("input", { type: "text", id: `desk-note-${key}`, autocomplete: "off", maxlength: String(limits.line) });
      this.notes.set(key, input);
      list.append(make("p", {}, make("label", { for: input.id }, say("desk.note." + key)), input));
    }
    notes.append(list);
    notePlace.append(notes);
    for (const e of [box, notes]) e.addEventListener("input", changed);
  }

  private field(key: (typeof headKeys)[number]): HTMLElement {
    const id = `desk-${key}`;
    const field = key === "job"
      ? make("textarea", { id, rows: "1", maxlength: String(limits.text) })
      : make("input", { type: key === "telephone" ? "tel" : "text", id, autocomplete: "off", maxlength: String(limits.line) });
    this.heads.set(key, field);
    return make("p", { class: key }, make("label", { for: id }, say("desk.head." + key)), field);
  }

  get head(): Head {
    const of = (key: string) => this.heads.get(key)?.value.trim() ?? "";
    return { customer: of("customer"), telephone: of("telephone"), date: of("date"), job: of("job") };
  }

  /** The answers that were given, by the key of their question. */
  get answers(): Record<string, string> {
    const given = Array.from(this.notes, ([key, e]) => [key, e.value.trim()]).filter(([, text]) => text !== "");
    return { ...this.strange, ...Object.fromEntries(given) };
  }

  /** The date of the enquiry, if nobody wrote one: today. */
  dateIfNone(today: Date): void {
    const field = this.heads.get("date");
    if (!field || field.value !== "") return;
    const two = (n: number) => String(n).padStart(2, "0");
    field.value = `${today.getFullYear()}-${two(today.getMonth() + 1)}-${two(today.getDate())}`;
  }

  set(head: Head, answers: Record<string, string>): void {
    for (const key of headKeys) {
      const field = this.heads.get(key);
      if (field) field.value = head[key];
    }
    for (const [key, field] of this.notes) field.value = answers[key] ?? "";
    this.strange = Object.fromEntries(Object.entries(answers).filter(([key]) => !this.notes.has(key)));
  }
}
