// The pictures of a page, drawn again by the engine whenever its numbers change. Only what can
// be seen is drawn: one system of units, and the form for the width of the page.
import type { Picture } from "./protocol";
import { unitsNow } from "./units";
import { say } from "./words";

/** A place for a drawing, and the drawing that was printed in it. */
interface Place {
  box: HTMLElement;
  printed: string;
}

export class Pictures {
  private readonly places: Place[];
  private changed = false;

  constructor(root: ParentNode) {
    this.places = Array.from(root.querySelectorAll<HTMLElement>("[data-picture]"), (box) => ({ box, printed: box.innerHTML }));
  }

  /** Whether the page has no place for a drawing. */
  get none(): boolean {
    return this.places.length === 0;
  }

  /** What to ask the engine for. */
  get wanted(): Picture[] {
    return this.shown.map(({ box }) => ({
      name: box.dataset.picture ?? "",
      form: box.dataset.form ?? "",
      units: unitsNow(),
      prefix: box.dataset.prefix ?? "",
    }));
  }

  /** Puts the drawings of a reply into their places, in the order of wanted. */
  show(drawings: readonly string[]): void {
    this.shown.forEach(({ box }, i) => {
      const drawing = drawings[i];
      if (drawing !== undefined) box.innerHTML = drawing;
    });
    this.tell(true);
  }

  /** Back to the drawings that were printed. */
  reset(): void {
    if (!this.changed) return;
    for (const p of this.places) p.box.innerHTML = p.printed;
    this.tell(false);
  }

  private get shown(): Place[] {
    return this.places.filter(({ box }) => box.offsetParent !== null && box.classList.contains("only-" + unitsNow()));
  }

  /** Says under each picture whose facts it shows. */
  private tell(changed: boolean): void {
    if (changed === this.changed) return;
    this.changed = changed;
    for (const caption of new Set(this.places.map((p) => p.box.closest("figure")?.querySelector("figcaption")))) {
      if (!caption) continue;
      caption.querySelector(".redrawn")?.remove();
      if (!changed) continue;
      const line = document.createElement("p");
      line.className = "key redrawn";
      line.textContent = say("picture.redrawn");
      caption.append(line);
    }
  }
}
