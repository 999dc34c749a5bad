// Tables of choices and faults: the rows follow the sheet, and say what they lack.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, words } from "./lib/edition.mjs";
import { hasAnswered } from "./lib/sheet.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

test("a fact decides rows, and its withdrawal leaves them unchecked", () =>
  withPage(browser, {}, async (page) => {
    await page.goto(address("choices/lubrication.html#facts=oil-permission:barred,setting:1200ft"));
    await page.waitForFunction(hasAnswered);
    const row = (id) => page.locator(`tr[data-row="${id}"]`);
    await page.locator('tr[data-row="oil-barred"][data-state="holds"]').waitFor();
    assert.equal(await row("very-long-shaft").getAttribute("data-state"), "holds");
    assert.equal(await row("crooked").getAttribute("data-state"), "unchecked");
    assert.match(await row("crooked").innerText(), /shape of the well/);
    assert.equal(await row("oil-barred").locator(".rulestate").innerText(), words["rules.state.holds"]);
    assert.match(await page.locator(".rulesum").innerText(), /^2 of /);
  }));

test("without a script the rows stand for the facts of the sheet", () =>
  withPage(browser, { javaScriptEnabled: false }, async (page) => {
    await page.goto(address("faults/field-test.html"));
    assert.equal(await page.locator('tr[data-row="worn"]').getAttribute("data-state"), "holds");
    assert.equal(await page.locator("tr[data-row]").count(), 16);
  }));
