// The same question put to the engine that runs outside the browser, and the comparison with what
// the page prints. The rounding is worked out here again, from the rule of the handbook: four
// significant digits, whole numbers never rounded before the unit digit.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { columnbowl, contentDir, project } from "./edition.mjs";

const said = new Map();

/** What `columnbowl reckon TERM … --json` says; the same question is put once. */
export function reckon(term, facts) {
  const args = ["reckon", term, ...Array.from(facts, ([id, text]) => `${id}=${text}`), "--json", "--content", contentDir()];
  const key = args.join("\n");
  if (!said.has(key)) {
    const run = spawnSync(columnbowl(), args, { cwd: project, encoding: "utf8" });
    if (run.status === 2 || run.error) throw new Error(`columnbowl ${args.join(" ")}: ${run.error ?? run.stderr}`);
    said.set(key, JSON.parse(run.stdout));
  }
  return said.get(key);
}

const telling = [
  "build", "capacity", "static-level", "drawdown", "pumping-level", "specific-capacity", "lift", "pressure-head", "field-head",
  "column-loss", "total-head", "stages", "water-power", "bowl-power", "brake-power", "input-power", "overall-efficiency",
];

/** A sheet cut down to the lines that say most, where all sixty would take too long. */
export const mainLines = (sheet) => ({ ...sheet, rows: sheet.rows.filter((r) => telling.includes(r.term)) });

/** Reads a number as the page prints it. */
export function printedNumber(text) {
  const [, mantissa, power] = /^(.*?)(?:×10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))?$/.exec(text.replace("−", "-").replace(/,/g, ""));
  const exponent = power ? Array.from(power, (c) => "⁻⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(c)).map((i) => (i === 0 ? "-" : i - 1)).join("") : "0";
  return mantissa === "" ? NaN : Number(`${mantissa}e${exponent}`);
}

/** Whether a printed number is the value, rounded as the handbook rounds. */
export function isPrinted(text, value) {
  const printed = printedNumber(text);
  if (value === 0) return printed === 0;
  const first = Math.floor(Math.log10(Math.abs(value)));
  const decimals = first < -4 || first >= 10 ? 3 - first : Math.max(0, 3 - first);
  return Math.abs(printed - value) <= 0.500001 * 10 ** -decimals;
}

/**
 * Compares every line of a sheet with the native engine for the same facts.
 * units says which system stands large. Returns the answers by term.
 */
export function sameAsNative(sheet, facts, units = "us") {
  const answers = new Map();
  for (const row of sheet.rows) {
    const answer = reckon(row.term, facts);
    answers.set(row.term, answer);
    if (row.choice) {
      if (answer.value !== undefined) assert.equal(row.value, answer.value, `${row.term}: chosen value`);
      continue;
    }
    compare(row, answer, units);
    assert.equal(row.state === "given", facts.has(row.term) && row.state !== "clash", `${row.term}: “${row.word}”, but ${facts.has(row.term) ? "it was" : "it was not"} given`);
  }
  return answers;
}

function compare(row, answer, units) {
  const where = `${row.term} (${row.word})`;
  if (answer.value === undefined) {
    assert.equal(row.value, "", `${where}: the page has a number, the native engine has none (${answer.state} ${answer.reason ?? ""})`);
    return;
  }
  const value = units === "si" ? answer.si.value : answer.value;
  if (answer.low !== undefined) return;
  assert.ok(isPrinted(row.value, value), `${where}: the page prints ${row.value}, the native engine has ${value}`);
  const last = answer.steps.at(-1);
  if (units === "us" && last && row.state === "follows" && !last.includes(", sought between ")) {
    const end = `= ${row.value}${row.unit ? " " + row.unit : ""}`.replace(/\s/g, " ");
    const step = last.replace(/\s/g, " ").replace(/ \([^()]*\)$/, ""); // without “(rounded)”
    assert.ok(step.endsWith(end), `${where}: the page prints “${end}”, the native step is “${last}”`);
  }
}
