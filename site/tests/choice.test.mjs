// The page on which bowls are chosen, on one page load: facts in the link, the ranking, the slider,
// a curve of the reader's own; then print, and the page without scripts.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, words } from "./lib/edition.mjs";
import { hasAnswered } from "./lib/sheet.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

// A dairy: 220 gpm against 237 ft in an 8 in casing.
const dairy = "#facts=build:water-lubricated,capacity:220gpm,total-head:237ft,static-head:200ft,drawdown:10ft,casing-inside-diameter:8in,speed:3500rpm&want=total-head";
const families = (page) => page.locator("li.family").evaluateAll((list) => list.map((li) => ({
  id: li.dataset.family, verdict: li.className.replace("family ", ""), demo: li.querySelector(".demo")?.textContent ?? "",
  stages: li.querySelector("[data-id=stages] dd")?.textContent ?? "", reasons: Array.from(li.querySelectorAll(".reasons li"), (r) => r.textContent) })));

test("facts in the link, the duty moved by keys, a curve typed with a mistake", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("bowls.html") + dairy);
    await page.waitForFunction(hasAnswered);
    await page.waitForSelector(".along input[aria-valuetext*='220']");
    const list = await families(page);
    // 237 ft over 57 ft of one stage of Dunlin 6 at 220 gpm: 4.16, so five stages
    assert.equal(list[0].id, "dunlin-6");
    assert.equal(list[0].stages, "5");
    assert.ok(list.every((f) => f.demo !== ""), "an invented family does not say so");
    assert.ok(list.some((f) => f.verdict === "out" && f.reasons.some((r) => /casing/.test(r))), "nothing is too large for a casing of 8 in");

    const slider = page.locator(".along input");
    await slider.focus();
    const before = await page.locator("[data-family=dunlin-6] [data-id=bowl-efficiency] dd").textContent();
    await slider.press("ArrowRight");
    await page.waitForFunction(() => !document.querySelector(".along input").getAttribute("aria-valuetext").includes("220"));
    assert.notEqual(await page.locator("[data-family=dunlin-6] [data-id=bowl-efficiency] dd").textContent(), before);
    assert.match(await page.evaluate(() => location.hash + document.querySelector("li[data-term=capacity] input").value), /22[1-9]|23\d/);

    await page.locator(".owncurve summary").click();
    const type = async (id, text) => page.locator(`.owncurve input[aria-describedby='${id}']`).fill(text);
    await type("own-speed--1--1", "3500");
    for (const [i, point] of [["0", "80"], ["150", "90"], ["300", "40"]].entries()) {
      await type(`own-point-${i}-0`, point[0]);
      await type(`own-point-${i}-1`, point[1]);
    }
    await page.waitForFunction(() => document.getElementById("own-point-1-1").textContent !== "");
    assert.match(await page.locator("#own-point-1-1").textContent(), /head rises/);
    assert.equal(await page.locator("li.family").count(), list.length, "a wrong curve was ranked");
    await type("own-point-1-1", "70");
    await page.waitForSelector("[data-family=other-bowl]");
    assert.equal(await page.locator("#own-point-1-1").textContent(), "");
    assert.equal(await page.locator("[data-family=other-bowl] .demo").count(), 0, "a curve of the reader's own is no demonstration");
    assert.equal(await page.locator(".owncurve .news").textContent(), words["bowls.own.taken"]);

    // the sheet says nothing of setting and field head: then nothing is offered; with them columns are
    await page.waitForFunction((none) => document.querySelector(".options").textContent.includes(none), words["columns.none"].slice(0, 20));
    await page.evaluate((h) => void (location.hash = h), dairy.replace("total-head:237ft", "field-head:230ft,column-loss:6.4ft,head-loss:0.6ft,setting:200ft"));
    await page.waitForSelector(".options tbody[data-column='6 in']");
    await page.locator("input[aria-describedby=price-wrong]").fill("cheap");
    await page.waitForFunction(() => document.getElementById("price-wrong").textContent !== "");
    await page.locator("input[aria-describedby=price-wrong]").fill("1.50");
    await page.waitForFunction(() => document.getElementById("price-wrong").textContent === "" && /\d/.test(document.querySelector(".options tbody tr td:nth-last-child(2)").textContent));
    assert.match(await page.locator("[data-family=dunlin-6] .acts a").getAttribute("href"), /^desk\.html#call=same&facts=.*bowl-family:dunlin-6,stages:\d&curve=name:.*&want=total-head$/);
    // 200 to 300 gpm: the end of the curve of Dunlin 6 lies in it, so another family comes first above
    await page.evaluate((h) => void (location.hash = h), dairy.replace("220gpm", "200%20to%20300%20gpm"));
    await page.waitForSelector("section.turns:not([hidden]) li");
    assert.match(await page.locator("section.turns").innerText(), /By the capacity: up to [\d.]+\sgpm Dunlin 6 with \d stages[^]*above that (?!Dunlin 6)[^]*Demonstration bowl, not for order/);
    await page.evaluate(axe);
    const found = await page.evaluate(async () => (await window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"], preload: false })).violations.map((v) => v.id + ": " + v.nodes[0].html));
    assert.deepEqual(found, []);
    await page.emulateMedia({ media: "print" });
    assert.equal(await page.locator(".along").isVisible(), false);
    assert.equal(await page.locator("[data-family=dunlin-6] .demo").isVisible(), true);
  });
});

test("the words of the curves stand inside the drawing at every width", async () => {
  for (const width of [320, 360, 640, 1280]) {
    await withPage(browser, { viewport: { width, height: 800 } }, async (page) => {
      await page.goto(address("bowls.html"));
      await page.waitForSelector(".along input[aria-valuetext]");
      const out = await page.evaluate(() => {
        const svg = document.querySelector(".curves svg");
        const box = svg.getBoundingClientRect();
        return Array.from(svg.querySelectorAll("text"), (t) => [t.textContent, t.getBoundingClientRect()]).filter(([, b]) => b.left < box.left - 1 || b.right > box.right + 1 || b.top < box.top - 1).map(([words]) => words);
      });
      assert.deepEqual(out, [], `${width} px`);
    });
  }
});

test("without scripts the ranking of the orchard is there", async () => {
  await withPage(browser, { javaScriptEnabled: false }, async (page) => {
    await page.goto(address("bowls.html"));
    const list = await families(page);
    assert.equal(list[0].id, "lapwing-10");
    assert.equal(list[0].stages, "8");
    assert.equal(await page.locator(".curves svg").isVisible(), true);
    assert.ok((await page.locator(".options tbody[data-column='8 in']").count()) > 0, "no column is printed");
    assert.equal(await page.locator("button, input").count(), 0, "something on the page is dead");
  });
});
