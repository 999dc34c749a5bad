// The file and the link of an enquiry, without a page: the reader and the published schema agree on
// every damaged file, and nothing is ever taken in part.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import Ajv from "ajv/dist/2020.js";
import { project } from "./lib/edition.mjs";
import { script } from "./lib/scripts.mjs";

const { curveOf, partsOf } = await script("curve");
const { readFile, writeFile, FileError, emptyEnquiry } = await script("deskfile");
const { readFragment, writeFragment } = await script("link");
const { linkFault } = await script("desklink");

const schema = JSON.parse(readFileSync(join(project, "site", "enquiry.schema.json"), "utf8"));
const valid = new Ajv({ strict: true, allErrors: true }).compile(schema);

const terms = ["static-level", "drawdown", "capacity", "discharge-pressure", "build", "total-head", "column-loss"];
const known = (t) => terms.includes(t);
const book = "column-and-bowl";

function sample() {
  const e = emptyEnquiry("total-head");
  e.head = { customer: "Sedgewray Dairy", telephone: "555 0142", date: "2026-07-14", job: "new well\nbehind the barn" };
  e.notes = { use: "farm", outlet: "pressure tank" };
  e.sentences = [{ text: "well 180 ft static, draws down 40 at 400 gpm, milky", dropped: ["milky"] }];
  e.facts = [
    { term: "static-level", text: "180 ft", from: "said", words: "180 ft" },
    { term: "drawdown", text: "40 ft", from: "said", words: "40" },
    { term: "capacity", text: "400 gpm", from: "typed" },
    { term: "build", text: "oil-lubricated", from: "link" },
  ];
  e.choose = [{ term: "column-loss", estimate: "friction-chart" }];
  e.curve = {
    name: "Sheet 12, trimmed",
    figures: { speed: "1770 rpm", "shaft-diameter": "1 11/16 in" },
    points: [{ capacity: "0", head: "60" }, { capacity: "400 gpm", head: "52", efficiency: "78" }, { capacity: "600", head: "38", npsh: "14 ft" }],
  };
  return e;
}

/** Numbers that look random and are the same in every run. */
function dice(seed) {
  let s = seed;
  return (n) => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return Math.floor((s / 2 ** 32) * n);
  };
}

/** One of many ways in which a text gets damaged. */
function damage(text, roll) {
  const at = roll(text.length);
  const end = Math.min(text.length, at + 1 + roll(30));
  const other = '{}[]":,0-9aZ%&=#\\é\u0000 '[roll(24)] ?? "x";
  switch (roll(6)) {
    case 0: return text.slice(0, at);
    case 1: return text.slice(0, at) + text.slice(end);
    case 2: return text.slice(0, at) + other + text.slice(at + 1);
    case 3: return text.slice(0, end) + text.slice(at);
    case 4: return text.slice(0, at) + other + text.slice(at);
    default: return text.slice(at) + text.slice(0, at);
  }
}

/** Damage that leaves JSON: one value is replaced, taken away or put where none belongs. */
function misshape(json, roll) {
  const places = [];
  const walk = (v) => {
    if (typeof v !== "object" || v === null) return;
    for (const key of Object.keys(v)) {
      places.push([v, key]);
      walk(v[key]);
    }
  };
  walk(json);
  const [owner, key] = places[roll(places.length)];
  const strange = [null, 0, 2, -1.5, true, "", " ", "x\ty", "Not An Id", "no-such-term", [], {}, ["a"], { a: 1 }, "x".repeat(301), "y".repeat(2001)][roll(16)];
  if (roll(4) === 0) Array.isArray(owner) ? owner.splice(Number(key), 1) : delete owner[key];
  else if (roll(5) === 0 && !Array.isArray(owner)) owner["k" + roll(9)] = strange;
  else owner[key] = strange;
  return JSON.stringify(json);
}

