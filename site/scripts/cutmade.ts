// How the pump of a page is made: the list of choices that the page prints becomes switches, and
// the same switches stand in the tools of every drawing that changes with them. One pump is drawn
// on all sheets, so all of them share what was chosen.
import { act, make, setText, type Option } from "./dom";
import { say } from "./words";

/** One choice, as the page prints it. */
interface Choice {
  id: string; // the usual option
  title: string;
  sheets: string[];
  idle: string; // option of another choice that leaves nothing to choose here
  options: Option[];
}

/** Radio buttons of one choice somewhere on the page. */
interface Switch {
  choice: Choice;
  box: HTMLElement;
  inputs: HTMLInputElement[];
}

export class PumpMade extends HTMLElement {
  private choices: Choice[] = [];
  private readonly chosen = new Map<string, string>(); // only what is not usual
  private readonly switches: Switch[] = [];
  private readonly told: HTMLElement[] = [];
  private readonly backs: HTMLButtonElement[] = [];
  private readonly hear: (() => void)[] = [];

  connectedCallback(): void {
    if (this.choices.length > 0) return;
    for (const box of this.querySelectorAll<HTMLElement>("[data-choice]")) {
      const choice = read(box);
      this.choices.push(choice);
      this.listed(box, choice);
    }
    this.querySelector(".choices")?.after(this.foot(true));
  }

  /** What is asked of the engine: the options that are not the usual ones. */
  get options(): string[] {
    return [...this.chosen.values()];
  }

  /** The same in words, of all choices or of those that change a sheet; "" if all are usual. */
  words(sheet?: string): string {
    const list = this.choices.filter((c) => this.chosen.has(c.id) && (sheet === undefined || c.sheets.includes(sheet)));
    return list.map((c) => say("cut.made.one", c.title.toLowerCase(), c.options.find((o) => o.value === this.chosen.get(c.id))?.text ?? "")).join("; ");
  }

  /** Calls back when another pump is to be drawn. */
  heard(then: () => void): void {
    this.hear.push(then);
  }

  /** The page of a part that comes with an option, "" if there is none. */
  pageOf(part: string): string {
    return this.querySelector(`a[data-part="${CSS.escape(part)}"]`)?.getAttribute("href") ?? "";
  }

  /** The choices that change a sheet, as a tool of its drawing; null if there are none. */
  tool(sheet: string): HTMLElement | null {
    const list = this.choices.filter((c) => c.sheets.includes(sheet));
    if (list.length === 0) return null;
    const root = make("details", { class: "cutmade" }, make("summary", {}, say("cut.made")));
    for (const choice of list) root.append(this.radios(choice, sheet));
    root.append(this.foot(false)); // over the drawing the same stands in sight
    return root;
  }

  private radios(choice: Choice, where: string): HTMLElement {
    const set = make("fieldset", { class: "switch" }, make("legend", {}, choice.title));
    const inputs = choice.options.map((o) => {
      const input = this.radio(choice, o.value, where);
      set.append(make("label", {}, input, make("span", {}, o.text)));
      return input;
    });
    this.switches.push({ choice, box: set, inputs });
    return set;
  }

  /** The lines of the printed list become radio buttons. */
  private listed(box: HTMLElement, choice: Choice): void {
    box.setAttribute("role", "radiogroup");
    box.setAttribute("aria-labelledby", `made-${choice.id}`);
    const inputs: HTMLInputElement[] = [];
    for (const li of box.querySelectorAll<HTMLElement>("[data-option]")) {
      const words = li.querySelector(".w");
      if (!words) continue;
      const input = this.radio(choice, li.dataset.option ?? "", "list");
      const label = make("label", {}, input);
      words.replaceWith(label);
      label.append(" ", words);
      inputs.push(input);
    }
    this.switches.push({ choice, box, inputs });
  }

  private radio(choice: Choice, value: string, where: string): HTMLInputElement {
    const input = make("input", { type: "radio", name: `made-${where}-${choice.id}`, value });
    input.checked = value === choice.id;
    input.addEventListener("change", () => this.choose(choice, value));
    return input;
  }

  /** What is drawn now, told to those who do not see it, and the way back. */
  private foot(seen: boolean): HTMLElement {
    const told = make("p", { class: seen ? "key" : "off", "aria-live": "polite" });
    const back = act(say("cut.made.back"), () => {
      const box = back.closest("details");
      this.chosen.clear();
      this.tell(told);
      box?.querySelector("summary")?.focus(); // the button goes
    });
    back.hidden = true;
    this.told.push(told);
    this.backs.push(back);
    return make("div", { class: "acts" }, told, back);
  }

  private choose(choice: Choice, value: string): void {
    if (value === choice.id) this.chosen.delete(choice.id);
    else this.chosen.set(choice.id, value);
    const active = document.activeElement?.closest("details")?.querySelector<HTMLElement>("[aria-live]");
    this.tell(active ?? null);
  }

  /** Shows everywhere what was chosen; only the place where it was chosen says so aloud. */
  private tell(aloud: HTMLElement | null): void {
    for (const s of this.switches) {
      const now = this.chosen.get(s.choice.id) ?? s.choice.id;
      const idle = s.choice.idle !== "" && [...this.chosen.values()].includes(s.choice.idle);
      for (const input of s.inputs) {
        input.checked = input.value === now;
        input.disabled = idle;
      }
      s.box.classList.toggle("idle", idle);
    }
    const words = this.words();
    const text = words === "" ? say("cut.made.usual") : say("cut.made.now", words);
    for (const p of this.told) {
      p.setAttribute("aria-live", p === aloud ? "polite" : "off");
      setText(p, p === aloud || words !== "" ? text : "");
    }
    for (const b of this.backs) b.hidden = words === "";
    for (const then of this.hear) then();
  }
}

function read(box: HTMLElement): Choice {
  return {
    id: box.dataset.choice ?? "",
    title: box.querySelector(".key")?.textContent ?? "",
    sheets: (box.dataset.sheets ?? "").split(" "),
    idle: box.dataset.idle ?? "",
    options: Array.from(box.querySelectorAll<HTMLElement>("[data-option]"), (li) => ({ value: li.dataset.option ?? "", text: li.querySelector(".w")?.textContent ?? "" })),
  };
}
