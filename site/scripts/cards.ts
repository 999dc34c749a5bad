// <practice-cards>: the printed list of terms and parts as cards, spaced by SM-2.
import { act, make, type Option } from "./dom";
import type { Kept } from "./kept";
import { blanked, readDeck, type Card } from "./deck";
import { count, dayOf, type Progress } from "./progress";
import { comesAgain, review, session } from "./sm2";
import { say } from "./words";

const freshCards = 10; // new ones in a session
const qualities = [1, 3, 4, 5]; // of the four buttons, of SM-2's 0 to 5

export class PracticeCards extends HTMLElement {
  static kept: Kept;
  private readonly desk = make("div", { class: "carddesk" });
  private readonly news = make("p", { class: "news", role: "status" });
  private readonly what = pick([["", "cards.what.all"], ["t", "cards.what.terms"], ["p", "cards.what.parts"]].map(([value, key]) => ({ value: value ?? "", text: say(key ?? "") })));
  private readonly where = pick([{ value: "", text: say("practice.pick.all") }, ...this.places()]);
  private deck: Card[] = [];
  private queue: string[] = [];
  private rated = new Set<string>();

  connectedCallback(): void {
    this.deck = readDeck(document);
    this.addEventListener("keydown", (e) => this.key(e));
    for (const choice of [this.what, this.where]) choice.addEventListener("change", () => void this.tell());
    const begin = act(say("cards.begin"), () => this.begin());
    begin.classList.add("first");
    this.replaceChildren(make("div", { class: "acts" }, make("label", {}, say("cards.what"), " ", this.what), make("label", {}, say("practice.pick.place"), " ", this.where), begin), this.news, this.desk);
    void this.tell();
  }

  private get ids(): string[] {
    const kind = this.what.value === "" ? "" : this.what.value + "/";
    return this.deck.filter((c) => c.id.startsWith(kind) && (this.where.value === "" || c.place === this.where.value)).map((c) => c.id);
  }

  private places(): Option[] {
    const list = JSON.parse(this.dataset.places ?? "[]") as { id: string; name: string }[] | null;
    return (list ?? []).map((p) => ({ value: p.id, text: p.name }));
  }

  private async tell(): Promise<void> {
    const p = await PracticeCards.kept.now();
    const { ids } = this;
    const today = dayOf(new Date());
    const due = session(ids, p.cards, today, 0).length;
    this.news.textContent = say("cards.due", due, ids.filter((id) => !p.cards[id]).length, ids.length) + fault();
  }

  private async begin(): Promise<void> {
    const p = await PracticeCards.kept.now();
    this.queue = session(this.ids, p.cards, dayOf(new Date()), freshCards);
    this.rated.clear();
    this.lists(false);
    this.ask();
  }

  private ask(): void {
    const card = this.deck.find((c) => c.id === this.queue[0]);
    if (!card) {
      this.desk.replaceChildren();
      this.lists(true);
      void this.tell().then(() => (this.news.textContent = say(this.rated.size ? "cards.end" : "cards.none", this.rated.size) + " " + (this.news.textContent ?? "")));
      return;
    }
    this.news.textContent = say("cards.left", this.queue.length);
    const turn = act(say("cards.turn"), () => this.turn(card));
    turn.classList.add("first");
    this.desk.replaceChildren(make("section", { class: "flash", "aria-live": "polite" }, make("p", { class: "key" }, say("cards.ask." + card.asks)), ...front(card)),
      make("div", { class: "acts" }, turn, act(say("cards.stop"), () => this.stop())));
    turn.focus();
  }

  private turn(card: Card): void {
    const face = this.desk.querySelector<HTMLElement>(".flash");
    if (!face) return;
    const under = make("div", { class: "back" }, ...back(card));
    face.append(under);
    const buttons = qualities.map((q, i) => act(say("cards.rate." + q, i + 1), () => this.rate(card, q)));
    this.desk.querySelector(".acts")?.replaceChildren(make("span", { class: "key" }, say("cards.rate")), ...buttons, act(say("cards.stop"), () => this.stop()));
    // not on a button: a second press of Enter must not judge a card that was not read yet
    face.tabIndex = -1;
    face.focus({ preventScroll: true });
    under.scrollIntoView({ block: "nearest" });
  }

  private rate(card: Card, q: number): void {
    this.queue.shift();
    if (comesAgain(q)) this.queue.push(card.id);
    if (!this.rated.has(card.id)) {
      this.rated.add(card.id);
      const today = dayOf(new Date());
      void PracticeCards.kept.change((p: Progress) => {
        p.cards[card.id] = review(p.cards[card.id] ?? null, q, today);
        count(p, card.id.slice(0, card.id.lastIndexOf("/")), q >= 3 ? 1 : 0, false, today);
      });
    }
    this.ask();
  }

  private stop(): void {
    this.queue = [];
    this.ask();
    this.what.focus();
  }

  /** 1 to 4 judge a card that lies open. */
  private key(e: KeyboardEvent): void {
    const card = this.deck.find((c) => c.id === this.queue[0]);
    const q = qualities[Number(e.key) - 1];
    if (!card || q === undefined || !this.desk.querySelector(".back")) return;
    e.preventDefault();
    this.rate(card, q);
  }

  /** The printed lists would tell the answers. */
  private lists(shown: boolean): void {
    for (const e of document.querySelectorAll<HTMLElement>(".deck")) e.hidden = !shown;
  }
}

/** Says so when nothing can be kept. */
function fault(): string {
  const kind = PracticeCards.kept.fault;
  return kind === null ? "" : " " + say("progress.kept." + kind);
}

function pick(options: Option[]): HTMLSelectElement {
  return make("select", {}, ...options.map((o) => make("option", { value: o.value }, o.text)));
}

function front(card: Card): Node[] {
  if (card.asks !== "name") return [make("p", { class: "front" }, card.name)];
  const says = make("p", { class: "front" }, blanked(card.says, card.name));
  return card.picture === "" ? [says] : [says, picture(card)];
}

function picture(card: Card): HTMLElement {
  return make("img", { src: card.picture, alt: say("cards.picture") });
}

function back(card: Card): Node[] {
  const link = make("a", { href: card.url }, card.name);
  switch (card.asks) {
    case "formula":
      return [make("div", { class: "formula" }, ...card.formula.map((m) => m.cloneNode(true))), make("p", {}, link)];
    case "name":
      return [make("p", {}, link), make("p", {}, card.says)];
    case "function":
      return [make("p", {}, card.says), ...(card.picture === "" ? [] : [picture(card)]), make("p", {}, link)];
    default:
      return [make("p", {}, card.says), make("p", {}, link)];
  }
}
