// The prepared questions of the desk and the chain behind a number, against the native tool.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, words } from "./lib/edition.mjs";
import { isPrinted, reckon } from "./lib/native.mjs";
import { hasAnswered, readSheet, rowOf } from "./lib/sheet.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const facts = [["static-level", "140 ft"], ["drawdown", "55 ft"], ["capacity", "800 gpm"], ["discharge-pressure", "60 psi"], ["build", "oil-lubricated"], ["setting", "260 ft"], ["column-size", "8 in"], ["tube-size", "2.5 in"], ["discharge-elevation", "2 ft"]];
const link = "#facts=" + facts.map(([t, v]) => `${t}:${encodeURIComponent(v.replace(" ", ""))}`).join(",") + "&want=total-head";

const cells = (page, term) => page.locator(".whatif tr", { has: page.locator(`a[href="terms/${term}.html"]`) }).locator("td .only-us").allInnerTexts();
const native = (list, term) => reckon(term, new Map(list)).value;
const number = (text) => text.replace(/[^0-9.−-].*$/, "");

test("a prepared question opens with the numbers of the sheet, and tells what is, what would be, and the difference", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("desk.html" + link));
    await page.waitForFunction(hasAnswered);
    await page.getByRole("button", { name: "What if the water level falls?", exact: true }).click();
    await page.waitForSelector(".whatif table");
    const now = native(facts, "total-head");
    const deeper = (by) => native(facts.map(([t, v]) => [t, t === "static-level" ? `${140 + by} ft` : v]), "total-head");
    let head = await cells(page, "total-head");
    assert.ok(isPrinted(number(head[0]), now) && isPrinted(number(head[1]), deeper(50)), head.join(", "));
    assert.match(head[2], /^\+50(\.0)?\sft$/);
    await page.fill(".whatif input", "20 ft");
    await page.waitForFunction(() => /^\+20/.test(document.querySelector(".whatif tbody tr .num:last-child .only-us")?.textContent ?? ""));
    head = await cells(page, "total-head");
    assert.ok(isPrinted(number(head[1]), deeper(20)), head.join(", "));
    assert.match(await page.locator(".whatif .answer").innerText(), new RegExp(words["sheet.missing.title"].replace(/[.?]/g, "\\$&")), "the power cannot be had yet, and is not asked for");
    await page.getByRole("button", { name: "Will a bigger column pay?", exact: true }).click();
    await page.waitForFunction(() => document.querySelector(".whatif a[href='terms/column-size.html']"));
    const loss = await cells(page, "column-loss");
    assert.ok(isPrinted(number(loss[1]), native(facts.map(([t, v]) => [t, t === "column-size" ? "10 in" : v]), "column-loss")), loss.join(", "));
    await page.setViewportSize({ width: 360, height: 740 });
    assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 360, "the page runs out sideways");
    await page.evaluate(axe);
    const found = await page.evaluate(async () => (await window.axe.run(document.querySelector(".whatif"), { runOnly: ["wcag2a", "wcag2aa"], preload: false })).violations.map((v) => v.id));
    assert.deepEqual(found, []);
  });
});

test("why: from every number the chain opens down to the given facts, each line linked", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("desk.html" + link));
    await page.waitForFunction(hasAnswered);
    const sheet = await page.evaluate(readSheet);
    assert.notEqual(rowOf(sheet, "total-head").value, "");
    await page.locator("li.row[data-term='total-head'] .whybutton").click();
    await page.waitForSelector(".whybox li");
    const lines = await page.$$eval(".whybox li", (l) => l.map((e) => ({ text: e.innerText, given: e.classList.contains("given"), links: Array.from(e.querySelectorAll("a"), (a) => a.getAttribute("href")) })));
    const given = lines.filter((l) => l.given).map((l) => l.links[0]);
    for (const [term] of facts) if (term !== "build") assert.ok(given.includes(`terms/${term}.html`), `${term} is not in the chain`);
    assert.equal(lines.at(-1).links[0], "terms/total-head.html");
    assert.ok(lines.at(-1).text.includes(rowOf(sheet, "total-head").value));
    assert.ok(lines.some((l) => l.links.some((h) => h.startsWith("sources.html#"))), "no published check is linked");
    assert.equal(await page.locator("li.row[data-term='static-level'] .whybutton:visible").count(), 0, "a given fact has no why");
  });
});

// The same job with two ranges and bowls chosen. The place where the motor changes is compared
// with the native engine on both sides of it.
test("with ranges: why says so, the cost of running is a range, and the motor tells where it changes", async () => {
  const pump = [["bowl-family", "lapwing-10"], ["speed", "1770 rpm"], ["shaft-diameter", "1.6875 in"], ["motor-efficiency", "94.1 %"], ["energy-price", "0.12"], ["running-hours", "2000 h"]];
  const at = (capacity) => [...facts.map(([t, v]) => [t, t === "capacity" ? capacity : v]), ...pump];
  await withPage(browser, {}, async (page) => {
    await page.goto(address("desk.html#facts=" + at("600 to 900 gpm").map(([t, v]) => `${t}:${encodeURIComponent(v)}`).join(",") + "&want=total-head"));
    await page.waitForFunction(hasAnswered);
    await page.locator("li.row[data-term='total-head'] .whybutton").click();
    await page.waitForSelector(".whybox li");
    assert.match((await page.locator(".whybox").innerText()).replace(/\u00a0/g, " "), new RegExp(words["desk.why.ranged"].slice(0, 40) + "[^]*750 gpm, given as 600 to 900 gpm[^]*total head = .* over the ranges"));
    await page.getByRole("button", { name: "What will it cost to run?", exact: true }).click();
    await page.waitForSelector(".whatif table");
    assert.match((await cells(page, "energy-cost"))[0].replace(/\s/g, " "), /^[\d,]+ to [\d,]+ in your currency$/);
    await page.getByRole("button", { name: "What motor?", exact: true }).click();
    await page.waitForSelector(".whatif .turns");
    const line = (await page.locator(".whatif .turns .only-us").first().innerText()).replace(/\s/g, " ");
    const told = [...line.matchAll(/up to ([\d.]+) gpm (\d+) hp/g)].map((m) => [Number(m[1]), Number(m[2])]);
    assert.ok(/^Motor rating, by the capacity: /.test(line) && told.length > 0, line);
    const rating = (gpm) => native(at(`${gpm} gpm`), "motor-rating");
    const [place, below] = told.at(-1);
    const above = Number(/above that (\d+) hp/.exec(line)[1]);
    assert.ok(Math.abs(rating(place - 0.1) - below) < 0.5 && Math.abs(rating(place + 0.1) - above) < 0.5, line);
    await page.emulateMedia({ media: "print" });
    assert.ok((await page.locator(".deskprint").innerText()).includes(words["sheet.turns"]), "where the motor changes is not on paper");
  });
});
