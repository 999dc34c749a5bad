// Without JavaScript every page is a page of a book: nothing is missing, nothing is dead.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, htmlFiles, isPage, samplePages, textOf, words } from "./lib/edition.mjs";
import { printedNumber, reckon } from "./lib/native.mjs";
import { factsOf, readSheet, rowOf } from "./lib/sheet.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const still = { javaScriptEnabled: false };

test("no page has a control that does nothing", async () => {
  await withPage(browser, {}, async (page) => {
    for (const file of htmlFiles().filter(isPage)) {
      const dead = await page.evaluate((text) => {
        const controls = "button, input, select, textarea, [role=button], [role=switch], [role=tab], [contenteditable], a:not([href]), form";
        const inert = new DOMParser().parseFromString(text, "text/html");
        return Array.from(inert.querySelectorAll(controls), (e) => e.outerHTML.slice(0, 120));
      }, textOf(file));
      assert.deepEqual(dead, [], file);
    }
  });
});

test("a term has its definition, formula, steps, numbers and ways on", async () => {
  await withPage(browser, still, async (page) => {
    await page.goto(address("terms/total-head.html"));
    const is = await page.evaluate(() => {
      const shown = (e) => e !== null && e.getClientRects().length > 0;
      const all = (s) => Array.from(document.querySelectorAll(s)).filter(shown);
      return {
        definition: document.querySelector("main .prose").textContent.trim().length,
        formulas: all(".rel math").length,
        fraction: document.querySelector(".rel math").getBoundingClientRect().width,
        steps: all(".worked .steps li").map((e) => e.textContent.trim()),
        results: all(".worked .lines.result li").length,
        slips: all(".slips li").length,
        rail: all("nav.rail a").filter((a) => a.getAttribute("href").includes("places/")).length,
        masthead: all("header.mast a").length,
        drawings: all("figure.drawing svg").length,
        wells: all("img.well").filter((i) => i.complete && i.naturalWidth > 0).length,
      };
    });
    assert.ok(is.definition > 200, "the definition");
    assert.ok(is.formulas >= 1 && is.fraction > 50, "the formula");
    assert.ok(is.steps.some((s) => /^total head = .* = [\d.,]+\s?ft/.test(s)), `the steps: ${is.steps}`);
    assert.ok(is.results > 0, "the results");
    assert.ok(is.slips > 0, "where people slip");
    assert.equal(is.rail, 11, "places of the rail");
    assert.ok(is.masthead >= 4, "the masthead");
    assert.ok(is.drawings > 0, "drawings");
    assert.ok(is.wells > 0, "the drawn well of the rail");
  });
});

test("the sheet stands there as numbers, in both systems, and they are right", async () => {
  await withPage(browser, still, async (page) => {
    await page.goto(address("well-to-wire.html"));
    const sheet = await page.evaluate(readSheet);
    const { facts } = factsOf(sheet);
    assert.ok(sheet.rows.every((r) => !r.alive), "a field stands there without a script");
    for (const term of ["pumping-level", "total-head", "bowl-power", "brake-power", "input-power"]) {
      const row = rowOf(sheet, term);
      assert.ok(Math.abs(printedNumber(row.value) / reckon(term, facts).value - 1) < 0.0005, `${term} is printed as ${row.value}`);
      if (term !== "input-power") assert.match(row.other, /^[−\d.,]+ /, `${term} has no second unit`);
      assert.ok(row.work.length > 5, `${term} has no working`);
    }
    assert.ok(sheet.count.includes("given"));
    assert.equal(sheet.rows.filter((r) => r.word === "").length, 0, "a line without the word of its state");
  });
});

test("on a page shorter than the rail the masthead keeps its height", async () => {
  await withPage(browser, still, async (page) => {
    const heights = [];
    for (const file of ["practice/progress.html", "terms/total-head.html"]) {
      await page.goto(address(file));
      heights.push(await page.evaluate(() => Math.round(document.querySelector("main").getBoundingClientRect().top + scrollY)));
    }
    assert.equal(heights[0], heights[1]);
  });
});

test("a pump tells how it can be made, with the parts that come with it", async () => {
  await withPage(browser, still, async (page) => {
    await page.goto(address("builds/submersible.html"));
    await page.locator(".made > summary").click();
    const box = page.locator(".made [data-choice=plate]");
    assert.match(await box.innerText(), new RegExp(`${words["cut.choice.plate"]}\\s+${words["cut.option.plate"]} ${words["cut.made.drawn"]}\\s+${words["cut.option.pitless"]}`));
    assert.equal(await box.locator("a").first().getAttribute("href"), "../parts/pitless-unit.html");
    assert.equal(await page.locator(".made input").count(), 0, "a button that does nothing");
  });
});

test("every kind of page shows its text, and the places open without a script on a phone", async () => {
  await withPage(browser, { ...still, viewport: { width: 360, height: 740 } }, async (page) => {
    for (const file of samplePages()) {
      await page.goto(address(file));
      assert.ok((await page.locator("main").innerText()).length > 200, `${file}: there is hardly any text`);
      await page.locator("details.strip > summary").click();
      await page.locator("details.strip a[href*='places/']").first().waitFor({ state: "visible" });
    }
  });
});

test("who opens the first page inside its archive is told to unpack it, and nobody else is", async () => {
  await withPage(browser, still, async (page) => {
    await page.goto(address("index.html"));
    const told = page.locator(".unpack");
    assert.equal(await told.isVisible(), false);
    assert.doesNotMatch(await page.locator("body").ariaSnapshot(), /Unpack the archive/, "it is announced");
    await page.evaluate(() => document.querySelector("link[rel=stylesheet]").remove());
    assert.equal(await told.isVisible(), true);
  });
});
