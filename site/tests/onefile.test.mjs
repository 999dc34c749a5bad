// The whole handbook in one file, opened from a disk: with scripts it lives as the folder does,
// without them every page is there and links lead from one to the other.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { inksBroken, violations } from "./lib/axe.mjs";
import { launch, withPage } from "./lib/chromium.mjs";
import { columnbowl, contentDir, htmlFiles, isPage, project, scratch, textOf, words } from "./lib/edition.mjs";
import { launchFirefox, withFirefoxPage } from "./lib/firefox.mjs";
import { enter, factsOf, hasAnswered, readSheet, rowOf } from "./lib/sheet.mjs";
import { mainLines, sameAsNative } from "./lib/native.mjs";

const dir = scratch("onefile");
const file = join(dir, "handbook.html");
const url = pathToFileURL(file).href;
let browser;
before(async () => {
  execFileSync(columnbowl(), ["bind", "--content", contentDir(), "--checks", "testdata/published/checks", "--file", file], { cwd: project });
  browser = await launch();
});
after(() => browser.close());

test("it is under 7 MB and asks for nothing outside itself", () => {
  assert.ok(statSync(file).size < 7e6, `${statSync(file).size} bytes`);
  const text = readFileSync(file, "utf8");
  assert.match(text, /content="default-src &#39;none&#39;; script-src &#39;sha256-/);
  assert.doesNotMatch(text, /<(?:script|img|link|iframe)[^>]* (?:src|href)="?(?!data:|#)/);
});

test("a term, a number, the search, an exercise, a pump", async () => {
  await withPage(browser, { dir }, async (page) => {
    await page.goto(url + "#terms/total-head");
    await page.waitForFunction(hasAnswered);
    assert.equal(await page.textContent("main h1").then((t) => t.trim().slice(0, 10)), "Total head");
    await enter(page, "field-head", "400 ft");
    let sheet = await page.evaluate(readSheet);
    assert.equal(rowOf(sheet, "total-head").value, "407");
    assert.match(page.url(), /#terms\/total-head#facts=field-head:400ft/);
    assert.equal(await page.locator("main").count(), 1);
    // every drawing that is shown has something to show
    assert.ok(await page.locator("figure.drawing svg.fig").first().evaluate((e) => e.getBoundingClientRect().height > 200));
    // the search
    await page.fill("#find", "packing box");
    await page.locator("#found li .nm").first().waitFor();
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelector("main h1")?.textContent.trim() === "Stuffing box");
    assert.match(await page.title(), /^Stuffing box/);
    // the part in its drawing
    const lit = await page.locator("main svg.printed use.lit").first().evaluate((e) => e.getBoundingClientRect().height);
    assert.ok(lit > 5, "the part that is lit");
    // back to the term: the facts are still in the address
    await page.goBack();
    await page.waitForFunction(hasAnswered);
    sheet = await page.evaluate(readSheet);
    assert.equal(rowOf(sheet, "total-head").value, "407");
    // the chain, with facts from the first page
    await page.goto(url + "#well-to-wire");
    await page.waitForFunction(hasAnswered);
    sheet = await page.evaluate(readSheet);
    sameAsNative(mainLines(sheet), factsOf({ ...sheet, hash: "" }).facts);
    // an exercise
    await page.goto(url + "#practice/chain-of-three#seed=12");
    await page.waitForSelector("practice-sheet[data-alive]");
    await page.fill(".asked .line input", "7 ft");
    await page.getByRole("button", { name: words["practice.check"], exact: true }).click();
    assert.equal(await page.getAttribute(".verdict", "data-verdict"), "not-recognised");
    // a pump
    await page.goto(url + "#builds/oil-lubricated");
    await page.locator("cut-sheet .cutlive g.part").first().waitFor();
    // a place inside a chapter
    await page.goto(url + "#chapters/levels-and-heads:try-it");
    await page.waitForFunction(() => document.getElementById("try-it")?.getBoundingClientRect().top < innerHeight);
  });
});

test("rules of access hold in it as in the folder", async () => {
  await withPage(browser, { dir }, async (page) => {
    const found = [];
    for (const name of ["terms/total-head", "parts/impeller", "bowls", "practice/chain-of-three"]) {
      await page.goto(`${url}#${name}`);
      await page.waitForFunction((n) => document.documentElement.dataset.page === n, name);
      const choose = (paper) => page.locator("main > .paper label", { hasText: new RegExp(`^${words["theme." + paper]}$`) }).click();
      await choose("light");
      found.push(...(await violations(page, name)));
      await choose("dark");
      found.push(...(await inksBroken(page, `${name}, dark`)));
    }
    assert.deepEqual(found, [], found.join("\n"));
  });
});

test("every page of the folder is in it, whole", async () => {
  await withPage(browser, { dir }, async (page) => {
    await page.goto(url);
    await page.waitForSelector("main h1");
    const links = await page.$$eval("noscript", (list) => list.map((n) => /<main [^>]*?id=([^ >]+)/.exec(n.textContent)?.[1]));
    // an edition bound without published values has no page of sources; the guides are for those who make the book
    assert.deepEqual(links.filter((l) => l !== "sources").sort(), htmlFiles().filter((f) => isPage(f) && f !== "sources.html" && !f.startsWith("guides/")).map((f) => f.replace(/\.html$/, "")).sort());
    for (const name of ["terms/total-head", "chapters/losses", "questions/how-big-a-pump", "parts/impeller"]) {
      await page.goto(`${url}#${name}`);
      await page.waitForFunction((n) => document.documentElement.dataset.page === n, name);
      const spaces = (t) => t.replace(/\s+/g, "");
      const [here, there] = await page.evaluate((folder) => {
        const text = (root) => Array.from(root.querySelectorAll("main :is(h1, h2, h3, p, li, dd, td)")).filter((e) => !e.closest(".trail, .blockt, svg, fact-sheet .sheetfoot"), ).map((e) => e.firstChild?.nodeType === 3 ? e.firstChild.data : "").join("|");
        return [text(document), text(new DOMParser().parseFromString(folder, "text/html"))];
      }, textOf(name + ".html"));
      assert.equal(spaces(here).slice(0, 400), spaces(there).slice(0, 400), name);
    }
  });
});

test("without scripts one page is shown, with its text, steps and drawings, and links lead on", async () => {
  await withPage(browser, { dir, javaScriptEnabled: false, viewport: { width: 360, height: 740 } }, async (page) => {
    await page.goto(url);
    assert.equal(await page.locator("main:visible").count(), 1);
    assert.match(await page.locator("main:visible h1").innerText(), /./);
    await page.goto(url + "#chapters/levels-and-heads");
    const main = page.locator("main:visible");
    assert.equal(await main.count(), 1);
    assert.ok((await main.innerText()).length > 5000);
    assert.ok(await main.locator("svg.fig").first().evaluate((e) => e.getBoundingClientRect().height > 100));
    await main.locator("a[href='#terms/grade']").first().click();
    assert.equal(await page.locator("main:visible h1").innerText().then((t) => t.trim()), "Grade");
    await page.goto(url + "#chapters/levels-and-heads:try-it");
    assert.equal(await page.locator("main:visible h1").innerText(), "Levels and heads");
    await page.goto(url + "#terms/total-head");
    assert.match(await page.locator("main:visible .steps").first().innerText(), /total head = .* = 343/);
    await page.goto(url + "#parts/impeller");
    assert.ok(await page.locator("main:visible svg.printed").first().evaluate((e) => e.getBoundingClientRect().height > 100));
  });
});

test("Firefox opens it too", async () => {
  const firefox = await launchFirefox();
  try {
    await withFirefoxPage(firefox, async (page) => {
      await page.goto(url + "#terms/total-head");
      await page.waitForFunction(hasAnswered);
      await page.focus("fact-sheet li[data-term=field-head] input");
      await page.evaluate(() => document.activeElement.select());
      await page.keyboard.type("400 ft");
      await page.keyboard.press("Enter");
      await page.waitForFunction(() => document.querySelector("fact-sheet li[data-term=total-head] input").value === "407");
      await page.goto(url + "#practice/chain-of-three#seed=12");
      await page.waitForSelector("practice-sheet[data-alive]");
      await page.type("#find", "packing box");
      await page.waitForSelector("#found li .nm");
      await page.keyboard.press("Enter");
      await page.waitForFunction(() => document.querySelector("main h1")?.textContent.trim() === "Stuffing box");
    }, dir);
  } finally {
    await firefox.close();
  }
});
