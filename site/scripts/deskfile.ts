// An enquiry as a file: JSON of form 1, described in site/enquiry.schema.json. Reading either gives
// the whole enquiry or says why not; nothing is taken from a file that is not right throughout.
// This file knows neither the page nor the words, so that it can be tested by itself.

import { fewest, figureKeys, most, pointKeys, type Curve, type CurvePoint } from "./curve";

export const form = 1;

/** The facts about the caller that no formula needs, as plain text. */
export interface Head {
  customer: string;
  telephone: string;
  date: string;
  job: string;
}

/** Where a fact came from. */
export type From = "said" | "typed" | "link" | "example";

export interface FiledFact {
  term: string;
  text: string; // as typed
  from: From;
  words?: string; // the piece of the sentence, if it was said
}

export interface Sentence {
  text: string;
  dropped: string[]; // pieces that the caller did not want on the sheet
}

export interface Enquiry {
  head: Head;
  notes: Record<string, string>; // answers that are no numbers, by the key of their question
  sentences: Sentence[];
  facts: FiledFact[];
  choose: { term: string; estimate: string }[];
  want: string;
  curve?: Curve; // of the reader's own
}

/** Why a file was not taken. The kind names the words that tell the caller. */
export class FileError extends Error {
  constructor(readonly kind: "json" | "newer" | "form" | "book" | "damaged" | "term" | "large" | "curve", readonly detail = "") {
    super(`${kind} ${detail}`.trim());
  }
}

export function emptyEnquiry(want: string): Enquiry {
  return { head: { customer: "", telephone: "", date: "", job: "" }, notes: {}, sentences: [], facts: [], choose: [], want };
}

/** Longest texts and lists, as in the schema: a file beyond them was not written here. */
export const limits = { file: 1_000_000, line: 300, text: 2000, list: 400 };

const froms: readonly string[] = ["said", "typed", "link", "example"];
const id = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** The text of a file. */
export function writeFile(book: string, e: Enquiry): string {
  return JSON.stringify({ form, book, head: e.head, notes: e.notes, sentences: e.sentences, facts: e.facts, choose: e.choose, want: e.want, curve: e.curve }, null, 2) + "\n";
}

/** Reads a file of this book; known says which terms the book has. Throws a FileError. */
export function readFile(text: string, book: string, known: (term: string) => boolean): Enquiry {
  if (text.length > limits.file) throw new FileError("large");
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    throw new FileError("json");
  }
  const top = object(json, "", ["form", "book", "head", "notes", "sentences", "facts", "choose", "want"], checkForm, ["curve"]);
  if (typeof top.book !== "string" || !id.test(top.book)) throw new FileError("damaged", "book");
  if (top.book !== book) throw new FileError("book", top.book);
  const e: Enquiry = {
    head: readHead(top.head),
    notes: readNotes(top.notes),
    sentences: list(top.sentences, "sentences").map(readSentence),
    facts: list(top.facts, "facts").map(readFact),
    choose: list(top.choose, "choose").map(readChoice),
    want: term(top.want, "want"),
  };
  if (top.curve !== undefined) e.curve = readCurve(top.curve);
  once(e.facts, "facts");
  once(e.choose, "choose");
  for (const t of [...e.facts, ...e.choose].map((f) => f.term).concat(e.want)) if (!known(t)) throw new FileError("term", t);
  return e;
}

/** A newer form may look quite different, so it is told before anything else is looked at. */
function checkForm(o: Record<string, unknown>): void {
  if (typeof o.form !== "number" || !Number.isInteger(o.form)) throw new FileError("form");
  if (o.form > form) throw new FileError("newer", String(o.form));
  if (o.form !== form) throw new FileError("form");
}

function readHead(v: unknown): Head {
  const h = object(v, "head", ["customer", "telephone", "date", "job"]);
  return { customer: line(h.customer, "head.customer"), telephone: line(h.telephone, "head.telephone"), date: line(h.date, "head.date"), job: words(h.job, "head.job") };
}

function readNotes(v: unknown): Record<string, string> {
  if (typeof v !== "object" || v === null || Array.isArray(v)) throw new FileError("damaged", "notes");
  const entries = Object.entries(v as Record<string, unknown>);
  if (entries.length > limits.list) throw new FileError("damaged", "notes");
  for (const [key, text] of entries) {
    if (!id.test(key)) throw new FileError("damaged", "notes");
    line(text, `notes.${key}`);
  }
  return Object.fromEntries(entries) as Record<string, string>;
}

