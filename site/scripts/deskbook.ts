// What the page of the desk was bound with: the terms of the book, and what is asked in which order.
import type { Choice } from "./row";

export interface Ask {
  term: string;
  ask: string;
  why: string;
}

interface Term {
  id: string;
  name: string;
  values?: Choice[];
}

export class DeskBook {
  readonly asks: readonly Ask[];
  private readonly terms: Map<string, Term>;

  constructor(place: HTMLElement) {
    this.asks = JSON.parse(place.dataset.ask ?? "[]") as Ask[];
    const terms = JSON.parse(place.dataset.terms ?? "[]") as Term[];
    this.terms = new Map(terms.map((t) => [t.id, t]));
  }

  has(term: string): boolean {
    return this.terms.has(term);
  }

  name(term: string): string {
    return this.terms.get(term)?.name ?? term;
  }

  /** A value as people read it: a choice by its name, a number as it was typed. */
  shown(term: string, text: string): string {
    return this.terms.get(term)?.values?.find((v) => v.id === text)?.name ?? text;
  }
}
