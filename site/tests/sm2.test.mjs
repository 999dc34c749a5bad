// The spacing of cards and the reading of progress files, without a page.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import typescript from "typescript";

const scripts = join(dirname(fileURLToPath(import.meta.url)), "..", "scripts");

/** Loads a module of the site that imports nothing but types. */
async function load(name) {
  const { outputText } = typescript.transpileModule(readFileSync(join(scripts, name), "utf8"), { compilerOptions: { module: "esnext", target: "es2022" } });
  return import("data:text/javascript;base64," + Buffer.from(outputText).toString("base64"));
}

const { review, comesAgain, session } = await load("sm2.ts");
const { count, dateOf, dayOf, join: joined, nothingYet, read, write } = await load("progress.ts");
const { blanked } = await load("deck.ts");

// The source of these checks: P. A. Wozniak, “Optimization of learning”, master's thesis, University of
// Technology in Poznań, 1990, the steps of the algorithm SM-2 as he published them again on 10 May 1998
// (read in a copy of that text). Each number below follows from one of the steps, named beside it.
test("each step as published", () => {
  const at = (ease, reps, interval) => ({ reps, interval, ease, due: 0, last: 0 });
  const fresh = review(null, 4, 0);
  assert.equal(fresh.ease, 2.5, "all items begin with a factor of 2.5, and an answer of 4 leaves it there");
  assert.deepEqual([fresh.interval, review(fresh, 4, 1).interval], [1, 6], "the first interval is 1 day, the second 6");
  assert.equal(review(at(2.5, 2, 6), 4, 0).interval, 15, "each later interval is the one before times the factor");
  assert.equal(review(at(1.3, 3, 7), 4, 0).interval, 10, "a fraction is rounded up: 7 × 1.3 = 9.1");
  const moves = [[5, 0.1], [4, 0], [3, -0.14]]; // 0.1 − (5 − q)(0.08 + (5 − q) 0.02)
  for (const [q, move] of moves) assert.equal(review(at(2, 4, 20), q, 0).ease, Math.round((2 + move) * 100) / 100);
  assert.equal(review(at(1.35, 4, 20), 3, 0).ease, 1.3, "a factor below 1.3 is made 1.3");
  for (const q of [0, 1, 2]) {
    const again = review(at(2.18, 7, 300), q, 0);
    assert.deepEqual([again.ease, again.interval, review(again, 4, 1).interval, review(review(again, 4, 1), 4, 2).interval], [2.18, 1, 1, 6],
      "below 3 an item begins from the beginning, its factor as it was: intervals of 1 and 6 days again");
  }
  assert.deepEqual([0, 1, 2, 3, 4, 5].map(comesAgain), [true, true, true, true, false, false], "what scored below 4 is repeated the same day until it scores 4");
});

test("a path through the steps, worked by hand", () => {
  const path = [[5, 1, 2.6], [5, 6, 2.7], [4, 17, 2.7], [3, 44, 2.56], [5, 118, 2.66]];
  let card = null;
  let day = 100;
  for (const [q, interval, ease] of path) {
    card = review(card, q, day);
    assert.deepEqual([card.interval, card.ease, card.due], [interval, ease, day + interval]);
    day = card.due;
  }
  const forgotten = review(card, 2, day);
  assert.deepEqual([forgotten.reps, forgotten.interval, forgotten.ease], [0, 1, 2.66], "a forgotten card begins anew and keeps its factor");
  assert.equal(review(forgotten, 4, day + 1).interval, 1);
});

test("the factor does not fall below 1.3, and intervals only grow", () => {
  let card = null;
  for (let i = 0; i < 200; i++) {
    const next = review(card, 3, 0);
    assert.ok(next.ease >= 1.3 && next.interval >= (card?.interval ?? 0) && Number.isInteger(next.interval));
    card = next;
  }
  assert.equal(card.ease, 1.3);
});

test("a session takes what is due, the oldest first, then some new ones in their order", () => {
  const cards = { b: review(null, 5, 10), c: review(null, 5, 8), d: review(null, 5, 30) };
  assert.deepEqual(session(["a", "b", "c", "d", "e", "f"], cards, 20, 2), ["c", "b", "a", "e"]);
});

test("files of progress are taken whole or not at all", () => {
  const p = nothingYet("book");
  count(p, "t/total-head", 0.5, false, 20);
  count(p, "t/total-head", 1, true, 21);
  p.cards["p/head-shaft/name"] = review(null, 4, 21);
  assert.deepEqual(p.tallies["t/total-head"], { n: 2, good: 0.5, helped: 1, last: 21 });
  assert.deepEqual(read(write(p), "book"), p);
  const text = write(p);
  for (let cut = 0; cut < text.length; cut++) assert.throws(() => read(text.slice(0, cut), "book"), { kind: "damaged" });
  const bad = (edit) => {
    const q = JSON.parse(text);
    edit(q);
    return JSON.stringify(q);
  };
  const faults = [(q) => (q.tallies["t/total-head"].n = -1), (q) => (q.tallies["t/total-head"].good = "1"), (q) => (q.tallies["x/y"] = q.tallies["t/total-head"]),
    (q) => (q.cards = []), (q) => (q.cards["p/head-shaft/name"].ease = 1), (q) => delete q.tallies, (q) => (q.form = "1"), (q) => (q.tallies["t/total-head"].helped = 3)];
  for (const f of faults) assert.throws(() => read(bad(f), "book"), { kind: "damaged" }, f.toString());
  assert.throws(() => read(bad((q) => (q.form = 2)), "book"), { kind: "newer" });
  assert.throws(() => read(text, "other"), { kind: "other-book" });
});

test("two browsers are joined: the later record stays, and twice is as once", () => {
  const a = nothingYet("book");
  const b = nothingYet("book");
  count(a, "t/lift", 1, false, 20);
  count(b, "t/lift", 0, false, 19);
  count(b, "t/setting", 1, false, 19);
  const both = joined(a, b);
  assert.deepEqual(both.tallies, { "t/lift": a.tallies["t/lift"], "t/setting": b.tallies["t/setting"] });
  assert.deepEqual(joined(both, b), both);
  assert.deepEqual(joined(b, a).tallies, both.tallies);
});

test("days are those of the reader's calendar", () => {
  assert.equal(dateOf(dayOf(new Date(2026, 2, 2, 0, 5))), "2026-03-02");
  assert.equal(dateOf(dayOf(new Date(2026, 2, 2, 23, 55))), "2026-03-02");
});

test("a text on a card does not hold the name it asks for", () => {
  assert.equal(blanked("The head shaft is the topmost shaft. Head shafts turn.", "Head shaft"), "The … is the topmost shaft. … turn.");
  assert.equal(blanked("A line-shaft coupling joins", "Line shaft coupling"), "A … joins");
  assert.equal(blanked("Nothing here", "Bowl (cast)"), "Nothing here");
});
