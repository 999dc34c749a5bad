// The places where a learner answers: a number with its unit, a choice, an order.
import { make } from "./dom";
import { letter, type Item } from "./exercisetalk";
import { say } from "./words";

/** A place for one answer. */
export interface Field {
  element: HTMLElement;
  /** The answer as the engine reads it, "" for none. */
  readonly value: string;
  focus(): void;
  /** Asks for another unit, where there is one. */
  inUnit(unit: string): void;
}

/** Makes the place for an item's answer. changed is told of every change, done when Enter says that it is finished. */
export function fieldFor(item: Item, name: string, says: string, changed: () => void, done: () => void): Field {
  switch (item.kind) {
    case "choice":
      return choiceField(item, name, says, changed);
    case "order":
      return new OrderField(item, says, changed);
    default:
      return numberField(item, says, changed, done);
  }
}

function numberField(item: Item, says: string, changed: () => void, done: () => void): Field {
  const input = make("input", { type: "text", autocomplete: "off", spellcheck: "false", autocapitalize: "off", "aria-describedby": says });
  const sign = make("i", {});
  const inUnit = (unit: string) => {
    sign.textContent = unit;
    input.setAttribute("aria-label", unit ? say("practice.answer.in", item.ask, unit) : item.ask);
  };
  inUnit(item.unit ?? "");
  input.addEventListener("input", changed);
  input.addEventListener("keydown", (e) => {
    if (e.key !== "Enter") return;
    e.preventDefault();
    done();
  });
  const element = make("div", { class: "field" }, make("p", { class: "line" }, input, item.unit ? sign : ""));
  return {
    element,
    inUnit,
    get value() {
      return input.value.trim();
    },
    focus: () => input.focus(),
  };
}

function choiceField(item: Item, name: string, says: string, changed: () => void): Field {
  const set = make("fieldset", { class: "field choice", "aria-describedby": says }, make("legend", { class: "off" }, item.ask));
  const inputs = (item.options ?? []).map((text, i) => {
    const input = make("input", { type: "radio", name, value: letter(i) });
    input.addEventListener("change", changed);
    set.append(make("label", {}, input, make("span", {}, make("b", {}, letter(i)), " ", text)));
    return input;
  });
  return {
    element: set,
    get value() {
      return inputs.find((i) => i.checked)?.value ?? "";
    },
    focus: () => (inputs.find((i) => i.checked) ?? inputs[0])?.focus(),
    inUnit: () => undefined,
  };
}

/** Things to put in order: each has two buttons, and the arrow keys on them do the same. */
class OrderField implements Field {
  readonly element: HTMLElement;
  private readonly list = make("ol", { class: "order", role: "list" });
  private readonly told = make("p", { class: "off", role: "status" });
  private stands = false;

  constructor(item: Item, says: string, private readonly changed: () => void) {
    (item.names ?? []).forEach((name, i) => this.list.append(this.row(letter(i), name)));
    const stand = make("button", { type: "button", class: "act", "aria-pressed": "false" }, say("practice.order.stands"));
    stand.addEventListener("click", () => {
      this.stands = true;
      stand.setAttribute("aria-pressed", "true");
      changed();
    });
    this.element = make("div", { class: "field", role: "group", "aria-label": item.ask, "aria-describedby": says }, this.list, stand, this.told);
  }

  /** An order that nobody has touched or confirmed is no answer. */
  get value(): string {
    return this.stands ? Array.from(this.list.children, (li) => (li as HTMLElement).dataset.letter ?? "").join("") : "";
  }

  focus(): void {
    this.list.querySelector("button")?.focus();
  }

  inUnit(): void {
    return; // an order has none
  }

  private row(sign: string, name: string): HTMLElement {
    const li = make("li", { "data-letter": sign }, make("b", {}, sign), " ", make("span", {}, name));
    for (const [step, arrow, key] of [[-1, "↑", "practice.order.up"], [1, "↓", "practice.order.down"]] as const) {
      const button = make("button", { type: "button", "aria-label": say(key, name) }, arrow);
      button.addEventListener("click", () => this.move(li, step, button));
      button.addEventListener("keydown", (e) => {
        if (e.key !== "ArrowUp" && e.key !== "ArrowDown") return;
        e.preventDefault();
        this.move(li, e.key === "ArrowUp" ? -1 : 1, button);
      });
      li.append(button);
    }
    return li;
  }

  private move(li: HTMLElement, step: number, button: HTMLElement): void {
    const other = step < 0 ? li.previousElementSibling : li.nextElementSibling;
    this.stands = true;
    if (other && step < 0) other.before(li);
    else if (other) other.after(li);
    button.focus(); // moving a piece takes the focus away
    const place = Array.from(this.list.children).indexOf(li) + 1;
    this.told.textContent = say("practice.order.at", li.querySelector("span")?.textContent ?? "", place, this.list.children.length);
    this.changed();
  }
}
