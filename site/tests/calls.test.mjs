// Prepared customer calls, driven at the desk from the first sentence to the printed sheet. All ten
// are worked through natively (build/index/calls_test.go); here two go through the page.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, project, scratch, words } from "./lib/edition.mjs";
import { pdfinfoPath, pdftotextPath } from "./lib/programs.mjs";
import { enter, factsOf, hasAnswered, readSheet, rowOf, settled } from "./lib/sheet.mjs";

const dir = scratch("calls");
let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** The lines of a call that are no remarks: what to do, and with what. */
function callOf(name) {
  const text = readFileSync(join(project, "testdata", "calls", name + ".txt"), "utf8");
  return text.split("\n").filter((l) => l !== "" && !l.startsWith("#")).map((l) => [l.slice(0, l.indexOf(":")), l.slice(l.indexOf(":") + 1).trim()]);
}

const plain = (text) => text.replace(/\s/g, "");

/** Does one line of a call, and tells how many actions it took. */
async function act(page, verb, text) {
  const [left, right] = text.split(" = ");
  if (verb === "customer") return void (await page.fill("#desk-customer", text)) ?? 1;
  if (verb === "say") {
    const before = await page.locator(".said").count();
    await page.fill("#desk-say", text);
    await page.press("#desk-say", "Enter");
    await page.waitForFunction((n) => document.querySelectorAll(".said").length > n, before);
    const sure = await page.locator(".said").first().locator(".putall").count();
    if (sure > 0) await page.keyboard.press("Enter");
    return 2 + sure;
  }
  if (verb === "take") {
    const name = await page.evaluate((id) => JSON.parse(document.querySelector("#desk").dataset.terms).find((t) => t.id === id).name, right);
    await page.locator(".said").first().locator("li.piece", { has: page.locator("q", { hasText: new RegExp(`^${left}$`) }) }).getByRole("button", { name: new RegExp(`^${name} `) }).first().click();
    return 1;
  }
  if (verb === "type") return void (await enter(page, left, right)) ?? 2;
  return 0;
}

for (const [name, printedHead] of [["02-sedgewray-dairy", /251\.5 ft/], ["10-quillbeck-ranges", /337(\.0)? to 353\.3 ft/]]) {
  test(`${name}: from what the customer says to the printed sheet`, async () => {
    await withPage(browser, {}, async (page) => {
      await page.goto(address("desk.html"));
      await page.waitForFunction(hasAnswered);
      const call = callOf(name);
      let actions = 1; // printing
      for (const [verb, text] of call) actions += await act(page, verb, text);
      assert.ok(actions < 15, `${actions} actions`);
      await settled(page);
      const sheet = await page.evaluate(readSheet);
      const { facts } = factsOf(sheet);
      const want = call.find(([verb]) => verb === "facts")[1].split(";").map((f) => f.trim().split(" = ")[0]).sort();
      assert.deepEqual([...facts.keys()].sort(), want);
      assert.match(`${rowOf(sheet, "total-head").value} ft`, printedHead);
      const file = join(dir, name + ".pdf");
      writeFileSync(file, await page.pdf({ format: "A4" }));
      const text = execFileSync(pdftotextPath(), ["-layout", file, "-"], { encoding: "utf8" }).replace(/[\s\u00a0]+/g, " ");
      assert.ok(Number(/Pages:\s+(\d+)/.exec(execFileSync(pdfinfoPath(), [file], { encoding: "utf8" }))[1]) <= 2, "more than two sheets");
      assert.match(text, printedHead);
      for (const [verb, said] of call) {
        if (verb === "customer" || verb === "say") assert.ok(plain(text).includes(plain(said)), `“${said}” is not printed`);
      }
      assert.ok(text.includes(words["desk.print.hangs"]), "what the head hangs on is not printed");
    });
  });
}
