// How far somebody has come, as plain data: what was done how often, how well, when last, and when
// each card comes again. It is kept in the browser and travels as a file. Ids begin with their kind:
// e/ an exercise, t/ a term, p/ a part; those of cards end with what is asked.
import type { CardState } from "./sm2";

export const form = 1;

/** How often and how well one thing was done. */
export interface Tally {
  n: number; // how often
  good: number; // the sum of the shares that were right at the first answer and without help, 0 to n
  helped: number; // how often with help
  last: number; // the day, counted from 1970-01-01
}

export interface Progress {
  columnbowl: "progress";
  form: number;
  book: string;
  tallies: Record<string, Tally>;
  cards: Record<string, CardState>;
}

export type Fault = "damaged" | "newer" | "other-book";

/** Why a file was not taken; the kind names the words that tell it. */
export class ProgressError extends Error {
  constructor(readonly kind: Fault) {
    super(kind);
  }
}

export function nothingYet(book: string): Progress {
  return { columnbowl: "progress", form, book, tallies: {}, cards: {} };
}

/** Counts one thing done: good is the share that was right, 0 to 1; with help nothing counts as right. */
export function count(p: Progress, id: string, good: number, helped: boolean, today: number): void {
  const t = p.tallies[id] ?? { n: 0, good: 0, helped: 0, last: today };
  p.tallies[id] = { n: t.n + 1, good: round(t.good + (helped ? 0 : good)), helped: t.helped + (helped ? 1 : 0), last: today };
}

const round = (v: number): number => Math.round(v * 1e6) / 1e6;

/** Reads what was kept or saved; it throws a ProgressError, and takes a file as a whole or not at all. */
export function read(text: string, book: string): Progress {
  let p: Partial<Progress> | null;
  try {
    p = JSON.parse(text) as Partial<Progress> | null;
  } catch {
    throw new ProgressError("damaged");
  }
  if (typeof p !== "object" || p === null || p.columnbowl !== "progress" || !whole(p.form)) throw new ProgressError("damaged");
  if (p.form > form) throw new ProgressError("newer");
  if (typeof p.book !== "string" || !isTable(p.tallies, isTally) || !isTable(p.cards, isCard)) throw new ProgressError("damaged");
  if (p.book !== book) throw new ProgressError("other-book");
  return { columnbowl: "progress", form, book, tallies: { ...p.tallies }, cards: { ...p.cards } };
}

export function write(p: Progress): string {
  return JSON.stringify(p);
}

/**
 * Joins what two browsers know. Of each thing the later record stays, of two of one day the one with
 * more in it: so that the same file can be loaded twice.
 */
export function join(here: Progress, there: Progress): Progress {
  const out = nothingYet(here.book);
  out.tallies = joined(here.tallies, there.tallies, (a, b) => b.last - a.last || b.n - a.n);
  out.cards = joined(here.cards, there.cards, (a, b) => b.last - a.last || b.reps - a.reps);
  return out;
}

function joined<T>(here: Record<string, T>, there: Record<string, T>, later: (a: T, b: T) => number): Record<string, T> {
  const out = { ...here };
  for (const [id, b] of Object.entries(there)) {
    const a = out[id];
    if (a === undefined || later(a, b) > 0) out[id] = b;
  }
  return out;
}

function isTable<T>(v: unknown, is: (row: Partial<T>) => boolean): v is Record<string, T> {
  if (typeof v !== "object" || v === null || Array.isArray(v)) return false;
  return Object.entries(v).every(([id, row]) => /^[etp]\/[a-z0-9-]+(\/[a-z]+)?$/.test(id) && typeof row === "object" && row !== null && is(row as Partial<T>));
}

function isTally(t: Partial<Tally>): boolean {
  return whole(t.n) && whole(t.helped) && whole(t.last) && t.helped <= t.n && between(t.good, 0, t.n + 1e-6);
}

function isCard(c: Partial<CardState>): boolean {
  return whole(c.reps) && whole(c.interval) && whole(c.due) && whole(c.last) && between(c.ease, 1.3, 100);
}

const whole = (v: unknown): v is number => Number.isInteger(v) && (v as number) >= 0;
const between = (v: unknown, low: number, high: number): boolean => typeof v === "number" && v >= low && v <= high;

/** The day of the reader's calendar, counted from 1970-01-01. */
export function dayOf(now: Date): number {
  return Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / 86_400_000);
}

export function dateOf(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}

/** What the things of a list come to together: how many were done, and how well. */
export function together(p: Progress, ids: readonly string[]): { done: number; of: number; tally: Tally } {
  const tally = { n: 0, good: 0, helped: 0, last: 0 };
  let done = 0;
  for (const id of ids) {
    const t = p.tallies[id];
    if (!t) continue;
    done++;
    tally.n += t.n;
    tally.good += t.good;
    tally.helped += t.helped;
    tally.last = Math.max(tally.last, t.last);
  }
  return { done, of: ids.length, tally };
}
