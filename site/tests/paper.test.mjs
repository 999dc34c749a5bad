// The print edition and the sheets of a class as PDF. A book of a few pages stands for the whole, which takes minutes to print.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { launch, withPage } from "./lib/chromium.mjs";
import { columnbowl, project, scratch, words } from "./lib/edition.mjs";
import { pdfinfoPath, pdftotextPath } from "./lib/programs.mjs";

const dir = scratch("paper");
const pdf = join(dir, "print.pdf");
let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

test("contents, numbered sheets with their title blocks, an index, and pages with numbers", async () => {
  const file = join(dir, "print.html");
  execFileSync(columnbowl(), ["bind", "--content", "testdata/bindery/content", "--print", file], { cwd: project });
  const sheets = await withPage(browser, { dir }, async (page) => {
    await page.goto(pathToFileURL(file).href);
    writeFileSync(pdf, await page.pdf({ preferCSSPageSize: true }));
    return page.$$eval("main", (list) => list.map((m) => ({
      number: m.querySelector(".paperno").textContent, title: m.querySelector("h1").firstChild.textContent.trim(), block: m.querySelectorAll(".blockt").length,
    })));
  });
  const info = execFileSync(pdfinfoPath(), [pdf], { encoding: "utf8" });
  const pages = Number(/Pages:\s+(\d+)/.exec(info)[1]);
  const [width, height] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info).slice(1).map((n) => Math.round(Number(n)));
  assert.deepEqual([width, height], [595, 842], "A4");
  assert.ok(sheets.length >= 4 && pages >= 4 && pages <= 3 + 2 * sheets.length, `${sheets.length} sheets on ${pages} pages`);
  assert.ok(sheets.every((s) => s.block === 1), "a sheet without a title block, or with two");
  const text = execFileSync(pdftotextPath(), ["-layout", pdf, "-"], { encoding: "utf8" }).split("\f").slice(0, -1);
  assert.equal(text.length, pages);
  text.forEach((t, i) => assert.match(t.trimEnd(), new RegExp(`(^|\\s)${i + 1}$`), `the number at the foot of page ${i + 1}`));
  const contents = text.find((t) => t.includes(words["bound.contents"]));
  const where = (t) => t.replace(/\s+/g, " ");
  for (const s of sheets) {
    // the contents lead to the number of the sheet, which stands at its head
    assert.ok(where(contents).replace(/ /g, "").includes((s.title + s.number).replace(/ /g, "")), `${s.title} is not in the contents as ${s.number}`);
  }
  const starts = sheets.map((s) => text.findIndex((t) => !t.includes(words["bound.contents"]) && t.includes(s.title) && t.includes(s.number)));
  assert.ok(starts.every((at, i) => at > 0 && (i === 0 || at >= starts[i - 1])), `the sheets begin on pages ${starts}, not in the order of the contents`);
  const index = text.slice(text.findIndex((t) => t.includes(words["bound.index"]))).join("\n");
  assert.match(where(index), /Drawdown T ?\d/);
  assert.ok(text.join("").includes(words["block.caution"].slice(0, 40)));
});

test("a class's sheets: one page each on either paper, and the key begins with all answers on one page", async () => {
  const list = join(dir, "class.csv");
  writeFileSync(list, "learner,name\n01,Learner 01\n02,Learner 02\n");
  for (const [paper, size] of [["a4", [595, 842]], ["letter", [612, 792]]]) {
    const out = join(dir, paper);
    execFileSync(columnbowl(), ["handout", "--class", list, "--exercise", "chain-of-six,which-build", "--seed", "7", "--paper", paper, "--out", out], { cwd: project, stdio: "ignore" });
    const pages = await withPage(browser, { dir: out }, async (page) => {
      const texts = {};
      for (const name of ["handouts", "key"]) {
        await page.goto(pathToFileURL(join(out, `${name}.html`)).href);
        writeFileSync(pdf, await page.pdf({ preferCSSPageSize: true }));
        texts[name] = execFileSync(pdftotextPath(), ["-layout", pdf, "-"], { encoding: "utf8" }).split("\f").slice(0, -1);
        const info = execFileSync(pdfinfoPath(), [pdf], { encoding: "utf8" });
        assert.deepEqual(/Page size:\s+([\d.]+) x ([\d.]+)/.exec(info).slice(1).map((n) => Math.round(Number(n))), size, `${paper}, ${name}`);
      }
      return texts;
    });
    assert.equal(pages.handouts.length, 4, `${paper}: the title block of a sheet stands on a page of its own`);
    pages.handouts.forEach((t, i) => assert.match(t, new RegExp(`Learner 0${i < 2 ? 1 : 2}`)));
    assert.equal((pages.key[0].match(/Learner 0[12]/g) ?? []).length, 4, `${paper}: the right answers of the class are not on the first page of the key`);
  }
});
