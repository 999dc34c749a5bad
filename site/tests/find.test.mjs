// The search of the masthead: spelled well or badly, worked by keys, from file:// with no network.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, words, wordPattern } from "./lib/edition.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** Types a query and returns what is found, names first. */
async function find(page, query) {
  await page.fill("#find", "");
  await page.type("#find", query);
  await page.waitForFunction(() => !document.querySelector("#found").hidden);
  await page.evaluate(() => new Promise((r) => requestAnimationFrame(() => setTimeout(r))));
  return page.$$eval("#found li .nm", (list) => list.map((e) => e.textContent));
}

test("names, other names, slips of the finger and word forms lead to the page", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("index.html"));
    for (const [query, name] of [["total head", "Total head"], ["TDH", "Total head"], ["packing box", "Stuffing box"], ["impelers", "Impeller"],
      ["static lvel", "Static level"], ["spiders", "Tube centring spider"], ["pump level", "Pumping level"]]) {
      const names = await find(page, query);
      assert.ok(names.slice(0, 3).includes(name), `“${query}” finds ${names.slice(0, 5).join(", ")}, not ${name} among the first three`);
    }
    // every kind of page is found, and says what kind it is
    for (const [query, kind] of [["field head or total head", "pair"], ["materials against water", "choices"], ["readings of a field test", "faults"], ["course plan", "guide"]]) {
      await find(page, query);
      const kinds = await page.$$eval("#found li .kind", (list) => list.map((e) => e.textContent.split(",")[0]));
      assert.ok(kinds.slice(0, 6).includes(words["find.kind." + kind]), `“${query}” finds ${kinds.join(", ")}`);
    }
    await page.fill("#find", "zzzzqqq");
    await page.waitForSelector("#found .none");
    assert.match(await page.textContent("#found .none"), wordPattern("find.none"));
  });
});

test("it is worked by keys: a stroke begins, arrows choose, Enter goes, Escape leaves", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("parts/impeller.html"));
    await page.keyboard.press("/");
    assert.equal(await page.evaluate(() => document.activeElement.id), "find");
    const names = await find(page, "tension");
    assert.ok(names.length > 2);
    const marked = () => page.$eval("#find", (f) => document.getElementById(f.getAttribute("aria-activedescendant")).querySelector(".nm").textContent);
    assert.equal(await marked(), names[0]);
    await page.keyboard.press("ArrowDown");
    assert.equal(await marked(), names[1]);
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    assert.equal(await marked(), names.at(-1), "the list goes round");
    await page.keyboard.press("Escape");
    assert.ok(await page.$eval("#found", (l) => l.hidden));
    await find(page, "drawdown");
    await Promise.all([page.waitForURL(/terms\/drawdown\.html/), page.keyboard.press("Enter")]);
    assert.equal(await page.textContent("h1").then((t) => t.trim().startsWith("Drawdown")), true);
  });
});

test("without a script there is no dead field", async () => {
  await withPage(browser, { javaScriptEnabled: false }, async (page) => {
    await page.goto(address("index.html"));
    assert.equal(await page.locator("#find").count(), 0);
    assert.ok(words["nav.terms"]);
  });
});
