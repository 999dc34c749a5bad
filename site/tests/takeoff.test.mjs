// The page that counts the pieces of a pump: the list follows the sheet, its lengths add up, and
// what is saved is what the command writes.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, columnbowl, contentDir, project, wordPattern, words } from "./lib/edition.mjs";
import { printedNumber } from "./lib/native.mjs";
import { enter, factsOf, field, hasAnswered, readSheet, settled, typeOver } from "./lib/sheet.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const still = { javaScriptEnabled: false };

/** Opens the page in a context, waits for the engine, and gives the work the page. */
const opened = (options, work) => withPage(browser, options, async (page) => {
  await page.goto(address("take-off.html"));
  await page.waitForFunction(hasAnswered);
  return work(page);
});

/** In the page: the list as a person sees it. */
function readList() {
  const seen = (e) => e.getClientRects().length > 0;
  const text = (e) => {
    if (!e) return "";
    const copy = e.cloneNode(true);
    const hidden = document.documentElement.dataset.units === "si" ? ".only-us" : ".only-si";
    copy.querySelectorAll(hidden).forEach((x) => x.remove());
    return copy.textContent.replace(/\s+/g, " ").trim();
  };
  const all = (selector) => Array.from(document.querySelectorAll(".listing " + selector)).filter(seen);
  return {
    pump: text(all(".pump b")[0]),
    asked: text(document.querySelector(".pump [data-id='asked-setting'] .us")),
    made: text(document.querySelector(".pump [data-id='setting'] .us")),
    groups: all(".piecetable tbody").map((b) => b.dataset.group),
    lines: all(".piecetable tr[data-part]").map((tr) => {
      const cells = Array.from(tr.cells, text);
      return { part: tr.dataset.part, group: tr.closest("tbody").dataset.group, count: cells[0], name: text(tr.querySelector("a")), label: text(tr.querySelector(".label")), each: cells[2], all: cells[3], mass: cells[4] };
    }),
    runs: all(".pieceruns li").map(text),
    hook: text(all(".hook strong .us")[0]),
    hookSize: all(".hook strong .us").map((e) => parseFloat(getComputedStyle(e).fontSize))[0] ?? 0,
    totals: Object.fromEntries(all(".piecetotals tr").map((tr) => [tr.dataset.id, text(tr.querySelector(".us"))])),
    open: all(".hookopen, .openmark").map(text),
    totalSize: all(".piecetotals .us").map((e) => parseFloat(getComputedStyle(e).fontSize))[0] ?? 0,
    cautions: all(".piececaution").map((p) => p.dataset.caution),
    refused: all(".piececaution.refuses").map((p) => p.dataset.caution),
    asks: all(".pieceasks li").map((li) => ({ id: li.dataset.id, ask: text(li.querySelector(".ask")) })),
    notes: all(".piecenotes li").map(text),
  };
}

const listOf = (page) => page.evaluate(readList);
const feet = (text) => printedNumber(text.replace(/[\s\u00a0]*(ft|lb)$/, ""));

/** What the command writes for the facts that stand on the sheet. */
async function command(page, ...flags) {
  const { facts } = factsOf(await page.evaluate(readSheet));
  const args = ["takeoff", ...Array.from(facts, ([id, text]) => `${id}=${text}`), ...flags, "--content", contentDir()];
  const run = spawnSync(columnbowl(), args, { cwd: project, encoding: "utf8" });
  assert.ok(run.status === 0 || run.status === 1, run.stderr);
  return run.stdout;
}

/** Presses “Save as CSV” and reads the file. */
async function saved(page) {
  const coming = page.waitForEvent("download");
  await page.getByRole("button", { name: words["takeoff.save"] }).click();
  const file = await coming;
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), "utf8") };
}

