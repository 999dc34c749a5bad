// The words of the interface. Every text that a script shows comes through here.
import words from "../words.json";

const table: Record<string, string> = words;

/** The words under a key, with {0}, {1} … replaced. A missing key shows itself, so that it is seen. */
export function say(key: string, ...args: (string | number)[]): string {
  const text = table[key] ?? key;
  return text.replace(/\{(\d)\}/g, (whole, at: string) => String(args[Number(at)] ?? whole));
}

/** The words that the engine puts into pictures, as lines of a request. */
export const pictureWords = Object.entries(table)
  .filter(([key]) => key.startsWith("picture."))
  .map(([key, text]) => `word\t${key}\t${text}\n`)
  .join("");

/** The word for one or for many. */
export function many(key: string, n: number): string {
  return say(n === 1 ? `${key}.one` : `${key}.many`, n);
}