function readSentence(v: unknown, i: number): Sentence {
  const at = `sentences.${i}`;
  const s = object(v, at, ["text", "dropped"]);
  const text = words(s.text, `${at}.text`);
  if (text === "") throw new FileError("damaged", `${at}.text`);
  return { text, dropped: list(s.dropped, `${at}.dropped`).map((d) => words(d, `${at}.dropped`)) };
}

function readFact(v: unknown, i: number): FiledFact {
  const at = `facts.${i}`;
  const f = object(v, at, ["term", "text", "from"], undefined, ["words"]);
  const text = filled(f.text, `${at}.text`);
  if (typeof f.from !== "string" || !froms.includes(f.from)) throw new FileError("damaged", `${at}.from`);
  const fact: FiledFact = { term: term(f.term, `${at}.term`), text, from: f.from as From };
  if (f.words !== undefined) fact.words = words(f.words, `${at}.words`);
  return fact;
}

function readChoice(v: unknown, i: number): { term: string; estimate: string } {
  const c = object(v, `choose.${i}`, ["term", "estimate"]);
  const estimate = filled(c.estimate, `choose.${i}.estimate`);
  return { term: term(c.term, `choose.${i}.term`), estimate };
}

/** A curve as it was typed. Whether its numbers make one, the engine says. */
function readCurve(v: unknown): Curve {
  const c = object(v, "curve", ["name", "figures", "points"]);
  const figures = object(c.figures, "curve.figures", ["speed"], undefined, [...figureKeys]);
  for (const [key, text] of Object.entries(figures)) figure(text, `curve.figures.${key}`);
  const points = list(c.points, "curve.points");
  if (points.length < fewest || points.length > most) throw new FileError("damaged", "curve.points");
  points.forEach((p, i) => {
    const at = `curve.points.${i}`;
    for (const [key, text] of Object.entries(object(p, at, ["capacity", "head"], undefined, [...pointKeys]))) figure(text, `${at}.${key}`);
  });
  return { name: filled(c.name, "curve.name"), figures: figures as Curve["figures"], points: points as CurvePoint[] };
}

function filled(v: unknown, at: string): string {
  const text = line(v, at);
  if (!/\S/.test(text)) throw new FileError("damaged", at);
  return text;
}

/** A number of a curve: in a request a semicolon would part it. */
function figure(v: unknown, at: string): string {
  const text = filled(v, at);
  if (text.includes(";")) throw new FileError("damaged", at);
  return text;
}

/** An object with exactly these members. first looks at it before its members are counted. */
function object(v: unknown, at: string, needed: string[], first?: (o: Record<string, unknown>) => void, more: string[] = []): Record<string, unknown> {
  if (typeof v !== "object" || v === null || Array.isArray(v)) throw new FileError("damaged", at);
  const o = v as Record<string, unknown>;
  first?.(o);
  for (const key of needed) if (!Object.hasOwn(o, key)) throw new FileError("damaged", at === "" ? key : `${at}.${key}`);
  for (const key of Object.keys(o)) if (!needed.includes(key) && !more.includes(key)) throw new FileError("damaged", at === "" ? key : `${at}.${key}`);
  return o;
}

function list(v: unknown, at: string): unknown[] {
  if (!Array.isArray(v) || v.length > limits.list) throw new FileError("damaged", at);
  return v;
}

/** A text of one line: tabs and line ends would break a request to the engine. */
function line(v: unknown, at: string): string {
  if (typeof v !== "string" || [...v].length > limits.line || /[\t\r\n]/.test(v)) throw new FileError("damaged", at);
  return v;
}

function words(v: unknown, at: string): string {
  if (typeof v !== "string" || [...v].length > limits.text) throw new FileError("damaged", at);
  return v;
}

function term(v: unknown, at: string): string {
  if (typeof v !== "string" || !id.test(v) || v.length > limits.line) throw new FileError("damaged", at);
  return v;
}

/** A term stands once: of two values nobody could say which is meant. */
function once(facts: { term: string }[], at: string): void {
  const seen = new Set<string>();
  for (const f of facts) {
    if (seen.has(f.term)) throw new FileError("damaged", `${at}: ${f.term}`);
    seen.add(f.term);
  }
}