/** The pieces of each run add up to what the pump is made. */
function addsUp(list) {
  const runs = {
    column: ["column-adapter", "adjusting-nipple", "top-column-pipe", "column-pipe", "bottom-column-pipe"],
    shaft: ["line-shaft"], tube: ["enclosing-tube"], riser: ["drop-pipe"],
  };
  const made = feet(list.made);
  let checked = 0;
  for (const [run, parts] of Object.entries(runs)) {
    const lines = list.lines.filter((l) => parts.includes(l.part));
    if (lines.length === 0) continue;
    const sum = lines.reduce((n, l) => n + Number(l.count) * feet(l.each), 0);
    assert.ok(Math.abs(sum - made) < 1e-9, `the ${run} adds up to ${sum} ft, made ${made} ft: ${JSON.stringify(lines)}`);
    for (const l of lines) assert.ok(Math.abs(Number(l.count) * feet(l.each) - feet(l.all)) < 1e-9, `${l.name}: ${l.count} × ${l.each} is not ${l.all}`);
    assert.ok(list.runs.some((r) => r.includes(run) && r.includes(list.made)), `nothing says that the ${run} adds up: ${list.runs}`);
    checked++;
  }
  return checked;
}

test("without a script Quillbeck Orchard stands there: asked 237 ft, made 240 ft", async () => {
  await withPage(browser, still, async (page) => {
    await page.goto(address("take-off.html"));
    const list = await listOf(page);
    assert.equal(list.asked.replace(/\u00a0/g, " "), "237 ft");
    assert.equal(list.made, "240 ft");
    assert.deepEqual(list.groups, ["driver", "head", "column", "bowls", "suction"]);
    assert.equal(addsUp(list), 3);
    assert.equal(list.hook, list.totals["hook-weight-full"]);
    assert.ok(feet(list.hook) > feet(list.totals["hook-weight-dry"]), "the smaller weight is printed large");
    assert.ok(list.hookSize > 1.5 * list.totalSize, `the weight is ${list.hookSize} px, a line ${list.totalSize} px`);
    assert.ok(list.notes.some((n) => n.startsWith("Demonstration bowl, not for order")));
    assert.ok(list.notes.some((n) => n.includes("competent person")));
    assert.equal(await page.locator(".pieces button").count(), 0);
    await page.locator(".piecetable a").first().click();
    await page.waitForURL(/parts\/.*\.html$/);
  });
});

test("the living list is the printed one, node by node, until a fact changes", async () => {
  const mark = () => document.querySelectorAll(".listing > *, .listing tbody").forEach((e) => (e.printed = true));
  const kept = () => Array.from(document.querySelectorAll(".listing > *, .listing tbody"), (e) => [e.dataset.group ?? e.className, e.printed === true]);
  await withPage(browser, { before: `document.addEventListener("DOMContentLoaded", ${mark})` }, async (page) => {
    await page.goto(address("take-off.html"));
    await page.waitForFunction(hasAnswered);
    const first = await page.evaluate(kept);
    assert.ok(first.length > 15, "hardly any nodes");
    assert.deepEqual(first.filter(([, is]) => !is), [], "made anew although nothing changed");
    await enter(page, "stages", "9");
    const second = await page.evaluate(kept);
    assert.ok(second.some(([name, is]) => name === "bowls" && !is), "the bowls did not change");
    assert.ok(second.some(([name, is]) => name === "driver" && is), "the driver was made anew");
  });
});

test("any setting from 20 to 1,000 ft says what can be made, and the pieces are that long", async () => {
  await opened({}, async (page) => {
    await enter(page, "well-depth", "");
    for (const asked of [20, 23, 57.5, 118, 236.1, 240, 241, 333, 500, 777, 1000]) {
      await enter(page, "asked-setting", `${asked} ft`);
      const list = await listOf(page);
      assert.deepEqual(list.refused, [], `${asked} ft is refused`);
      assert.equal(feet(list.asked), asked);
      assert.ok(feet(list.made) >= asked && feet(list.made) < asked + 5, `asked ${asked} ft, made ${list.made}`);
      assert.equal(addsUp(list), 3, `${asked} ft`);
    }
  });
});

