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

test("intervals and factors as published", () => {
  // worked by hand from the formulas of the thesis: EF' = EF + 0.1 − (5 − q)(0.08 + (5 − q) 0.02)
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
  assert.deepEqual([0, 1, 2, 3, 4, 5].map(comesAgain), [true, true, true, true, false, false]);
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
