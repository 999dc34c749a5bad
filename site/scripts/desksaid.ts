// What a customer said, as the engine reads it, against what stands on the sheet. No page here:
// the state of each piece follows from the facts, so that a line typed over shows here as well.

export interface Candidate {
  term: string;
  name: string;
  value: string;
  reason?: string;
}

export interface Reading {
  from: number;
  to: number;
  text: string;
  state: "sure" | "ask" | "unknown";
  message?: string;
  candidates?: Candidate[];
}

export interface AskReply {
  readings?: Reading[];
  error?: string;
}

/**
 * Where a piece stands: on the sheet; ready to go there; to be asked; against a fact on the sheet;
 * against what follows from the sheet; not understood; not wanted.
 */
export type Standing = "on" | "ready" | "open" | "differs" | "clashes" | "unknown" | "dropped";

/** What the sheet can tell about a value. */
export interface Known {
  text(term: string): string; // of the fact on the sheet, "" if none
  same(term: string, a: string, b: string): boolean;
  clash(c: Candidate): string; // what the fact would contradict, "" if nothing
  words(term: string): string; // the piece by which the fact came there, "" if it was not said
}

export class Said {
  readonly dropped = new Set<string>();

  constructor(
    readonly text: string,
    readonly readings: readonly Reading[],
    dropped: readonly string[] = [],
  ) {
    for (const d of dropped) this.dropped.add(d);
  }

  /**
   * The candidate of a reading that is on the sheet. What was asked may have been many things, and one
   * of the same value may be there for another reason: it counts only if this piece brought it.
   */
  onSheet(r: Reading, known: Known): Candidate | undefined {
    const there = (c: Candidate) => known.text(c.term) !== "" && known.same(c.term, known.text(c.term), c.value);
    if (r.state === "sure") return r.candidates?.find(there);
    return r.candidates?.find((c) => there(c) && known.words(c.term) === r.text && !this.claimed(r, c));
  }

  /** Whether another piece of the sentence surely means the term. */
  private claimed(r: Reading, c: Candidate): boolean {
    return this.readings.some((o) => o !== r && o.state === "sure" && o.candidates?.[0]?.term === c.term);
  }

  standing(r: Reading, known: Known): Standing {
    if (this.dropped.has(r.text)) return "dropped";
    const first = r.candidates?.[0];
    if (r.state === "unknown" || first === undefined) return "unknown";
    if (r.state === "sure" && this.onSheet(r, known)) return "on";
    if (r.state === "ask") return this.onSheet(r, known) ? "on" : "open";
    if (known.text(first.term) !== "") return "differs";
    return known.clash(first) === "" ? "ready" : "clashes";
  }
}

/** A sentence cut at its pieces: what was understood, and what lies between. */
export function cut(text: string, readings: readonly Reading[]): { text: string; reading: Reading | null }[] {
  const out: { text: string; reading: Reading | null }[] = [];
  let at = 0;
  for (const r of [...readings].sort((a, b) => a.from - b.from)) {
    if (r.from < at) continue;
    if (r.from > at) out.push({ text: text.slice(at, r.from), reading: null });
    out.push({ text: text.slice(r.from, r.to), reading: r });
    at = r.to;
  }
  if (at < text.length) out.push({ text: text.slice(at), reading: null });
  return out;
}