/** What the schema cannot say: the book, its terms, and that a term stands once. */
function beyondSchema(json) {
  const all = [...json.facts, ...json.choose].map((f) => f.term).concat(json.want);
  const twice = (list) => new Set(list.map((f) => f.term)).size < list.length;
  return json.book !== book || !all.every(known) || twice(json.facts) || twice(json.choose);
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function checkOne(text) {
  const json = parsed(text);
  let got;
  try {
    got = readFile(text, book, known);
  } catch (e) {
    assert.ok(e instanceof FileError, `not an error for people: ${e.stack}`);
    assert.ok(json === undefined || !valid(json) || beyondSchema(json), `refused (${e.message}), but the schema takes it: ${text}`);
    return false;
  }
  assert.ok(valid(json), `taken, but the schema refuses it: ${JSON.stringify(valid.errors)} ${text}`);
  const { form, book: of, ...rest } = json;
  assert.equal(form, 1);
  assert.equal(of, book);
  assert.deepEqual({ ...got }, rest, "taken in part");
  return true;
}

test("what is written is read back whole, and is what the schema says", () => {
  const text = writeFile(book, sample());
  assert.ok(valid(JSON.parse(text)), JSON.stringify(valid.errors));
  assert.deepEqual(readFile(text, book, known), sample());
  assert.equal(writeFile(book, readFile(text, book, known)), text);
});

test("a newer form, another book, a strange term and no enquiry at all are told apart", () => {
  const text = writeFile(book, sample());
  const kind = (t) => {
    try {
      readFile(t, book, known);
    } catch (e) {
      return `${e.kind} ${e.detail}`.trim();
    }
    return "taken";
  };
  assert.equal(kind(text.replace('"form": 1', '"form": 2')), "newer 2");
  assert.equal(kind(JSON.stringify({ form: 7, anything: true })), "newer 7");
  assert.equal(kind(text.replace(book, "another-book")), "book another-book");
  assert.equal(kind(text.replace('"drawdown"', '"wish"')), "term wish");
  assert.equal(kind(text.replace('"drawdown"', '"static-level"')), "damaged facts: static-level");
  assert.equal(kind("{}"), "form");
  assert.equal(kind(text.slice(0, 200)), "json");
  assert.equal(kind(text.replace('"from": "typed"', '"from": "guessed"')), "damaged facts.2.from");
  assert.equal(kind(" ".repeat(1_000_001)), "large");
  assert.equal(kind("\ufeff" + text), "taken");
  assert.equal(kind(text.replace('"speed": "1770 rpm"', '"speed": "1770; 3500"')), "damaged curve.figures.speed");
  assert.equal(kind(text.replace('"head": "52"', '"depth": "52"')), "damaged curve.points.1.head");
});

const rounds = Number(process.env.FUZZ ?? 1); // `make fuzz` looks longer

const corpus = join(project, "testdata", "enquiries");
const files = readdirSync(corpus).filter((f) => f.endsWith(".json"));

test("each file of the corpus is taken, or refused for what its name says", () => {
  for (const file of files) {
    const text = readFileSync(join(corpus, file), "utf8");
    let kind = "taken";
    try {
      readFile(text, book, known);
    } catch (e) {
      kind = e.kind;
    }
    assert.equal(kind, file.split("-")[0].replace(".json", ""), file);
    checkOne(text);
  }
});

test("each link of the corpus is taken, or refused for what stands before it", () => {
  for (const line of readFileSync(join(corpus, "links.txt"), "utf8").split("\n")) {
    const [want, link] = line.split(" ");
    if (line === "" || line.startsWith("# ")) continue;
    const c = readFragment(link);
    assert.equal(c === null ? "anchor" : linkFault(c, known)?.kind ?? "taken", want, link);
  }
});

test("400 damaged files: never a crash, never a part", () => {
  const whole = writeFile(book, sample());
  const roll = dice(11);
  let refused = 0;
  for (let i = 0; i < 200; i++) if (!checkOne(damage(whole, roll))) refused++;
  for (const file of files) for (let i = 0; i < 20 * rounds; i++) checkOne(damage(readFileSync(join(corpus, file), "utf8"), roll));
  for (let i = 0; i < 200; i++) if (!checkOne(misshape(JSON.parse(whole), roll))) refused++;
  assert.ok(refused > 200 && refused < 400, `${refused} of 400 were refused: the damage is too tame or too wild`);
});

test("300 damaged links: never a crash, never a part; one that was cut short is never taken", () => {
  const { facts, choose, curve } = sample();
  const whole = writeFragment(facts, "total-head", choose.map((c) => ({ term: c.term, text: c.estimate })), { curve: partsOf(curve) });
  assert.deepEqual(curveOf(readFragment(whole).curve), curve, "the curve does not come back from the link");
  assert.equal(linkFault(readFragment(whole), known), null);
  for (let n = 0; n < whole.length; n++) {
    const c = readFragment(whole.slice(0, n));
    assert.ok(c === null || linkFault(c, known) !== null, `cut after ${n} signs it is taken: ${whole.slice(0, n)}`);
  }
  const roll = dice(5);
  for (let i = 0; i < 300 * rounds; i++) {
    const link = "#" + damage(whole.slice(1), roll);
    const c = readFragment(link);
    if (c === null || linkFault(c, known) !== null) continue;
    assert.ok([...c.facts, ...c.choose].every((f) => known(f.term) && f.text.trim() !== "") && known(c.want), link);
    assert.ok(c.curve === undefined || typeof curveOf(c.curve) === "object", link);
    const again = readFragment(writeFragment(c.facts, c.want, c.choose));
    const plain = (list) => list.map((f) => [f.term, f.text.replace(/[\s\u00a0]+/g, "")]);
    assert.deepEqual(plain(again.facts), plain(c.facts), link);
  }
});
