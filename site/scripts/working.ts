// The working column of a row: the question of a blank, the numbers put in, words beside them, and
// the estimates to choose from.
import { make, setText } from "./dom";
import type { Alternative, TermReply } from "./protocol";
import { say } from "./words";

/** The same words in both systems of units. */
export interface Both {
  us: string;
  si: string;
}

export class Working {
  private drawn = "";
  private readonly text = make("span");
  private readonly alternatives: HTMLFieldSetElement;
  private names = "";

  constructor(
    private readonly place: Element,
    private readonly group: string,
    term: string,
    private readonly pick: (estimate: string) => void,
  ) {
    this.alternatives = make("fieldset", { class: "alts" }, make("legend", { class: "off" }, say("sheet.estimates", term)));
    const printed = Array.from(place.childNodes).filter((n) => !(n instanceof Element && n.classList.contains("alts")));
    this.text.append(...printed);
    place.replaceChildren(this.text);
  }

  show(reply: TermReply, ask: string, clash: Both): void {
    const key = JSON.stringify([reply.state, reply.work, reply.note, reply.relation, ask, clash]);
    if (key !== this.drawn) {
      this.drawn = key;
      this.text.replaceChildren(...pieces(reply, ask, clash));
    }
    this.showAlternatives(reply.state === "estimated" || reply.state === "several" ? reply.alternatives ?? [] : []);
    // an empty column takes no line of its own on a phone
    const empty = this.text.textContent?.trim() === "" && !this.alternatives.isConnected;
    if (empty) this.place.replaceChildren();
    else if (!this.text.isConnected) this.place.prepend(this.text);
  }

  private showAlternatives(list: Alternative[]): void {
    const names = list.map((a) => a.name).join("\n");
    if (list.length < 2) {
      this.alternatives.remove();
      return;
    }
    if (names !== this.names) {
      this.names = names;
      for (const label of this.alternatives.querySelectorAll("label")) label.remove();
      for (const a of list) this.alternatives.append(this.radio(a));
    }
    const labels = this.alternatives.querySelectorAll("label");
    list.forEach((a, i) => labels[i] && update(labels[i], a));
    if (!this.alternatives.isConnected) this.place.append(this.alternatives);
  }

  private radio(a: Alternative): HTMLLabelElement {
    const input = make("input", { type: "radio", name: this.group, value: a.name });
    input.addEventListener("change", () => this.pick(a.name));
    return make("label", {}, input, make("span", { class: "says" }), both(a.us, a.si));
  }
}

function update(label: Element, a: Alternative): void {
  label.classList.toggle("chosen", a.chosen);
  const input = label.querySelector("input");
  if (input) input.checked = a.chosen;
  const says = label.querySelector(".says");
  if (says) setText(says, a.say || a.name);
  label.querySelector(".q")?.replaceWith(both(a.us, a.si));
}

function both(us: string, si: string): HTMLElement {
  const q = make("span", { class: "q" }, make("span", { class: "us" }, us));
  if (si !== "" && si !== us) q.append(" ", make("span", { class: "si" }, si));
  return q;
}

function pieces(reply: TermReply, ask: string, clash: Both): (Node | string)[] {
  const out: (Node | string)[] = [];
  if (reply.state === "missing" && ask !== "") out.push(make("span", { class: "ask" }, ask), " ");
  if (clash.us !== "") out.push(make("b", { class: "clashes" }, ...scoped(clash)), " ");
  const work = reply.work ?? { us: "", si: "" };
  if (work.us !== "") out.push(make("span", { class: "work" }, ...scoped(work)), " ");
  if (reply.note && reply.note !== ask) out.push(make("span", { class: "note" }, reply.note), " ");
  if (reply.relation) out.push(make("span", { class: "why" }, reply.relation));
  return out;
}

/** Words of which the style sheet shows those in the units in force. */
function scoped({ us, si }: Both): (Node | string)[] {
  if (si === "" || si === us) return [us];
  return [make("span", { class: "only-us" }, us), make("span", { class: "only-si" }, si)];
}
