// The list of a take-off: the nodes that shells/takeoff.html printed, made anew from a reply. What
// is the same as before stays in the page, so that only what changed is drawn and read out.
import { make, sign } from "./dom";
import type { PieceCaution, PieceLine, Pieces, PieceSum, PieceText } from "./protocol";
import { say } from "./words";

/** Brings a list up to date; root is the way to the folder of the edition. */
export function showPieces(listing: Element, pieces: Pieces, root: string): void {
  patch(listing, listed(pieces, root), 2);
}

/** Makes old like fresh. Down to a depth, children that are the same already are left alone. */
function patch(old: Element, fresh: Element, depth: number): void {
  const now = Array.from(old.childNodes);
  const next = Array.from(fresh.childNodes);
  next.forEach((node, i) => {
    const have = now[i];
    if (!have) old.append(node);
    else if (have.isEqualNode(node)) return;
    else if (depth > 1 && have instanceof HTMLTableElement && node instanceof HTMLTableElement && have.className === node.className) patch(have, node, depth - 1);
    else have.replaceWith(node);
  });
  for (const left of now.slice(next.length)) left.remove();
}

function listed(p: Pieces, root: string): Element {
  const list = make("div");
  const cautions = p.cautions ?? [];
  const refused = cautions.some((c) => c.refuses);
  list.append(...head(p, root), ...cautions.filter((c) => c.refuses).map(caution));
  if (!refused) {
    if (p.groups) list.append(table(p, root));
    list.append(...open(p), ...runs(p), ...big(p), ...totals(p, root));
    if (p.name) list.append(...asks(p, root));
  }
  list.append(...cautions.filter((c) => !c.refuses).map(caution));
  if (p.notes) list.append(make("ul", { class: "piecenotes" }, ...p.notes.map((n) => make("li", {}, n))));
  return list;
}

function head(p: Pieces, root: string): Element[] {
  if (!p.name) return asks(p, root);
  const line = make("p", { class: "pump" }, make("b", {}, p.name));
  if (p.asked) line.append(make("span", { "data-id": p.asked.id }, say("takeoff.asked") + " ", twofold(p.asked)));
  if (p.made) line.append(make("span", { "data-id": p.made.id }, say("takeoff.made") + " ", make("strong", {}, twofold(p.made))));
  if (p.deeper) line.append(make("span", { class: "key" }, say("takeoff.deeper") + " ", ...onefold(p.deeper)));
  if (p.shallower) line.append(make("span", { class: "key" }, say("takeoff.shallower") + " ", ...onefold(p.shallower)));
  line.querySelectorAll(".key").forEach((e) => e.normalize());
  return [line];
}

/** A value in both systems: the one in force stands large. */
function twofold(t: PieceText): Element {
  const q = make("span", { class: "q" }, make("span", { class: "us" }, t.us));
  if (t.si !== t.us) q.append(" ", make("span", { class: "si" }, t.si));
  return q;
}

/** A value in the system in force alone. */
function onefold(t: PieceText | undefined): (Node | string)[] {
  if (!t) return [];
  return t.us === t.si ? [t.us] : [make("span", { class: "only-us" }, t.us), make("span", { class: "only-si" }, t.si)];
}

function table(p: Pieces, root: string): Element {
  const column = (key: string, kind: string) => make("th", { scope: "col", ...(kind ? { class: kind } : {}) }, say(key));
  const heads = make("tr", {}, column("takeoff.count", "r"), column("takeoff.part", ""), column("takeoff.each", "r each"), column("takeoff.all", "r"), column("takeoff.mass", "r"));
  const all = make("table", { class: "piecetable" }, make("thead", {}, heads));
  for (const g of p.groups ?? []) {
    const parts = (g.parts ?? []).filter((line) => !line.with);
    if (parts.length === 0) continue;
    const body = make("tbody", { "data-group": g.id }, make("tr", { class: "name" }, make("th", { scope: "rowgroup", colspan: "5" }, g.name)));
    body.append(...parts.map((line) => piece(line, root)));
    if (g.mass) {
      body.append(make("tr", { class: "together" }, make("td"), make("td", {}, say("takeoff.together")), make("td", { class: "each" }), make("td"), make("td", { class: "r" }, ...onefold(g.mass))));
    }
    all.append(body);
  }
  return all;
}

