// Rules of access on every kind of page, on every paper, with an edit and with an error on the sheet;
// what is drawn has a name; nothing moves for those who do not want it.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { inksBroken, violations } from "./lib/axe.mjs";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, samplePages, words } from "./lib/edition.mjs";
import { enter, hasAnswered, settled } from "./lib/sheet.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

async function choose(page, paper) {
  await page.locator(".paper label", { hasText: new RegExp(`^${words["theme." + paper]}$`) }).click();
  assert.equal(await page.evaluate(() => document.documentElement.dataset.theme), paper);
  const wells = await page.evaluate(() => Array.from(document.querySelectorAll("img.well"), (i) => i.getAttribute("src")));
  assert.ok(wells.length > 0 && wells.every((src) => src.endsWith(`#${paper}`)), `the drawn wells hear of the ${paper} paper: ${wells}`);
  // colours may move to their place
  await page.evaluate(() => Promise.all(document.getAnimations().map((a) => a.finished.catch(() => null))));
}

/** All rules on light paper, then those that hang on ink on the others. */
async function onEveryPaper(page) {
  await choose(page, "light");
  const found = await violations(page, "light");
  for (const paper of ["dark", "contrast"]) {
    await choose(page, paper);
    found.push(...(await inksBroken(page, paper)));
  }
  return found;
}

/** In the page: drawings that are neither named nor hidden from those who cannot see them. */
function nameless() {
  return Array.from(document.querySelectorAll("main svg, main img"))
    .filter((e) => e.getClientRects().length > 0 && !e.closest("[aria-hidden=true]") && !e.parentElement.closest("svg"))
    .filter((e) => (e.matches("img") ? !e.alt : !e.querySelector("title")?.textContent && !e.getAttribute("aria-label") && !e.getAttribute("aria-labelledby")))
    .map((e) => e.outerHTML.slice(0, 120));
}

/** In the page: what still moves although the reader wants no motion. */
function moving() {
  const long = (list) => list.split(",").some((t) => parseFloat(t) > 0.01);
  return Array.from(document.querySelectorAll("body *"))
    .filter((e) => { const c = getComputedStyle(e); return long(c.transitionDuration) || (c.animationName !== "none" && long(c.animationDuration)); })
    .map((e) => `${e.tagName.toLowerCase()}.${e.getAttribute("class")}`);
}

/** Pages of which another one of the same kind is looked at. */
const again = ["terms/stages.html", "parts/impeller.html", "chapters/powers-and-efficiencies.html", "practice/order-the-parts.html"];

test("every kind of page on every paper", async (t) => {
  await withPage(browser, { reducedMotion: "reduce" }, async (page, guard) => {
    guard.allow(/: net::ERR_ABORTED/); // a page is left before all of it has come; what is not there is not found
    for (const file of samplePages().filter((f) => !again.includes(f))) {
      await t.test(file, async () => {
        await page.goto(address(file));
        if (await page.locator("fact-sheet").count()) await page.waitForFunction(hasAnswered);
        const found = await onEveryPaper(page);
        assert.deepEqual(found, [], found.join("\n"));
        assert.deepEqual(await page.evaluate(nameless), [], "drawings without a name");
        assert.deepEqual([...new Set(await page.evaluate(moving))], [], "things that move");
      });
    }
  });
});

test("the chain after an edit, with an error, a clash and open questions", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("well-to-wire.html"));
    await page.waitForFunction(hasAnswered);
    await enter(page, "static-level", "150 ft");
    await enter(page, "discharge-pressure", "nonsense");
    await enter(page, "pumping-level", "230 ft");
    await enter(page, "setting", "");
    await page.getByRole("button", { name: words["sheet.steps"] }).click();
    await page.getByRole("button", { name: words["sheet.ask"] }).click();
    await settled(page);
    assert.ok((await page.locator("[aria-invalid=true]").count()) === 1 && (await page.locator("li.row.clash").count()) > 0, "the sheet is not in the state that is to be checked");
    const found = await onEveryPaper(page);
    assert.deepEqual(found, [], found.join("\n"));
  });
});

test("the take-off with open questions, refused, and with the table to be copied", async () => {
  const closed = `Object.defineProperty(navigator, "clipboard", { value: undefined })`;
  await withPage(browser, { before: closed }, async (page) => {
    await page.goto(address("take-off.html"));
    await page.waitForFunction(hasAnswered);
    await enter(page, "stages", "");
    await page.getByRole("button", { name: words["takeoff.copy"] }).click();
    await page.locator(".copytext").waitFor();
    const found = await violations(page, "open");
    await enter(page, "asked-setting", "600 ft");
    assert.ok((await page.locator(".piececaution.refuses").count()) === 1, "nothing is refused");
    found.push(...(await violations(page, "refused")));
    assert.deepEqual(found, [], found.join("\n"));
  });
});

test("a term and the chain on a phone, with the list of places open", async () => {
  await withPage(browser, { viewport: { width: 360, height: 740 }, isMobile: true, hasTouch: true }, async (page) => {
    const found = [];
    for (const file of ["terms/total-head.html", "well-to-wire.html", "take-off.html"]) {
      await page.goto(address(file));
      await page.waitForFunction(hasAnswered);
      await page.locator("details.strip > summary").tap();
      found.push(...(await violations(page, file)));
    }
    assert.deepEqual(found, [], found.join("\n"));
  });
});
