// A curve of the reader's own at the desk: it belongs to the enquiry, goes with every request, and the
// engine judges it before an enquiry with it is taken. It is typed on the page of the bowls.
import { lineOf, ownFamily, type Curve } from "./curve";
import { act, make } from "./dom";
import type { Engine } from "./engine";
import type { FactSheet } from "./sheet";
import { say } from "./words";

export class DeskCurve {
  private readonly box = make("div", { class: "deskcurve" });
  private held: Curve | undefined;

  constructor(place: Element, private readonly sheet: FactSheet, private readonly changed: () => void) {
    place.append(this.box);
  }

  get curve(): Curve | undefined {
    return this.held;
  }

  get lines(): string[] {
    return this.held ? [lineOf(this.held)] : [];
  }

  /** Takes a curve, or none, without a word to the desk: it belongs to an enquiry that is put in place. */
  set(curve: Curve | undefined): void {
    if (curve === undefined && this.held === undefined) return;
    this.held = curve;
    this.sheet.bring(this.lines);
    this.draw();
  }

  private draw(): void {
    const c = this.held;
    if (!c) return this.box.replaceChildren();
    const text = say("desk.curve", c.name, c.figures.speed, c.points.length);
    this.box.replaceChildren(make("p", {}, text), act(say("desk.curve.off"), () => {
      this.set(undefined);
      this.box.replaceChildren(act(say("desk.curve.back"), () => {
        this.set(c);
        this.changed();
      }));
      this.changed();
    }));
  }
}

/** What the engine has against a curve; "" if it takes it. */
export function faultOf(engine: Engine, curve: Curve): string {
  const reply = engine.ask({ want: "", facts: [], choose: [], show: [], lines: [lineOf(curve)] });
  const told = reply.bowls?.find((b) => b.id === ownFamily);
  return told?.problems?.map((p) => p.text).join(" ") ?? (told ? "" : curve.name);
}
