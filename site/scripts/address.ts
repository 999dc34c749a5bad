// The fragment of the address. In the folder edition it belongs to the page; in the edition of one
// file it begins with the page: #terms/total-head, and what belongs to the page stands behind a
// second mark: #terms/total-head#facts=…, or #chapters/losses:a-heading.

/** The root of a page in the edition of one file. */
export const inside = "#";

export interface Place {
  page: string; // "" for none
  anchor: string; // id of an element of the page
  fragment: string; // "#facts=…", as the folder edition would have it
}

/** Takes the fragment of an address in the edition of one file apart. */
export function placeOf(hash: string): Place {
  const text = hash.replace(/^#/, "");
  const at = text.search(/[#:]/);
  const page = (at < 0 ? text : text.slice(0, at)).replace(/\.html$/, "");
  const rest = at < 0 ? "" : text.slice(at + 1);
  if (text[at] === "#" && rest.includes("=")) return { page, anchor: "", fragment: "#" + rest };
  return { page, anchor: rest, fragment: rest === "" ? "" : "#" + rest };
}

export function isOneFile(): boolean {
  return document.documentElement.dataset.root === inside;
}

/** The address of a page of the edition, given from its root. */
export function pageURL(path: string): string {
  return (document.documentElement.dataset.root ?? "") + path;
}

/** What the address says to the page. */
export function fragmentNow(): string {
  return isOneFile() ? placeOf(location.hash).fragment : location.hash;
}

/** The address with another fragment of the page. */
export function addressWith(fragment: string): string {
  const file = location.href.split("#")[0] ?? "";
  return file + (isOneFile() ? inside + (document.documentElement.dataset.page ?? "") + fragment : fragment);
}

/** Keeps a fragment in the address; nothing is called by that. */
export function keepFragment(fragment: string): void {
  history.replaceState(null, "", addressWith(fragment));
}
