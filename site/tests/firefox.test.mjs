// The core path in Firefox from a folder, where every file is an origin of its own.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { address, words } from "./lib/edition.mjs";
import { launchFirefox, withFirefoxPage } from "./lib/firefox.mjs";
import { mainLines, sameAsNative } from "./lib/native.mjs";
import { factsOf, field, hasAnswered, readSheet, rowOf, settled } from "./lib/sheet.mjs";

let browser;
before(async () => void (browser = await launchFirefox()));
after(() => browser?.close());

const chain = "well-to-wire.html";

async function open(page, path = chain) {
  await page.goto(address(path));
  await page.waitForFunction(hasAnswered);
  return page.evaluate(readSheet);
}

async function type(page, term, text) {
  await page.focus(field(term));
  await page.evaluate((selector) => document.querySelector(selector).select(), field(term));
  await page.keyboard.type(text);
}

async function enter(page, term, text) {
  await type(page, term, text);
  await page.keyboard.press("Enter");
  await settled(page);
}

/** Presses the button, or chooses the word of a switch, that says these words. */
async function press(page, selector, text) {
  const found = await page.evaluate((s, t) => {
    const e = Array.from(document.querySelectorAll(s)).find((x) => x.textContent.trim() === t);
    e?.click();
    return e !== undefined;
  }, selector, text);
  assert.ok(found, `there is no ${selector} that says “${text}”`);
  await settled(page);
}

/** Waits for a button, which may come only when the store has answered. */
const appears = (page, selector, text) =>
  page.waitForFunction((s, t) => Array.from(document.querySelectorAll(s)).some((x) => x.textContent.trim() === t), {}, selector, text);

test("every file is an origin of its own here", async () => {
  await withFirefoxPage(browser, async (page, guard) => {
    guard.allow(/fetch|NetworkError|CORS|Cross-Origin|could not load|Content.Security/i);
    await page.goto(address("index.html"));
    const could = await page.evaluate(() => fetch("well-to-wire.html").then(() => true, () => false));
    assert.equal(could, false, "this Firefox lets files read each other, so these checks would prove nothing");
  });
});

test("the chain works from a folder, and its numbers are those of the native engine", async () => {
  await withFirefoxPage(browser, async (page) => {
    const first = await open(page);
    sameAsNative(first, factsOf(first).facts);
    await enter(page, "static-level", "46 m");
    let sheet = await page.evaluate(readSheet);
    assert.equal(rowOf(sheet, "static-level").value, "150.9");
    sameAsNative(mainLines(sheet), factsOf(sheet).facts);
    await type(page, "static-level", "abc");
    await page.waitForFunction((s) => document.querySelector(s).getAttribute("aria-invalid") === "true", {}, field("static-level"));
    sheet = await page.evaluate(readSheet);
    assert.ok(rowOf(sheet, "static-level").say.length > 20);
    assert.equal(rowOf(sheet, "setting").state, "given");
    await page.keyboard.press("Escape");
    await settled(page);
    sheet = await page.evaluate(readSheet);
    assert.equal(rowOf(sheet, "static-level").value, "150.9");
  });
});

test("Find turns the sheet round", async () => {
  await withFirefoxPage(browser, async (page) => {
    await open(page);
    await page.select("fact-sheet .find select", "drawdown");
    await settled(page);
    const sheet = await page.evaluate(readSheet);
    const { facts, want } = factsOf(sheet);
    assert.equal(want, "drawdown");
    assert.ok(!facts.has("drawdown"));
    sameAsNative(mainLines(sheet), facts);
  });
});

test("units and facts pass through the hub from one page to another", async () => {
  await withFirefoxPage(browser, async (page) => {
    await open(page);
    await enter(page, "static-level", "150 ft");
    await press(page, ".tools .switch label", words["units.si"]);
  });
  // a new tab has no session of the first one: what it knows came through the hub
  await withFirefoxPage(browser, async (page) => {
    await open(page, "terms/total-head.html");
    await page.waitForFunction(() => document.documentElement.dataset.units === "si");
    await appears(page, "fact-sheet button", words["sheet.last"]);
    await press(page, "fact-sheet button", words["sheet.last"]);
    const sheet = await page.evaluate(readSheet);
    assert.equal(factsOf(sheet).facts.get("static-level"), "150ft");
    sameAsNative(sheet, factsOf(sheet).facts, "si");
    await page.reload();
    await page.waitForFunction(hasAnswered);
    const again = await page.evaluate(readSheet);
    assert.equal(factsOf(again).facts.get("static-level"), "150ft", "after a reload");
  });
});

test("the paper is remembered too", async () => {
  await withFirefoxPage(browser, async (page) => {
    await page.goto(address("index.html"));
    await appears(page, ".paper label", words["theme.dark"]);
    await press(page, ".paper label", words["theme.dark"]);
  });
  await withFirefoxPage(browser, async (page) => {
    await page.goto(address("parts/index.html"));
    await page.waitForFunction(() => document.documentElement.dataset.theme === "dark");
  });
});

test("an exercise is drawn and judged, and what was done passes to the page of progress", async () => {
  await withFirefoxPage(browser, async (page) => {
    await page.goto(address("practice/chain-of-three.html#seed=12"));
    await page.waitForSelector("practice-sheet[data-alive]");
    await page.focus(".asked .line input");
    await page.keyboard.type("7 ft");
    await press(page, "practice-sheet .act", words["practice.check"]);
    assert.equal(await page.evaluate(() => document.querySelector(".verdict").dataset.verdict), "not-recognised");
    await press(page, "practice-sheet .act", words["practice.way"]);
    await settled(page);
    await page.goto(address("practice/progress.html"));
    await page.waitForFunction(() => Array.from(document.querySelectorAll("practice-progress tbody th"), (e) => e.textContent).includes("Field head in three steps"));
  });
});
