// A phone in the hand: nothing runs out of the page, a finger meets every control.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, htmlFiles, isPage, samplePages, words } from "./lib/edition.mjs";
import { enter, field, hasAnswered, readSheet, rowOf } from "./lib/sheet.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const phone = (width) => ({ viewport: { width, height: 740 }, isMobile: true, hasTouch: true, deviceScaleFactor: 2 });

/** In the page: what stands out of the window on the right, and by how much the page scrolls. */
function overflow() {
  const width = document.documentElement.clientWidth;
  const inScroller = (e) => {
    for (let p = e.parentElement; p; p = p.parentElement) {
      if (p !== document.body && p !== document.documentElement && /auto|scroll|hidden|clip/.test(getComputedStyle(p).overflowX)) return true;
    }
    return false;
  };
  const out = Array.from(document.querySelectorAll("main *, header *, footer *"))
    .filter((e) => e.getClientRects().length > 0 && e.getBoundingClientRect().right > width + 1 && !inScroller(e) && !e.closest("svg"))
    .map((e) => `${e.tagName.toLowerCase()}.${e.className} ${Math.round(e.getBoundingClientRect().right)} “${(e.textContent ?? "").trim().slice(0, 30)}”`);
  return { by: document.documentElement.scrollWidth - width, layout: innerWidth, width, out: out.slice(0, 5) };
}

/** What runs out of these pages, looked at in one tab. */
async function runsOut(files, widths, more = {}) {
  const bad = [];
  await withPage(browser, { ...phone(360), ...more }, async (page, guard) => {
    guard.allow(/: net::ERR_ABORTED/); // the page is left before all of it has come; what is not there is not found
    for (const file of files) {
      // a script in the head waits for the style sheet; without scripts nothing does
      await page.goto(address(file), { waitUntil: more.javaScriptEnabled === false ? "load" : "domcontentloaded" });
      for (const width of widths) {
        await page.setViewportSize({ width, height: 740 });
        const over = await page.evaluate(overflow);
        if (over.by > 0 || over.out.length > 0 || over.layout > width) bad.push(`${file} at ${width} px: by ${over.by} px, laid out on ${over.layout} px: ${over.out.join("; ")}`);
      }
    }
  });
  return bad;
}

// What fits 320 px fits 360, but for what is laid out for 360 alone: that is seen on one page of each
// kind. So is what scripts add; the text of all pages is looked at without them, in half the time.
test("no page scrolls sideways at 320 px, no kind of page at 360", async () => {
  const all = htmlFiles().filter(isPage);
  const halves = [0, 1].map((k) => all.filter((_, i) => i % 2 === k));
  const bad = await Promise.all([...halves.map((files) => runsOut(files, [320], { javaScriptEnabled: false })), runsOut(samplePages(), [360, 320])]);
  assert.deepEqual(bad.flat(), []);
});

// WCAG 1.4.12: a reader may space letters, words, lines and paragraphs.
test("letters that are spaced out push nothing out of the page", async () => {
  const spaced = "* { letter-spacing: .12em !important; word-spacing: .16em !important; line-height: 1.5 !important } p { margin-bottom: 2em !important }";
  const bad = [];
  await withPage(browser, phone(360), async (page, guard) => {
    guard.allow(/: net::ERR_ABORTED/);
    for (const file of samplePages()) {
      await page.goto(address(file), { waitUntil: "domcontentloaded" });
      const over = await page.evaluate(([rules, find]) => {
        const sheet = new CSSStyleSheet(); // the policy of the page lets no style element in
        sheet.replaceSync(rules);
        document.adoptedStyleSheets = [sheet];
        return new Function(`return (${find})()`)();
      }, [spaced, overflow.toString()]);
      if (over.by > 0 || over.out.length > 0) bad.push(`${file}: by ${over.by} px: ${over.out.join("; ")}`);
    }
  });
  assert.deepEqual(bad, []);
});

/**
 * In the page: what a finger misses. Controls are 44 px each way, a radio button with its label; ways
 * to other pages are 44 px high in masthead, places and foot, 24 px in lists and lines.
 */
function small() {
  const kinds = [
    ["button, select, summary, input:not([type=radio]):not([type=checkbox]), a.act, .switch label, .alts label", 43.5, 43.5],
    ["header nav a, .strip nav a, nav.pages a, .letters-nav a", 0, 43.5],
    ["main a", 0, 23.5],
  ];
  const out = new Set();
  for (const [selector, wide, high] of kinds) {
    for (const e of document.querySelectorAll(selector)) {
      if (e.getClientRects().length === 0 || e.closest("svg") || e.closest(".off") || e.closest("p, th, td, dd, figcaption, .prose li")) continue; // a link in running text or in a table is as high as its line
      const r = e.getBoundingClientRect();
      if (r.width < wide || r.height < high) out.add(`${e.tagName.toLowerCase()}.${e.className} ${Math.round(r.width)}×${Math.round(r.height)} “${(e.textContent ?? "").trim().slice(0, 30)}”`);
    }
  }
  return [...out];
}

test("a finger meets every control", async () => {
  await withPage(browser, phone(360), async (page) => {
    const bad = [];
    for (const file of samplePages()) {
      await page.goto(address(file));
      if (await page.locator("fact-sheet").count()) await page.waitForFunction(hasAnswered);
      await page.locator("details.strip > summary").tap();
      for (const found of await page.evaluate(small)) bad.push(`${file}: ${found}`);
    }
    assert.deepEqual(bad, []);
  });
});

test("the strip leads to every place", async () => {
  await withPage(browser, phone(360), async (page) => {
    await page.goto(address("terms/total-head.html"));
    assert.ok(await page.locator("details.strip > summary").isVisible(), "there is no strip");
    assert.ok(!(await page.locator("nav.rail").isVisible()), "the wide rail stands on a phone");
    await page.locator("details.strip > summary").tap();
    const links = page.locator("details.strip a[href*='places/']");
    assert.equal(await links.count(), 11);
    await links.first().tap();
    await page.waitForURL(/places\//);
  });
});

for (const width of [360, 320]) {
  test(`the sheet can be used at ${width} px`, async () => {
    await withPage(browser, phone(width), async (page) => {
      await page.goto(address("well-to-wire.html"));
      await page.waitForFunction(hasAnswered);
      const input = page.locator(field("static-level"));
      await input.tap();
      const box = await input.boundingBox();
      assert.ok(box.width >= 60, `the field is ${box.width} px wide`);
      assert.ok(await input.evaluate((e) => parseFloat(getComputedStyle(e).fontSize)) >= 16, "a phone zooms in on a field whose letters are under 16 px");
      await enter(page, "static-level", "abc");
      let sheet = await page.evaluate(readSheet);
      assert.ok(rowOf(sheet, "static-level").invalid);
      assert.ok(await page.locator('li[data-term="static-level"] .say').isVisible(), "the explanation is not seen");
      assert.deepEqual(await page.evaluate(overflow).then((o) => [o.by, o.out]), [0, []], "the explanation runs out of the page");
      await enter(page, "static-level", "150 ft");
      sheet = await page.evaluate(readSheet);
      assert.equal(rowOf(sheet, "pumping-level").value, "205");
      await page.locator(".tools .switch label", { hasText: words["units.si"] }).tap();
      sheet = await page.evaluate(readSheet);
      assert.equal(rowOf(sheet, "pumping-level").value, "62.48");
      for (const part of [".v input", ".st", ".nm", ".o"]) {
        assert.ok(await page.locator(`li[data-term="pumping-level"] ${part}`).first().isVisible(), `${part} of a line is not shown`);
      }
    });
  });
}
