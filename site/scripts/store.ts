// What the browser remembers of a book: units, theme, the facts of the last sheet.
import { inside } from "./address";
import { isTold, keyOf, type Ask } from "./hubtalk";

const patience = 500; // ms; a hub that says nothing until then is not waited for
const opening = 5000; // ms; nor one that has not come until then, however slow the machine

export class Store {
  private readonly frame: Promise<Window | null>;
  private readonly waiting = new Map<number, (value: string | null) => void>();
  private next = 1;

  /** The hub is opened when the turn comes: it takes a tenth of a second, in which nothing else happens. */
  constructor(
    private readonly root: string,
    private readonly book: string,
    private readonly turn: Promise<void>,
  ) {
    addEventListener("message", (event) => this.hear(event));
    this.frame = root === inside ? Promise.resolve(null) : turn.then(() => openHub(root));
  }

  get(name: string): Promise<string | null> {
    return this.ask(name);
  }

  async set(name: string, value: string): Promise<void> {
    remember(this.book, name, value);
    await this.ask(name, value);
  }

  private async ask(name: string, value?: string): Promise<string | null> {
    if (this.root === inside) return ownMemory(keyOf(this.book, name), value);
    await this.turn;
    const hub = await Promise.race([this.frame, later(opening)]);
    if (hub === null) return null;
    const message: Ask = { columnbowl: "ask", id: this.next++, key: keyOf(this.book, name) };
    if (value !== undefined) message.value = value;
    return new Promise((resolve) => {
      this.waiting.set(message.id, resolve);
      hub.postMessage(message, location.protocol === "file:" ? "*" : location.origin);
      setTimeout(() => this.settle(message.id, null), patience);
    });
  }

  private hear(event: MessageEvent): void {
    if (isTold(event.data)) this.settle(event.data.id, event.data.value);
  }

  private settle(id: number, value: string | null): void {
    this.waiting.get(id)?.(value);
    this.waiting.delete(id);
  }
}

/** One file has one store, and needs nobody to ask. */
function ownMemory(key: string, value?: string): string | null {
  try {
    if (value !== undefined) localStorage.setItem(key, value);
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** Nothing, after a while. */
function later(ms: number): Promise<null> {
  return new Promise((resolve) => setTimeout(() => resolve(null), ms));
}

/** Opens the hidden page. It may come late, on a slow machine: each question waits for it anew. */
function openHub(root: string): Promise<Window | null> {
  return new Promise((resolve) => {
    const frame = document.createElement("iframe");
    frame.hidden = true;
    frame.tabIndex = -1;
    frame.setAttribute("aria-hidden", "true");
    frame.src = root + "hub.html";
    frame.onload = () => resolve(frame.contentWindow);
    document.body.append(frame);
  });
}

/**
 * The hub answers after the first paint; what is needed before it (theme, units) also stays with
 * the tab, which goes from page to page.
 */
export function remember(book: string, name: string, value: string): void {
  try {
    sessionStorage.setItem(keyOf(book, name), value);
  } catch {
    // no storage: nothing is remembered
  }
}

export function recall(book: string, name: string): string | null {
  try {
    return sessionStorage.getItem(keyOf(book, name));
  } catch {
    return null;
  }
}
