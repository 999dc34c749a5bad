// The enquiry on paper: one or two sheets that an engineer can price from. It is written anew with
// every change and shown by the printer only.
import type { DeskBook } from "./deskbook";
import type { Open } from "./deskasks";
import type { Enquiry, FiledFact } from "./deskfile";
import { figureKeys, pointKeys, type Curve } from "./curve";
import { noteKeys } from "./deskhead";
import { make } from "./dom";
import { hangItems, mostPrinted, turnItems } from "./hangs";
import type { Reply, TermReply } from "./protocol";
import type { Row } from "./row";
import { unitsNow } from "./units";
import { sentence, told } from "./warnings";
import { say } from "./words";

export interface Printed {
  enquiry: Enquiry;
  lines: readonly Row[];
  reply: Reply | null;
  open: readonly Open[];
  limits: readonly string[]; // terms of the duty beside the wanted one
}

export function drawPrint(place: Element, book: DeskBook, p: Printed): void {
  place.replaceChildren(
    head(p),
    section("desk.print.duty", duty(book, p)),
    section("desk.print.known", known(book, p), "cols2"),
    section("desk.print.derived", derived(book, p), "cols2"),
    ...(p.reply?.hangs ? [section("desk.print.hangs", [make("ul", { role: "list" }, ...hangItems(p.reply, mostPrinted))])] : []),
    ...(p.reply?.turns ? [section("sheet.turns", [make("ul", { role: "list" }, ...turnItems(p.reply.turns))])] : []),
    ...(p.enquiry.curve ? [section("desk.print.curve", curve(p.enquiry.curve), "curve")] : []),
    section("desk.print.cautions", cautions(p)),
    section("desk.print.open", blanks(book, p), "cols2"),
    ...(p.enquiry.sentences.length > 0 ? [section("desk.print.said", p.enquiry.sentences.map((s) => make("blockquote", {}, s.text)))] : []),
  );
}

function section(key: string, content: HTMLElement[], kind = ""): HTMLElement {
  return make("section", kind === "" ? {} : { class: kind }, make("h2", {}, say(key)), ...content);
}

function head(p: Printed): HTMLElement {
  const { customer, telephone, date, job } = p.enquiry.head;
  const cell = (key: string, text: string) => make("div", { class: key }, make("dt", {}, say("desk.head." + key)), make("dd", {}, text));
  const cells = [cell("customer", customer), cell("telephone", telephone), cell("date", date), cell("job", job)];
  for (const key of noteKeys) {
    const text = p.enquiry.notes[key];
    if (text) cells.push(make("div", { class: "note" }, make("dt", {}, say("desk.note." + key)), make("dd", {}, text)));
  }
  return make("header", {}, make("h1", {}, say("desk.sheet")), make("dl", {}, ...cells));
}

/** The value of a line with its unit, and the other unit behind it. */
export function valueOf(r: TermReply, choice: (id: string) => string): { large: string; small: string } {
  if (r.choice !== undefined) return { large: choice(r.choice), small: "" };
  const text = (n: TermReply["us"]) => (n && n.n !== "" ? `${n.n} ${n.u}`.trim() : "");
  const [large, small] = unitsNow() === "si" ? [text(r.si), text(r.us)] : [text(r.us), text(r.si)];
  return { large, small: small === large ? "" : small };
}

/** The value in the other unit, if there is one. */
function other(small: string): (Node | string)[] {
  return small === "" ? [] : [" ", make("span", { class: "o" }, `(${small})`)];
}

function duty(book: DeskBook, p: Printed): HTMLElement[] {
  const ids = [p.enquiry.want, ...p.limits];
  const cells = ids.flatMap((id) => {
    const row = p.lines.find((r) => r.term === id);
    if (!row) return [];
    const { large, small } = valueOf(row.reply, (c) => c);
    const value = large === "" ? say("desk.duty.none") : small === "" ? large : `${large} (${small})`;
    return [make("div", { class: id === p.enquiry.want ? "sum" : "" }, make("dt", {}, book.name(id)), make("dd", {}, value))];
  });
  return [make("dl", { class: "duty" }, ...cells)];
}

const givenStates = ["given", "clash"];
const derivedStates = ["follows", "estimated", "assumed", "outside", "several"];

function known(book: DeskBook, p: Printed): HTMLElement[] {
  const facts = new Map(p.enquiry.facts.map((f) => [f.term, f]));
  const items: HTMLElement[] = [];
  for (const row of p.lines) {
    const f = facts.get(row.term);
    if (!f) continue;
    facts.delete(row.term);
    const { large, small } = valueOf(row.reply, (c) => book.shown(row.term, c));
    const broken = large === "" || !givenStates.includes(row.reply.state);
    items.push(fact(book.name(row.term), broken ? f.text : large, small, f, row.reply));
  }
  for (const f of facts.values()) items.push(fact(book.name(f.term), book.shown(f.term, f.text), "", f, null));
  if (items.length === 0) return [make("p", {}, say("desk.print.none"))];
  return [make("ul", { role: "list", class: "known" }, ...items)];
}

