// The words between a page and hub.html.

export interface Ask {
  columnbowl: "ask";
  id: number;
  key: string;
  /** null removes, undefined only reads */
  value?: string | null;
}

export interface Told {
  columnbowl: "told";
  id: number;
  value: string | null;
}

/** The key under which the browser remembers one thing of one book. */
export function keyOf(book: string, name: string): string {
  return `columnbowl/${book}/1/${name}`;
}

export function isAsk(m: unknown): m is Ask {
  const a = m as Partial<Ask> | null;
  return typeof a === "object" && a !== null && a.columnbowl === "ask" && typeof a.id === "number"
    && typeof a.key === "string" && a.key.startsWith("columnbowl/")
    && (a.value === undefined || a.value === null || typeof a.value === "string");
}

export function isTold(m: unknown): m is Told {
  const t = m as Partial<Told> | null;
  return typeof t === "object" && t !== null && t.columnbowl === "told" && typeof t.id === "number";
}