function piece(line: PieceLine, root: string): Element {
  const count = line.count === undefined ? "?" : String(line.count) + (line.unsure ? "?" : "");
  const name = make("td", {}, make("a", { href: `${root}parts/${line.part}.html` }, line.name));
  if (line.label) name.append(" ", make("span", { class: "label" }, line.label));
  if (line.length) name.append(make("span", { class: "apiece" }, ` ${say("takeoff.apiece")} `, ...onefold(line.length)));
  if (line.wrong) name.append(" ", make("span", { class: "wrong" }, line.wrong));
  const number = (t: PieceText | undefined, kind = "r") => make("td", { class: kind }, ...onefold(t));
  return make("tr", { "data-part": line.part }, make("td", { class: "r" }, count), name, number(line.length, "r each"), number(line.totalLength), number(line.totalMass));
}

/** What a question mark in the list means, if there is one. */
function open(p: Pieces): Element[] {
  const lines = (p.groups ?? []).flatMap((g) => (g.parts ?? []).filter((line) => !line.with));
  return lines.some((line) => line.unsure || line.count === undefined) ? [make("p", { class: "key openmark" }, say("takeoff.open"))] : [];
}

function runs(p: Pieces): Element[] {
  if (!p.runs) return [];
  const lines = p.runs.map((r) => {
    const key = !r.length ? "takeoff.run.open" : r.agrees ? "takeoff.run.agrees" : "takeoff.run.differs";
    return make("li", { "data-run": r.name }, say(key, r.name), ...(r.length ? [" ", ...onefold(r.length)] : []));
  });
  for (const li of lines) li.normalize();
  return [make("ul", { class: "pieceruns" }, ...lines)];
}

function big(p: Pieces): Element[] {
  const largest = p.totals?.find((t) => t.large);
  if (!largest) return p.name ? [make("p", { class: "hookopen" }, say("takeoff.hook.open"))] : [];
  return [make("p", { class: "hook", "data-id": largest.id }, make("span", { class: "key" }, largest.name), make("strong", {}, twofold(largest)))];
}

function totals(p: Pieces, root: string): Element[] {
  if (!p.totals) return [];
  const row = (t: PieceSum) => make("tr", { "data-id": t.id }, make("th", { scope: "row" }, make("a", { href: `${root}terms/${t.id}.html` }, t.name)), make("td", { class: "r" }, twofold(t)));
  return [make("table", { class: "piecetotals" }, make("caption", {}, say("takeoff.totals")), make("tbody", {}, ...p.totals.map(row)))];
}

function asks(p: Pieces, root: string): Element[] {
  if (!p.asks) return [];
  const line = (a: { id: string; name: string; ask: string }) =>
    make("li", { "data-id": a.id }, make("a", { href: `${root}terms/${a.id}.html` }, a.name), ": ", make("span", { class: "ask" }, a.ask));
  return [make("div", { class: "pieceasks" }, make("h3", {}, say("takeoff.missing")), make("ul", {}, ...p.asks.map(line)))];
}

function caution(c: PieceCaution): Element {
  const kind = c.refuses ? " refuses" : c.danger ? " danger" : "";
  const word = say(c.refuses ? "takeoff.refused" : c.danger ? "danger" : "caution");
  const box = make("p", { class: "piececaution" + kind, "data-caution": c.id }, sign(c.danger || c.refuses ? "danger" : "caution"), make("span", {}, make("b", {}, word), " ", c.text));
  box.normalize();
  return box;
}
