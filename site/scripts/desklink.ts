// A link to an enquiry. It carries facts as every sheet does, and always what the sheet looks for
// at its end: a link that a mail program has cut short has lost that, and is not taken in part.
import { curveOf } from "./curve";
import type { Carried } from "./link";

/** A longer link does not come through every mail program whole. */
export const longest = 2000;

export interface LinkFault {
  kind: "bad" | "unknown" | "twice" | "cut" | "curve";
  detail: string;
}

/** Why a link is not taken; null if it is whole. known says which terms the book has. */
export function linkFault(c: Carried, known: (term: string) => boolean): LinkFault | null {
  const bad = c.bad[0];
  if (bad !== undefined) return { kind: "bad", detail: bad };
  for (const list of [c.facts, c.choose]) {
    const seen = new Set<string>();
    for (const { term } of list) {
      if (!known(term)) return { kind: "unknown", detail: term };
      if (seen.has(term)) return { kind: "twice", detail: term };
      seen.add(term);
    }
  }
  if (c.want === "" || !known(c.want)) return { kind: "cut", detail: c.want };
  const curve = c.curve ? curveOf(c.curve) : null;
  return typeof curve === "string" ? { kind: "curve", detail: curve } : null;
}
