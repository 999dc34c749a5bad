// Pages on paper: a drawing-office sheet with its border line, numbers and cautions, and none of
// the controls.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, scratch, words } from "./lib/edition.mjs";
import { reckon } from "./lib/native.mjs";
import { pdfinfoPath, pdftotextPath } from "./lib/programs.mjs";
import { enter, hasAnswered, readSheet, rowOf } from "./lib/sheet.mjs";

let browser;
const dir = scratch("print");
before(async () => void (browser = await launch()));
after(() => browser.close());

const points = { A4: [595, 842], Letter: [612, 792] };

/** Prints the page as it stands; says its text, pages, and what runs out of the paper. */
async function print(page, format) {
  const file = join(dir, `${Math.random().toString(36).slice(2)}.pdf`);
  writeFileSync(file, await page.pdf({ format, preferCSSPageSize: false }));
  const run = (program, ...args) => execFileSync(program, args, { encoding: "utf8", maxBuffer: 1 << 26 });
  const info = run(pdfinfoPath(), file);
  const size = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info);
  const boxes = run(pdftotextPath(), "-bbox", file, "-");
  const outside = [...boxes.matchAll(/<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)<\/word>/g)]
    .filter(([, x1, , x2]) => Number(x1) < 0 || Number(x2) > points[format][0])
    .map((m) => m[5]);
  const text = run(pdftotextPath(), "-layout", file, "-");
  return {
    text: text.replace(/[\s\u00a0]+/g, " "),
    sheets: text.split("\f").map((p) => p.replace(/[\s\u00a0]+/g, " ")),
    pages: Number(/Pages:\s+(\d+)/.exec(info)[1]),
    size: size.slice(1, 3).map((n) => Math.round(Number(n))),
    outside,
    empty: text.split("\f").slice(0, -1).map((p, i) => (p.trim() === "" ? i + 1 : 0)).filter(Boolean),
  };
}

/** What must not stand on paper: words of controls. */
const controls = ["sheet.print", "sheet.ask", "sheet.back", "sheet.carry", "sheet.take", "sheet.last", "theme.contrast", "skip", "strip.open"];

function checkSheet(printed, format, most, { title, facts }) {
  for (const i of [0, 1]) assert.ok(Math.abs(printed.size[i] - points[format][i]) <= 1, `the paper is ${printed.size} points`);
  assert.ok(printed.pages >= 1 && printed.pages <= most, `${printed.pages} pages, at most ${most} were expected`);
  assert.deepEqual(printed.empty, [], "empty pages");
  assert.deepEqual(printed.outside, [], "words that run out of the paper");
  for (const key of ["block.title", "block.scope", "block.version"]) assert.ok(printed.text.includes(words[key]), `the title block lacks “${words[key]}”`);
  assert.ok(printed.text.includes(title), `the title block lacks the title “${title}”`);
  if (facts) assert.ok(printed.text.includes(facts), `whose facts: ${facts}`);
  assert.ok(printed.text.includes(words["block.caution"].slice(0, 40)), "the line of caution is not printed");
  for (const key of controls) assert.ok(!printed.text.includes(words[key]), `a control is printed: “${words[key]}”`);
}

for (const format of ["A4", "Letter"]) {
  test(`a term on ${format}`, async () => {
    await withPage(browser, {}, async (page) => {
      await page.goto(address("terms/total-head.html"));
      await page.waitForFunction(hasAnswered);
      const printed = await print(page, format);
      checkSheet(printed, format, 8, { title: "Total head", facts: "Quillbeck Orchard" });
      for (const said of ["343 ft", "104.5 m", "6.384 ft", words["worked"], words["slips"], "column loss = 2.66 ft/100 ft × 240 ft = 6.384 ft"]) {
        assert.ok(printed.text.includes(said), `“${said}” is not printed`);
      }
    });
  });

  test(`the chain on ${format}, with what was typed`, async () => {
    await withPage(browser, {}, async (page) => {
      await page.goto(address("well-to-wire.html"));
      await page.waitForFunction(hasAnswered);
      await enter(page, "static-level", "152.5 ft");
      const sheet = await page.evaluate(readSheet);
      const printed = await print(page, format);
      checkSheet(printed, format, 8, { title: "From well to wire" });
      for (const row of sheet.rows.filter((r) => !r.choice && r.value !== "")) {
        const name = row.label.split(",")[0];
        assert.ok(printed.text.includes(name), `the line “${name}” is not printed`);
        assert.ok(printed.text.includes(row.value), `the number of ${name}, ${row.value}, is not printed`);
      }
      assert.ok(printed.text.includes(rowOf(sheet, "total-head").value));
      assert.ok(reckon("lift", new Map([["pumping-level", "207.5 ft"], ["discharge-elevation", "2 ft"]])).value === 209.5 && printed.text.includes("209.5"), "the lift with the typed level");
      const warned = await page.evaluate(() => Array.from(document.querySelectorAll("fact-sheet .warnings p:not(.open) > span"), (e) => e.textContent.replace(/\s+/g, " ").split(". ")[0].slice(0, 60)));
      assert.ok(warned.length > 0, "these facts give no caution");
      assert.equal(new Set(warned).size, warned.length, `a hazard is told twice: ${warned.join(" | ")}`);
      // the signal word is set in capitals by the style
      for (const first of warned) assert.ok(printed.text.toLowerCase().includes(first.toLowerCase()), `a caution is not printed: ${first}`);
    });
  });

  test(`a chapter on ${format}`, async () => {
    await withPage(browser, {}, async (page) => {
      await page.goto(address("chapters/levels-and-heads.html"));
      const said = await page.evaluate(() => Array.from(document.querySelectorAll("main h1, main .prose h2"), (e) => e.textContent.trim()));
      const printed = await print(page, format);
      checkSheet(printed, format, 14, { title: said[0] });
      for (const heading of said) assert.ok(printed.text.includes(heading.replace(/\s+/g, " ")), `the heading “${heading}” is not printed`);
      const answers = await page.evaluate(() => Array.from(document.querySelectorAll("details.question .answer"), (e) => e.textContent.trim()).length);
      if (answers > 0) assert.ok(printed.text.length > 1000);
    });
  });
}

