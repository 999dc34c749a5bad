// What is said between the page and the engine.
import type { Fact } from "./link";

export type State =
  | "given" | "follows" | "estimated" | "assumed" | "missing" | "waits"
  | "clash" | "not-applicable" | "outside" | "several";

export const states: readonly State[] = [
  "given", "follows", "estimated", "assumed", "missing", "waits", "clash", "not-applicable", "outside", "several",
];

/** A number as the engine formatted it, with its unit. */
export interface Num {
  n: string;
  u: string;
}

export interface Alternative {
  name: string;
  us: string;
  si: string;
  say: string;
  chosen: boolean;
}

export interface TermReply {
  id: string;
  state: State;
  us?: Num;
  si?: Num;
  work?: { us: string; si: string };
  relation?: string;
  note?: string;
  error?: string;
  choice?: string;
  waits?: string[]; // of a waiting term: ids of those it waits for
  alternatives?: Alternative[];
}

export interface Clash {
  term: string;
  text: string;
  textSi?: string;
  facts: string[];
}

export interface CautionReply {
  id: string;
  term: string;
  state: "fires" | "clear" | "unchecked";
  danger: boolean;
  hazard?: string; // the kind of danger it is a case of
  kind?: string; // the name of that hazard
  stop?: string; // the words of that hazard; the text is the same if it adds nothing
  text: string;
  lacks?: string[];
}

/** A term now and after a change; a value that is not known is left out. */
export interface Compared {
  id: string;
  name: string;
  before?: PieceText;
  after?: PieceText;
  move?: PieceText; // after less before, with its sign
}

/** What a change does. Without a fact to change, needs names the terms of which one is needed. */
export interface Compare {
  problem?: string;
  needs?: string[];
  changed?: Compared[];
  lines?: Compared[];
  clashes?: string[];
}

/** A line of the chain behind a number. */
export interface WhyLine extends PieceText {
  id: string;
  name: string;
  state: State;
  ranged?: boolean; // the line stands with middle values, its range behind it
}

/** How far the wanted result moves with one value alone, with the unit. */
export interface Hang {
  id: string;
  name: string;
  us: string;
  si: string;
  assumed?: boolean; // nobody gave the value: it is moved 5 % either way
}

/** Where inside the range of a fact something changes: the fact by its name, and the changes in one line. */
export interface Turn extends PieceText {
  id?: string; // of the term that changes; none where a pump is chosen
  name?: string;
  fact: string;
  by: string;
}

/** How a row of a table of choices or faults stands. */
export interface RowReply {
  id: string;
  state: "holds" | "not" | "unchecked";
  lacks?: string[];
}

export interface Question {
  id: string;
  name: string;
  ask: string;
}

/** A length or a mass in both systems of units. */
export interface PieceText {
  us: string;
  si: string;
}

export interface PieceSum extends PieceText {
  id: string;
  name: string;
  large?: boolean; // the weight that is printed large
}

export interface PieceLine {
  part: string;
  name: string;
  label?: string;
  with?: string;
  wrong?: string;
  unsure?: boolean;
  count?: number;
  length?: PieceText;
  totalLength?: PieceText;
  mass?: PieceText;
  totalMass?: PieceText;
}

export interface PieceCaution {
  id: string;
  text: string;
  danger?: boolean;
  refuses?: boolean;
}

/** The parts of the pump; while it is not known which pump, the question alone. */
export interface Pieces {
  build?: string;
  name?: string;
  asked?: PieceSum;
  made?: PieceSum;
  deeper?: PieceText;
  shallower?: PieceText;
  groups?: { id: string; name: string; mass?: PieceText; parts?: PieceLine[] }[];
  runs?: { name: string; length?: PieceText; agrees?: boolean }[];
  totals?: PieceSum[];
  cautions?: PieceCaution[];
  asks?: Question[];
  notes?: string[];
}

/** The parts as a table, for a file and for the clipboard. */
export interface Table {
  csv: string;
  tabs: string;
}