test("a pump of another build has other pieces, and asks for other facts", async () => {
  await opened({}, async (page) => {
    await page.locator(field("build")).selectOption("submersible");
    await settled(page);
    let list = await listOf(page);
    assert.match(list.pump, /^Submersible/);
    assert.ok(list.lines.some((l) => l.part === "submersible-motor") && !list.lines.some((l) => l.part === "line-shaft" || l.part === "oil-reservoir"));
    assert.ok(list.asks.some((a) => a.id === "surface-cable-length" && a.ask.endsWith("?")), `it asks for ${JSON.stringify(list.asks)}`);
    await enter(page, "surface-cable-length", "45 ft");
    await enter(page, "motor-rating", "100 hp");
    list = await listOf(page);
    assert.ok(feet(list.totals["cable-length"]) > 237 + 45 && list.asks.length === 0, JSON.stringify(list.asks));
    assert.equal(addsUp(list), 1);
    await page.locator(field("build")).selectOption("water-lubricated");
    await settled(page);
    list = await listOf(page);
    assert.match(list.pump, /^Water-lubricated/);
    assert.equal(addsUp(list), 2);
    assert.ok(list.asks.some((a) => a.id === "prelubrication"));
    await page.locator(field("build")).selectOption("");
    await settled(page);
    list = await listOf(page);
    assert.deepEqual([list.pump, list.lines.length, list.asks.map((a) => a.id)], ["", 0, ["build"]]);
  });
});

test("a missing fact is named with its question, and the rest is listed", async () => {
  await opened({}, async (page) => {
    await enter(page, "asked-setting", "");
    let list = await listOf(page);
    assert.ok(list.asks.some((a) => a.id === "asked-setting" && a.ask.endsWith("?")));
    assert.equal(list.lines.find((l) => l.part === "column-pipe").count, "?");
    assert.equal(list.lines.find((l) => l.part === "impeller").count, "8");
    assert.ok(list.runs.every((r) => wordPattern("takeoff.run.open").test(r)) && list.runs.length === 3, list.runs.join("; "));
    assert.equal(list.made, "");
    assert.deepEqual([list.hook, list.open], ["", [words["takeoff.open"], words["takeoff.hook.open"]]]);
    await enter(page, "asked-setting", "237 ft");
    list = await listOf(page);
    assert.deepEqual([list.asks, list.made, list.open], [[], "240 ft", []]);
  });
});

test("what cannot be made is refused by name, and nothing is listed", async () => {
  await opened({}, async (page) => {
    await enter(page, "asked-setting", "600 ft");
    const list = await listOf(page);
    assert.deepEqual(list.refused, ["setting/deeper-than-the-well"]);
    assert.deepEqual([list.lines.length, list.hook, list.runs.length], [0, "", 0]);
    assert.equal(await page.locator(".warnings p:not(.open)", { hasText: await page.locator(".piececaution.refuses").innerText() }).count(), 0, "it is told twice");
    const csv = (await saved(page)).text;
    assert.match(csv, /^,refused,setting\/deeper-than-the-well,/m);
    assert.equal(csv, await command(page, "--csv"));
  });
});

test("the saved file is what the command writes, byte for byte, in both systems and for every build", async () => {
  await opened({}, async (page) => {
    const first = await saved(page);
    assert.equal(first.name, "take-off-oil-lubricated.csv");
    assert.ok(first.text.split("\n").length > 60 && /^41,column,column-pipe,Column pipe,standard section,,23,10,230,/m.test(first.text), first.text.slice(0, 300));
    assert.equal(first.text, await command(page, "--csv"));
    await page.locator(".tools .switch label", { hasText: words["units.si"] }).click();
    assert.equal((await saved(page)).text, await command(page, "--csv", "--si"));
    for (const build of ["water-lubricated", "submersible"]) {
      await page.locator(field("build")).selectOption(build);
      await settled(page);
      assert.equal((await saved(page)).text, await command(page, "--csv", "--si"), build);
    }
    await page.locator(field("build")).selectOption("");
    await settled(page);
    await page.getByRole("button", { name: words["takeoff.save"] }).click();
    await page.locator(".pieces .news", { hasText: words["takeoff.nothing"] }).waitFor();
  });
});

