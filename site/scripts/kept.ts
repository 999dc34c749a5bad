// Progress in the memory of the browser. What cannot be read is never written over, and a memory that
// does not answer is not taken for an empty one.
import { nothingYet, ProgressError, read, write, type Fault, type Progress } from "./progress";
import type { Store } from "./store";

const tries = 4; // a slow machine may need more than one patience of the store

export class Kept {
  /** Why nothing is kept: what stands there cannot be read, or the browser has no memory for the book. */
  fault: Fault | "no-memory" | null = null;
  private at: Progress;
  private queue: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly store: Store,
    private readonly book: string,
  ) {
    this.at = nothingYet(book);
  }

  /** What is known now; another page of the book may have written meanwhile. */
  now(): Promise<Progress> {
    return this.inTurn(() => this.fetch());
  }

  /** Changes what is known, and keeps it. */
  change(edit: (p: Progress) => Progress | void): Promise<Progress> {
    return this.inTurn(async () => {
      const p = await this.fetch();
      this.at = edit(p) ?? p;
      if (this.fault === null) await this.store.set("progress", write(this.at));
      return this.at;
    });
  }

  /** Forgets everything, also what could not be read. */
  clear(): Promise<Progress> {
    return this.inTurn(async () => {
      if (this.fault !== "no-memory") this.fault = null;
      this.at = nothingYet(this.book);
      await this.store.set("progress", write(this.at));
      return this.at;
    });
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const now = this.queue.then(work, work);
    this.queue = now.catch(() => undefined);
    return now;
  }

  private async fetch(): Promise<Progress> {
    for (let i = 0; i < tries; i++) {
      const text = await this.store.get("progress");
      if (text !== null) return this.take(text);
      // nothing there, or nobody answered: the memory is asked for what was just put into it
      await this.store.set("alive", "yes");
      if ((await this.store.get("alive")) !== "yes") continue;
      const again = await this.store.get("progress");
      this.fault = null;
      return again === null ? this.at : this.take(again);
    }
    this.fault = "no-memory";
    return this.at;
  }

  private take(text: string): Progress {
    try {
      this.at = read(text, this.book);
      this.fault = null;
    } catch (e) {
      this.fault = e instanceof ProgressError ? e.kind : "damaged";
    }
    return this.at;
  }
}