export interface ChoiceReason extends PieceText {
  kind: "decides" | "against" | "for" | "unchecked";
  term: string;
}

export interface ChoiceFamily {
  id: string;
  name: string;
  speed: string;
  demo?: string; // what stands with an invented family
  verdict: "fits" | "doubtful" | "out" | "unknown";
  stages?: string;
  cells: PieceText[];
  reasons?: ChoiceReason[];
}

/** One column with its shaft. */
export interface ColumnOption {
  column: string;
  tube?: string;
  shaft?: string;
  price?: string;
  total?: string;
  cells: PieceText[];
  reasons?: ChoiceReason[];
}

export interface ColumnReply {
  priceWrong?: string;
  yearsWrong?: string;
  columns: { id: string; name: string }[];
  options?: ColumnOption[];
}

/** The families ranked for the facts, and the curves of one of them. */
export interface ChoiceReply {
  drawn: string;
  at?: number; // thousandths of the axis
  capacity?: string;
  moved?: string;
  svg: string;
  columns: { id: string; name: string }[];
  families: ChoiceFamily[];
  column?: ColumnReply;
}

/** How a family of the request was read. */
export interface BowlReply {
  id: string;
  problems?: { item: number; column: number; text: string }[];
}

export interface Reply {
  want: string;
  count: Partial<Record<State, number>>;
  terms: TermReply[];
  clashes?: Clash[];
  cautions?: CautionReply[];
  missing?: { terms: Question[] }[];
  steps?: string[];
  stepsSi?: string[];
  compare?: Compare;
  why?: WhyLine[]; // from the given facts to the number asked about
  hangs?: Hang[]; // what the wanted result hangs on, the most first
  turns?: Turn[]; // of the terms that are shown
  pumps?: Turn[]; // where another pump would be chosen, if it was asked for
  strange?: string[]; // lines of the request that were not understood
  pictures?: string[]; // SVG, in the order of the request
  pieces?: Pieces;
  table?: Table;
  rows?: RowReply[];
  choice?: ChoiceReply;
  bowls?: BowlReply[];
}

/** A picture to be drawn: its name, form, system of units and the prefix of its ids. */
export interface Picture {
  name: string;
  form: string;
  units: string;
  prefix: string;
}

/** What a sheet asks. */
export interface Request {
  want: string;
  facts: readonly Fact[];
  choose: readonly Fact[];
  show: readonly string[];
  pictures?: readonly Picture[];
  pieces?: boolean; // the parts of the pump as well
  rows?: string | undefined; // the table whose rows are to be decided
  table?: "us" | "si"; // and as a table in these units
  lines?: readonly string[]; // further lines as they are: families of the reader
  shift?: readonly Fact[]; // facts to be moved by an amount, to compare
  next?: readonly Fact[]; // facts to be made the next larger of sizes divided by ";"
  why?: string; // the term whose chain is wanted
}

/** Writes a request as lines of fields; tabs and line ends inside a text become spaces. */
export function writeRequest(r: Request): string {
  const lines: string[] = [];
  const line = (...fields: string[]) => lines.push(fields.map((f) => f.replace(/[\t\r\n]+/g, " ")).join("\t"));
  if (r.want !== "") line("want", r.want);
  for (const f of r.facts) line("fact", f.term, f.text);
  for (const c of r.choose) line("choose", c.term, c.text);
  for (const id of r.show) line("show", id);
  for (const p of r.pictures ?? []) line("picture", p.name, p.form, p.units, p.prefix);
  for (const f of r.shift ?? []) line("shift", f.term, f.text);
  for (const f of r.next ?? []) line("next", f.term, f.text);
  if (r.why) line("why", r.why);
  if (r.pieces) line("pieces");
  if (r.rows) line("rows", r.rows);
  if (r.table) line("table", r.table);
  lines.push(...(r.lines ?? []));
  return lines.join("\n") + "\n";
}