test("the units switch turns the list round", async () => {
  await opened({}, async (page) => {
    await page.locator(".tools .switch label", { hasText: words["units.si"] }).click();
    const list = await listOf(page);
    const pipe = list.lines.find((l) => l.part === "column-pipe");
    assert.deepEqual([pipe.each.replace(/\s/g, " "), pipe.all.replace(/\s/g, " ")], ["3.048 m", "70.1 m"]);
    const sizes = await page.evaluate(() => [".si", ".us"].map((s) => parseFloat(getComputedStyle(document.querySelector(`.hook ${s}`)).fontSize)));
    assert.ok(sizes[0] > sizes[1], `SI stands ${sizes[0]} px high, US ${sizes[1]} px`);
  });
});

test("the table goes to the clipboard, or stands there selected", async () => {
  const copy = (page) => page.getByRole("button", { name: words["takeoff.copy"] }).click();
  const rows = (text) => text.replace(/\n$/, "").split("\n").map((line) => line.split("\t"));
  const same = async (text, page) => {
    const csv = await command(page, "--csv");
    assert.equal(rows(text).length, csv.trimEnd().split("\n").length);
    assert.ok(rows(text).every((r) => r.length === 11), "a row of another width");
    assert.deepEqual(rows(text).find((r) => r[2] === "column-pipe").slice(3, 9), ["Column pipe", "standard section", "", "23", "10", "230"]);
  };
  const taken = `Object.defineProperty(navigator, "clipboard", { value: { writeText: async (t) => void (window.taken = t) } })`;
  await opened({ before: taken }, async (page) => {
    await copy(page);
    await page.locator(".pieces .news", { hasText: words["takeoff.copied"] }).waitFor();
    await same(await page.evaluate(() => window.taken), page);
  });
  const refused = `Object.defineProperty(navigator, "clipboard", { value: { writeText: async () => { throw new Error("no") } } })`;
  for (const before of [refused, `Object.defineProperty(navigator, "clipboard", { value: undefined })`]) {
    await opened({ before }, async (page) => {
      await copy(page);
      await copy(page); // twice gives one box, not two
      assert.equal(await page.locator(".copytext").count(), 1);
      const box = await page.evaluate(() => {
        const e = document.activeElement;
        return { text: e.value.slice(e.selectionStart, e.selectionEnd), whole: e.value.length, name: e.getAttribute("aria-label") };
      });
      assert.equal(box.text.length, box.whole);
      assert.equal(box.name, words["takeoff.copytext"]);
      await same(box.text, page);
    });
  }
});

test("it can be worked with the keyboard alone, and news is told", async () => {
  await opened({}, async (page) => {
    await typeOver(page, "asked-setting", "250 ft");
    // the list follows while somebody types: nothing has left the field
    await page.waitForFunction(() => document.querySelector(".pump [data-id='setting'] .us")?.textContent.replace(/\s+/g, " ") === "250 ft");
    await page.locator(".pieces button").first().focus();
    await page.keyboard.press("Tab");
    assert.equal(await page.evaluate(() => document.activeElement.textContent), words["takeoff.save"]);
    const coming = page.waitForEvent("download");
    await page.keyboard.press("Enter");
    await coming;
    const status = page.locator(".pieces [role=status]");
    assert.match(await status.innerText(), wordPattern("takeoff.saved"));
    await page.keyboard.press("Tab");
    assert.equal(await page.evaluate(() => document.activeElement.closest(".listing a, .listing") !== null), true);
  });
});
