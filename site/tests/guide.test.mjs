// The ways through the book: the glossary, the pairs, where a chapter stands, and the handout of a chapter.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, wordPattern } from "./lib/edition.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

test("from another name to the word, to what it is taken for, and back: with no script", async () => {
  await withPage(browser, { javaScriptEnabled: false }, async (page) => {
    await page.goto(address("glossary.html"));
    await page.click('.letters-nav a[href="#letter-B"]');
    await page.locator(".words .see", { has: page.locator("dt", { hasText: /^bowl head$/ }) }).locator("a").click();
    assert.match(page.url(), /#t-total-head$/);
    const entry = page.locator("#t-total-head");
    assert.match(await entry.textContent(), /bowl head/);
    await entry.locator('a[href="pairs/field-head-total-head.html"]').click();
    const sides = page.locator(".side");
    assert.deepEqual(await sides.locator("h2 a").allTextContents(), ["Field head", "Total head"]);
    const boxes = await sides.evaluateAll((list) => list.map((e) => e.getBoundingClientRect().top));
    assert.equal(boxes[0], boxes[1], "the words do not stand side by side");
    await sides.nth(1).locator("h2 a").click();
    assert.equal(await page.locator('.beside-too a[href$="pairs/field-head-total-head.html"]').count(), 1);
  });
});

test("a chapter says how long it takes and where it stands; as a handout it has its text, its title block and no frame", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("chapters/powers-and-efficiencies.html"));
    assert.match(await page.textContent("main .head"), wordPattern("reading"));
    const strip = await page.$$eval(".chain.groups li", (list) => list.map((e) => [e.querySelector("a").textContent, e.classList.contains("now")]));
    assert.equal(strip.length, 7);
    assert.ok(strip.find(([name]) => name === "Powers")[1], "the chapter of the powers does not stand at the powers");
    assert.ok(!strip.find(([name]) => name === "Levels")[1], "the chapter of the powers stands at the levels");
    await page.emulateMedia({ media: "print" });
    const paper = await page.evaluate(() => {
      const seen = (s) => Array.from(document.querySelectorAll(s)).some((e) => e.getClientRects().length > 0);
      return {
        frame: [".mast", ".rail", ".strip", ".pages", ".trail", ".contents", ".acts", ".tools"].filter(seen),
        text: ["h1", ".aims", ".prose", ".takeaway", ".blockt"].filter((s) => !seen(s)),
        underlined: Array.from(document.querySelectorAll("main a")).filter((a) => a.getClientRects().length > 0 && (getComputedStyle(a).textDecorationLine !== "none" || parseFloat(getComputedStyle(a).borderBottomWidth) > 0)).map((a) => a.outerHTML).slice(0, 3),
      };
    });
    assert.deepEqual(paper.frame, [], "parts of the frame are printed");
    assert.deepEqual(paper.text, [], "parts of the handout are not printed");
    assert.deepEqual(paper.underlined, [], "links are underlined on paper");
  });
});
