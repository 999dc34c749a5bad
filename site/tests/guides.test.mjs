// Guides for authors and trainers: code in its classes, what becomes of it beside it, and the way into the classroom.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, words } from "./lib/edition.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** In a page: how a stretch and its result stand to each other, and what is wider than the page. */
function looked() {
  const first = document.querySelector(".pairing");
  const box = (s) => first?.querySelector(s)?.getBoundingClientRect();
  const [code, result] = [box(".written"), box(".becomes")];
  return {
    wider: document.documentElement.scrollWidth - innerWidth,
    beside: code && result && Math.abs(code.top - result.top) < 2 && result.left >= code.right - 1,
    below: code && result && result.top >= code.bottom - 1,
    rows: document.querySelectorAll(".pairing").length,
    results: document.querySelectorAll(".pairing > .becomes").length,
  };
}

test("authors: each word of the notation has its ink, and the result stands beside it, on a phone below it", () =>
  withPage(browser, { javaScriptEnabled: false, viewport: { width: 1280, height: 800 } }, async (page) => {
    await page.goto(address("index.html"));
    await page.getByRole("navigation", { name: words["guides"] }).locator('a[href="guides/authors.html"]').click();
    const inks = await page.$$eval([".hk", ".hn", ".hm", ".hs", ".hc", ".hp"].map((c) => `.written ${c}`).join(","), (list) =>
      Object.fromEntries(list.map((e) => [e.className, getComputedStyle(e).color])));
    assert.equal(Object.keys(inks).length, 6, "not every class of the notation is on the page");
    assert.equal(new Set([inks.hk, inks.hn, inks.hm, inks.hs, inks.hc]).size, 5, "two kinds of words have one colour");
    const wide = await page.evaluate(looked);
    assert.ok(wide.beside && wide.rows > 30 && wide.rows === wide.results, JSON.stringify(wide));
    assert.match(await page.locator(".shownfile", { hasText: "terms/filling-volume.md" }).locator(".becomes .worked").innerText(), /363\.8/);
    await page.setViewportSize({ width: 360, height: 780 });
    const phone = await page.evaluate(looked);
    assert.ok(phone.below && phone.wider <= 0, JSON.stringify(phone));
  }));

test("trainers: the guide fits a phone, and a link of the plan opens its sheet for the projector", () =>
  withPage(browser, { viewport: { width: 360, height: 780 } }, async (page) => {
    await page.goto(address("guides/trainers.html"));
    assert.ok((await page.evaluate(looked)).wider <= 0, "the page is wider than a phone");
    await page.locator('a[href$="chain-of-three.html#seed=11&view=projector"]').click();
    await page.locator("dialog.projector[open]").waitFor();
    assert.match(await page.locator(".sheetno").innerText(), /\b11\b/);
  }));
