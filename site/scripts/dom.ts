// Small helpers that touch the page only where something differs.

export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K, attributes: Record<string, string> = {}, ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const e = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) e.setAttribute(name, value);
  e.append(...children);
  return e;
}

export function setText(e: Element, text: string): void {
  if (e.textContent !== text) e.textContent = text;
}

/** Sets an attribute, or removes it when the value is null. */
export function setAttr(e: Element, name: string, value: string | null): void {
  if (value === null) e.removeAttribute(name);
  else if (e.getAttribute(name) !== value) e.setAttribute(name, value);
}

/** A button with words. */
export function act(words: string, then: () => unknown): HTMLButtonElement {
  const button = make("button", { type: "button", class: "act" }, words);
  button.addEventListener("click", () => void then());
  return button;
}

export function sign(name: string): SVGSVGElement {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  svg.setAttribute("class", "sign");
  svg.setAttribute("aria-hidden", "true");
  const use = document.createElementNS("http://www.w3.org/2000/svg", "use");
  use.setAttribute("href", `#sign-${name}`);
  svg.append(use);
  return svg;
}

export interface Option {
  value: string;
  text: string;
}

/** A switch: radio buttons drawn as words on a line. */
export function makeSwitch(name: string, legend: string, hideLegend: boolean, options: Option[], now: string, change: (value: string) => void): HTMLFieldSetElement {
  const set = make("fieldset", { class: "switch" }, make("legend", hideLegend ? { class: "off" } : {}, legend));
  for (const o of options) {
    const input = make("input", { type: "radio", name, value: o.value });
    input.checked = o.value === now;
    input.addEventListener("change", () => change(o.value));
    set.append(make("label", {}, input, make("span", {}, o.text)));
  }
  return set;
}

/** Puts the mark of a switch under a value without telling anybody. */
export function setSwitch(set: HTMLFieldSetElement, value: string): void {
  for (const input of set.querySelectorAll("input")) input.checked = input.value === value;
}
