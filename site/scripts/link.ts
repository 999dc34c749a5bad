// Facts as they travel in the fragment of an address:
//   #facts=static-level:140ft,drawdown:35ft&want=total-head
// A curve of the reader's own stands in it as curve=name:…,speed:…,point:…, and call=same says that
// the facts come back to the call from which they were carried.
// Everything outside [A-Za-z0-9._~-] is percent-encoded, the space between number and unit is dropped.

/** One fact: the id of a term and a text such as "140 ft", or the id of a choice. */
export interface Fact {
  term: string;
  text: string;
}

/** What a link said, and what of it could not be read. */
export interface Carried {
  facts: Fact[];
  choose: Fact[];
  want: string;
  bad: string[];
  curve?: Fact[]; // the parts of a curve of the reader's own
  same?: boolean; // from the same call
}

/** Reads a fragment; null if it carries no facts at all (an ordinary anchor). */
export function readFragment(fragment: string): Carried | null {
  const body = fragment.replace(/^#/, "");
  if (!/(^|&)(facts|want|choose|curve)=/.test(body)) return null;
  const out: Carried = { facts: [], choose: [], want: "", bad: [] };
  for (const part of body.split("&")) {
    const at = part.indexOf("=");
    const key = at < 0 ? part : part.slice(0, at);
    const value = at < 0 ? "" : part.slice(at + 1);
    if (key === "facts") readList(value, out.facts, out.bad);
    else if (key === "choose") readList(value, out.choose, out.bad);
    else if (key === "curve") readList(value, (out.curve ??= []), out.bad);
    else if (part === sameCall) out.same = true;
    else if (key === "want") out.want = decode(value) ?? bad(out, value);
    else if (part !== "") out.bad.push(part);
  }
  if (out.want !== "" && !isID(out.want)) out.want = bad(out, out.want);
  return out;
}

/** Reads "static-level:140ft,build:oil-lubricated", as the facts attribute of a sheet holds it. */
export function readList(list: string, into: Fact[], notRead: string[]): void {
  for (const item of list.split(",")) {
    if (item === "") continue;
    const at = item.indexOf(":");
    const term = at < 0 ? null : decode(item.slice(0, at));
    const text = at < 0 ? null : decode(item.slice(at + 1));
    if (term === null || text === null || text.trim() === "" || /[\t\n\r]/.test(text) || !isID(term)) notRead.push(item);
    else into.push({ term, text });
  }
}

const sameCall = "call=same";

/** What a link carries beside facts. */
export interface Beside {
  curve?: readonly Fact[] | undefined;
  same?: boolean;
}

/** Writes the fragment for these facts; "" if there is nothing to carry. */
export function writeFragment(facts: readonly Fact[], want: string, choose: readonly Fact[] = [], beside: Beside = {}): string {
  const parts: string[] = [];
  if (beside.same) parts.push(sameCall);
  if (facts.length > 0) parts.push("facts=" + writeList(facts));
  if (choose.length > 0) parts.push("choose=" + writeList(choose));
  if (beside.curve && beside.curve.length > 0) parts.push("curve=" + beside.curve.map((f) => `${encode(f.term)}:${encode(f.text)}`).join(","));
  if (want !== "") parts.push("want=" + encode(want));
  return parts.length > 0 ? "#" + parts.join("&") : "";
}

function writeList(facts: readonly Fact[]): string {
  return facts.map((f) => `${encode(f.term)}:${encode(joinUnit(f.text))}`).join(",");
}

/** Drops the last space of "140 ft", but not the one of "6 5/8" between whole number and fraction. */
export function joinUnit(text: string): string {
  return text.trim().replace(/[\s\u00a0]+(?=[^\s\u00a0\d][^\s\u00a0]*$)/, "");
}

/**
 * The text of a fact as typed into a field that shows SI units: the engine reads a bare number in
 * the field's US unit, so the unit shown beside the field is put behind it.
 */
export function withUnit(typed: string, unit: string): string {
  const bare = typed.replace(/\b(to|about)\b/g, " ");
  if (unit === "" || typed.trim() === "" || /[\p{L}°%'"′″]/u.test(bare.replace(/\d[eE][+-]?\d/g, "0"))) return typed;
  return `${typed.trim()} ${unit}`;
}

function isID(text: string): boolean {
  return /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text);
}

function bad(out: Carried, text: string): string {
  out.bad.push(text);
  return "";
}

function decode(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

function encode(text: string): string {
  return encodeURIComponent(text).replace(/[!'()*]/g, (c) => "%" + c.charCodeAt(0).toString(16).toUpperCase());
}
