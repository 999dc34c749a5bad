// Spaced repetition after SM-2, as P. A. Wozniak published it in “Optimization of learning” (master's
// thesis, University of Technology in Poznań, 1990) and again as an article of its own on 10 May 1998,
// of which a copy of the wording was read: the first interval is 1 day, the second 6 days, each later one the one before times the card's factor, rounded up; the factor begins
// at 2.5, is never below 1.3, and moves by 0.1 − (5 − q)(0.08 + (5 − q) 0.02) with the quality q of an
// answer, 0 to 5; below 3 the card begins anew with its factor as it was. The clock is the page's.

/** What is remembered of one card. Days are counted from 1970-01-01. */
export interface CardState {
  reps: number; // answers in a row with quality 3 or better
  interval: number; // days
  ease: number; // the factor
  due: number; // the day
  last: number; // the day
}

export const firstEase = 2.5;
export const leastEase = 1.3;
const most = 36_500; // days: a card need not come back after a century

/** The card after an answer of quality q on a day; null is a card never seen. */
export function review(card: CardState | null, q: number, today: number): CardState {
  const before = card ?? { reps: 0, interval: 0, ease: firstEase, due: today, last: today };
  if (q < 3) return { reps: 0, interval: 1, ease: before.ease, due: today + 1, last: today };
  const ease = Math.max(leastEase, before.ease + 0.1 - (5 - q) * (0.08 + (5 - q) * 0.02));
  const reps = before.reps + 1;
  const interval = reps === 1 ? 1 : reps === 2 ? 6 : Math.min(most, Math.ceil(before.interval * ease - 1e-9));
  return { reps, interval, ease: Math.round(ease * 1e4) / 1e4, due: today + interval, last: today };
}

/** Whether a card answered with this quality comes again in the same session: below 4, as published. */
export function comesAgain(q: number): boolean {
  return q < 4;
}

/** The cards of a session: what is due, the oldest debt first, then at most so many new ones, in their order. */
export function session(ids: readonly string[], cards: Readonly<Record<string, CardState>>, today: number, fresh: number): string[] {
  const due = ids.filter((id) => (cards[id]?.due ?? Infinity) <= today);
  due.sort((a, b) => (cards[a]?.due ?? 0) - (cards[b]?.due ?? 0));
  return [...due, ...ids.filter((id) => !cards[id]).slice(0, fresh)];
}