for (const format of ["A4", "Letter"]) {
  test(`the pumps on ${format}: side by side, and each drawing on the sheet that names it`, async () => {
    await withPage(browser, { javaScriptEnabled: false }, async (page) => {
      await page.goto(address("builds/index.html"));
      const all = await print(page, format);
      checkSheet(all, format, 7, { title: words["builds.title"] });
      for (const build of ["water-lubricated", "oil-lubricated", "submersible"]) assert.match(all.sheets[0], new RegExp(build, "i"), `${build} is not on the first sheet`);
      await page.goto(address("builds/oil-lubricated.html"));
      const one = await print(page, format);
      for (const sheet of ["bowls", "stage", "column", "head", "motor"]) {
        const on = one.sheets.filter((s) => s.includes(words[`cut.says.${sheet}`]));
        assert.equal(on.length, 1, sheet);
        assert.ok(on[0].includes(words["cut.list"]), `${sheet}: the list is on another sheet`);
      }
    });
  });
}

for (const format of ["A4", "Letter"]) {
  test(`the take-off on ${format}: each group of pieces on one sheet`, async () => {
    await withPage(browser, {}, async (page) => {
      await page.goto(address("take-off.html"));
      await page.waitForFunction(hasAnswered);
      const printed = await print(page, format);
      checkSheet(printed, format, 6, { title: words["takeoff.title"], facts: "Quillbeck Orchard" });
      for (const said of ["asked 237 ft", "made 240 ft", "16,230 lb", "Demonstration bowl, not for order.", "competent person"]) assert.ok(printed.text.includes(said), `“${said}” is not printed`);
      for (const key of ["takeoff.copy", "takeoff.save"]) assert.ok(!printed.text.includes(words[key]), `a control is printed: “${words[key]}”`);
      const groups = await page.evaluate(() => Array.from(document.querySelectorAll(".piecetable tbody"), (b) => ({
        name: b.querySelector(".name").textContent, parts: Array.from(b.querySelectorAll("a"), (a) => a.textContent),
      })));
      assert.equal(groups.length, 5);
      for (const { name, parts } of groups) {
        const on = printed.sheets.filter((s) => s.includes(`${name} 1 ${parts[0]}`));
        assert.equal(on.length, 1, `the group ${name} begins on ${on.length} sheets`);
        for (const part of parts) assert.ok(on[0].includes(part), `${part} stands on another sheet than the head of its group, ${name}`);
      }
    });
  });
}

test("paper is white, whatever the screen was", async () => {
  await withPage(browser, { colorScheme: "dark" }, async (page) => {
    await page.goto(address("terms/total-head.html"));
    await page.locator(".paper label", { hasText: new RegExp(`^${words["theme.dark"]}$`) }).click();
    await page.emulateMedia({ media: "print" });
    const colours = await page.evaluate(() => {
      const of = (s) => getComputedStyle(document.querySelector(s));
      const luminance = (c) => { const [r, g, b] = c.match(/[\d.]+/g).map(Number); return (0.2126 * r + 0.7152 * g + 0.0722 * b) / 255; };
      const ground = [of("html"), of("body"), of("main")].map((c) => c.backgroundColor).find((c) => !/rgba\(0, 0, 0, 0\)|transparent/.test(c)) ?? "rgb(255, 255, 255)";
      return { ink: luminance(of("main .prose").color), ground: luminance(ground) };
    });
    assert.ok(colours.ground > 0.9 && colours.ink < 0.35, `ground ${colours.ground}, ink ${colours.ink}`);
  });
});
