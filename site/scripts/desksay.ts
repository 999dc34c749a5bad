// The field for what the customer says. Enter reads it; a line break needs the shift key.
import { act, make, setText } from "./dom";
import { limits } from "./deskfile";
import { EngineError } from "./engine";
import { say } from "./words";

export class SayField {
  private readonly field = make("textarea", { id: "desk-say", rows: "2", maxlength: String(limits.text), placeholder: say("desk.say.like"), "aria-describedby": "desk-say-how", enterkeyhint: "go" });
  private readonly problem = make("p", { class: "news", role: "status" });

  constructor(place: Element, private readonly read: (text: string) => void) {
    const label = make("label", { for: "desk-say" }, say("desk.say"));
    const button = act(say("desk.read"), () => this.go());
    button.classList.add("first");
    const how = make("p", { id: "desk-say-how", class: "key" }, say("desk.say.how"));
    place.append(make("div", { class: "saybox" }, label, this.field, make("div", { class: "acts" }, button, how), this.problem));
    this.field.addEventListener("keydown", (e) => {
      if (e.key !== "Enter" || e.shiftKey || e.isComposing) return;
      e.preventDefault();
      this.go();
    });
  }

  focus(): void {
    this.field.focus();
  }

  clear(): void {
    this.field.value = "";
    setText(this.problem, "");
  }

  trouble(e: unknown): void {
    setText(this.problem, e instanceof EngineError ? say("engine." + e.kind, e.message) : say("desk.say.failed", String(e)));
  }

  private go(): void {
    const text = this.field.value.trim();
    if (text !== "") this.read(text);
    else this.field.focus();
  }
}
