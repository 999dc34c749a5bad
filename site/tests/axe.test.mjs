// Rules of access (WCAG 2.2 A and AA, as far as a machine can check them) on every kind of page,
// on every paper, with an edit and with an error on the sheet.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, samplePages, words } from "./lib/edition.mjs";
import { enter, hasAnswered, settled } from "./lib/sheet.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

async function violations(page, what) {
  // evaluated by the test tool, so that the policy of the page stays in force
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe);
  const found = await page.evaluate(async () => {
    const result = await window.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"],
      resultTypes: ["violations"],
      preload: false, // it would fetch the style sheet, which a page from a folder must not
    });
    const checked = result.passes.length;
    return { checked, list: result.violations.map((v) => ({ id: v.id, help: v.help, n: v.nodes.length, where: v.nodes.slice(0, 3).map((n) => `${n.target.join(" ")}: ${n.any[0]?.message ?? n.all[0]?.message ?? n.none[0]?.message ?? ""}`) })) };
  });
  assert.ok(found.checked > 5, `${what}: hardly anything was checked`);
  return found.list.map((v) => `${what}: ${v.id} (${v.n}×) ${v.help}\n      ${v.where.join("\n      ")}`);
}

const papers = ["light", "dark", "contrast"];

async function choose(page, paper) {
  await page.locator(".paper label", { hasText: new RegExp(`^${words["theme." + paper]}$`) }).click();
  assert.equal(await page.evaluate(() => document.documentElement.dataset.theme), paper);
  const wells = await page.evaluate(() => Array.from(document.querySelectorAll("img.well"), (i) => i.getAttribute("src")));
  assert.ok(wells.length > 0 && wells.every((src) => src.endsWith(`#${paper}`)), `the drawn wells hear of the ${paper} paper: ${wells}`);
  // colours may move to their place
  await page.evaluate(() => Promise.all(document.getAnimations().map((a) => a.finished.catch(() => null))));
}

for (const file of samplePages()) {
  test(`${file} on every paper`, async () => {
    await withPage(browser, {}, async (page) => {
      await page.goto(address(file));
      if (await page.locator("fact-sheet").count()) await page.waitForFunction(hasAnswered);
      const found = [];
      for (const paper of papers) {
        await choose(page, paper);
        found.push(...(await violations(page, paper)));
      }
      assert.deepEqual(found, [], found.join("\n"));
    });
  });
}

test("the chain after an edit, with an error, a clash and open questions", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("well-to-wire.html"));
    await page.waitForFunction(hasAnswered);
    await enter(page, "static-level", "150 ft");
    await enter(page, "discharge-pressure", "nonsense");
    await enter(page, "pumping-level", "230 ft");
    await enter(page, "setting", "");
    await page.getByRole("button", { name: words["sheet.steps"] }).click();
    await page.getByRole("button", { name: words["sheet.ask"] }).click();
    await settled(page);
    assert.ok((await page.locator("[aria-invalid=true]").count()) === 1 && (await page.locator("li.row.clash").count()) > 0, "the sheet is not in the state that is to be checked");
    const found = [];
    for (const paper of papers) {
      await choose(page, paper);
      found.push(...(await violations(page, paper)));
    }
    assert.deepEqual(found, [], found.join("\n"));
  });
});

test("the take-off with open questions, refused, and with the table to be copied", async () => {
  const closed = `Object.defineProperty(navigator, "clipboard", { value: undefined })`;
  await withPage(browser, { before: closed }, async (page) => {
    await page.goto(address("take-off.html"));
    await page.waitForFunction(hasAnswered);
    await enter(page, "stages", "");
    await page.getByRole("button", { name: words["takeoff.copy"] }).click();
    await page.locator(".copytext").waitFor();
    const found = await violations(page, "open");
    await enter(page, "asked-setting", "600 ft");
    assert.ok((await page.locator(".piececaution.refuses").count()) === 1, "nothing is refused");
    found.push(...(await violations(page, "refused")));
    assert.deepEqual(found, [], found.join("\n"));
  });
});

test("a term and the chain on a phone, with the list of places open", async () => {
  await withPage(browser, { viewport: { width: 360, height: 740 }, isMobile: true, hasTouch: true }, async (page) => {
    const found = [];
    for (const file of ["terms/total-head.html", "well-to-wire.html", "take-off.html"]) {
      await page.goto(address(file));
      await page.waitForFunction(hasAnswered);
      await page.locator("details.strip > summary").tap();
      found.push(...(await violations(page, file)));
    }
    assert.deepEqual(found, [], found.join("\n"));
  });
});
