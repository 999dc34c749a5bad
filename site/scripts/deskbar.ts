// The buttons of an enquiry as a whole: new, example, file, link, print; and what is told of them.
import { act, make, setAttr, setText } from "./dom";
import { say } from "./words";

export interface BarEvents {
  fresh(): void;
  example(): void;
  text(): string; // of the file
  name(): { customer: string; date: string };
  load(text: string): void;
  link(): { link: string; note: string };
}

export class DeskBar {
  private readonly told = make("p", { class: "news", role: "status" });
  private readonly question = make("div", { class: "sure", role: "group", hidden: "" });
  private readonly linkLine = make("p", { class: "linkline", hidden: "" });
  private readonly back = make("div", { class: "acts" });
  private readonly file = make("input", { type: "file", accept: ".json,application/json", hidden: "", id: "desk-file" });
  private readonly acts = make("div", { class: "acts" });

  constructor(place: Element, private readonly on: BarEvents) {
    this.acts.append(
      act(say("desk.new"), () => on.fresh()),
      act(say("desk.example"), () => on.example()),
      act(say("desk.save"), () => this.save()),
      act(say("desk.load"), () => this.file.click()),
      act(say("desk.link"), () => void this.showLink()),
      act(say("desk.print"), () => window.print()),
    );
    this.file.addEventListener("change", () => void this.load());
    place.append(make("div", { class: "deskbar" }, this.acts, this.file, this.question, this.linkLine, this.told, this.back));
  }

  /** Says what became of a file or a link. */
  tell(text: string, wrong = false): void {
    setText(this.told, text);
    setAttr(this.told, "class", wrong ? "news wrong" : "news");
  }

  /** Asks before something is put away; only a yes goes on. */
  ask(text: string, then: () => void): void {
    const close = () => {
      this.question.hidden = true;
      this.acts.querySelector("button")?.focus();
    };
    const yes = act(say("desk.sure.yes"), () => {
      close();
      then();
    });
    this.question.replaceChildren(make("p", { id: "desk-sure" }, text), yes, act(say("desk.sure.no"), close));
    this.question.setAttribute("aria-labelledby", "desk-sure");
    this.question.hidden = false;
    yes.focus();
  }

  /** Offers the way back to an enquiry that was put away. */
  offer(words: string, then: () => void): void {
    this.back.replaceChildren(act(words, () => {
      this.back.replaceChildren();
      then();
    }));
  }

  private save(): void {
    const { customer, date } = this.on.name();
    const name = ["enquiry", customer, date].map((t) => t.toLowerCase().replace(/[^\p{L}\d]+/gu, "-").replace(/^-|-$/g, "")).filter(Boolean).join("-");
    const url = URL.createObjectURL(new Blob([this.on.text()], { type: "application/json" }));
    const link = make("a", { href: url, download: `${name}.json` });
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 10_000);
    this.tell(say("desk.saved", `${name}.json`));
  }

  private async load(): Promise<void> {
    const file = this.file.files?.[0];
    if (!file) return;
    const text = await file.text();
    this.file.value = ""; // the same file may be chosen again
    this.on.load(text);
  }

  private async showLink(): Promise<void> {
    const { link, note } = this.on.link();
    const input = make("input", { type: "text", readonly: "", id: "desk-link", value: link });
    this.linkLine.replaceChildren(make("label", { for: "desk-link" }, say("desk.link.is")), input);
    this.linkLine.hidden = false;
    input.focus();
    input.select();
    try {
      await navigator.clipboard.writeText(input.value);
      this.tell(`${say("desk.link.copied")} ${note}`.trim());
    } catch {
      this.tell(`${say("desk.link.copy")} ${note}`.trim());
    }
  }
}
