// Rules of access (WCAG 2.2 A and AA, as far as a machine can check them), for all checks.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const every = { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] };
/** What another paper can break: ink on its ground. */
const inks = { type: "rule", values: ["color-contrast", "link-in-text-block"] };

/** Long lists repeat themselves: the first of their groups and lines speak for the rest. */
const repeats = [".letter ~ .letter ~ .letter", ".words > div:nth-child(n+12)", ".plain tr:nth-child(n+12)", ".askedlist li:nth-child(n+4)", ".questions section ~ section ~ section", ".sources section ~ section ~ section", ".cardlist > li:nth-child(n+6)"];

/** The rules that the page breaks, in words; what says in which state it is. */
export async function violations(page, what, { only = every } = {}) {
  // evaluated by the test tool, so that the policy of the page stays in force
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe);
  const found = await page.evaluate(async ([runOnly, exclude]) => {
    const result = await window.axe.run({ include: [["html"]], exclude: exclude.filter((s) => document.querySelector(s)).map((s) => [s]) }, {
      runOnly,
      resultTypes: ["violations"],
      preload: false, // it would fetch the style sheet, which a page from a folder must not
    });
    return { checked: result.passes.length, list: result.violations.map((v) => ({ id: v.id, help: v.help, n: v.nodes.length, where: v.nodes.slice(0, 3).map((n) => `${n.target.join(" ")}: ${n.any[0]?.message ?? n.all[0]?.message ?? n.none[0]?.message ?? ""}`) })) };
  }, [only, repeats]);
  assert.ok(found.checked > (only === every ? 5 : 0), `${what}: hardly anything was checked`);
  return found.list.map((v) => `${what}: ${v.id} (${v.n}×) ${v.help}\n      ${v.where.join("\n      ")}`);
}

/** Ink on its ground alone. */
export const inksBroken = (page, what) => violations(page, what, { only: inks });