function fact(name: string, large: string, small: string, f: FiledFact, r: TermReply | null): HTMLElement {
  const li = make("li", {}, make("span", {}, name), " ", make("b", {}, large), ...other(small));
  const from = f.from === "said" ? say("desk.from.said", f.words ?? f.text) : say("desk.from." + f.from);
  li.append(" ", make("i", {}, from));
  if (r?.error) li.append(" ", make("strong", {}, r.error));
  else if (r?.state === "clash") li.append(" ", make("strong", {}, say("state.clash")));
  return li;
}

function derived(book: DeskBook, p: Printed): HTMLElement[] {
  const given = new Set(p.enquiry.facts.map((f) => f.term));
  const rows = p.lines.filter((r) => derivedStates.includes(r.reply.state) || (r.reply.state === "clash" && !given.has(r.term)));
  if (rows.length === 0) return [make("p", {}, say("desk.print.none"))];
  const items = rows.map((row) => {
    const r = row.reply;
    const { large, small } = valueOf(r, (c) => book.shown(row.term, c));
    const how = [working(r, book.name(row.term)), r.state === "follows" ? "" : say("state." + r.state), r.note ?? ""].filter(Boolean).join("; ");
    return make("li", {}, book.name(row.term), ...(large === "" ? [] : [" ", make("b", {}, large)]), ...other(small), make("span", { class: "how" }, how.startsWith("=") || how === "" ? ` ${how}` : `; ${how}`));
  });
  return [make("ul", { role: "list" }, ...items)];
}

/** The relation of a line and its numbers. The name of the line stands before it already. */
function working(r: TermReply, name: string): string {
  const work = (unitsNow() === "si" ? r.work?.si : r.work?.us) ?? "";
  const relation = r.relation ?? "";
  const own = `${name.toLowerCase()} = `;
  const short = relation.startsWith(own) ? relation.slice(own.length - 2) : relation;
  return short && work ? `${short} = ${work}` : short || work;
}

/** The curve of the reader's own as it was typed: an engineer reads it against the sheet it came from. */
function curve(c: Curve): HTMLElement[] {
  const labels: Record<(typeof figureKeys)[number], string> = { speed: "speed", "outside-diameter": "outside", "shaft-diameter": "shaft", "thrust-factor": "thrust", "impeller-weight": "weight" };
  const figures = figureKeys.flatMap((k) => (c.figures[k] === undefined ? [] : [`${say("bowls.own." + labels[k])}: ${c.figures[k]}`]));
  const head = make("tr", {}, ...pointKeys.map((k) => make("th", { scope: "col" }, say("bowls.own." + k))));
  const rows = c.points.map((p) => make("tr", {}, ...pointKeys.map((k) => make("td", {}, p[k] ?? ""))));
  return [make("p", {}, [c.name, ...figures].join("; ")), make("table", {}, make("thead", {}, head), make("tbody", {}, ...rows))];
}

function cautions(p: Printed): HTMLElement[] {
  const all = p.reply?.cautions ?? [];
  const fires = all.filter((c) => c.state === "fires");
  const open = all.filter((c) => c.state === "unchecked").length;
  const items = told(fires).map((t) => make("li", {}, ...sentence(t), ...(t.cases.length > 0 ? [make("ul", {}, ...t.cases.map((c) => make("li", {}, c)))] : [])));
  const tail = open > 0 ? [make("p", {}, say("sheet.cautions.some", open, all.length))] : fires.length === 0 && all.length > 0 ? [make("p", {}, say("sheet.cautions.all"))] : [];
  for (const c of p.reply?.clashes ?? []) items.push(make("li", {}, make("b", {}, say("state.clash")), " ", c.text));
  return [...(items.length > 0 ? [make("ul", { role: "list" }, ...items)] : []), ...tail];
}

/** What is open, with a blank to write the answer on. */
function blanks(book: DeskBook, p: Printed): HTMLElement[] {
  const items = p.open.map((q) => make("li", {}, make("span", {}, make("b", {}, book.name(q.term)), " ", q.ask), make("span", { class: "blank" })));
  for (const key of noteKeys) {
    if (!p.enquiry.notes[key]) items.push(make("li", {}, make("span", {}, say("desk.note." + key)), make("span", { class: "blank" })));
  }
  return items.length > 0 ? [make("ul", { role: "list", class: "blanks" }, ...items)] : [make("p", {}, say("desk.next.none"))];
}
