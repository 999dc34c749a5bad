// The desk as it is worked at a counter: a whole call from the first sentence to the printed sheet,
// what is ambiguous or contradicts, the file, the link, the keyboard, and paper.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { after, before, test } from "node:test";
import Ajv from "ajv/dist/2020.js";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, project, scratch, words, wordPattern } from "./lib/edition.mjs";
import { isPrinted, printedNumber, reckon } from "./lib/native.mjs";
import { pdfinfoPath, pdftotextPath } from "./lib/programs.mjs";
import { enter, factsOf, hasAnswered, readSheet, rowOf, settled } from "./lib/sheet.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const dir = scratch("desk");
let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const call = "well 180 ft static, draws down 40 at 400 gpm, wants 60 psi, 1500 ft of 8 inch main, 12 inch casing";

async function open(page, fragment = "") {
  await page.goto(address("desk.html" + fragment));
  await page.waitForFunction(hasAnswered);
}

const button = (page, key, ...args) => page.getByRole("button", { name: args.reduce((t, a, i) => t.replace(`{${i}}`, a), words[key]), exact: true });
const piece = (page, text) => page.locator(".said").first().locator("li.piece", { has: page.locator("q", { hasText: new RegExp(`^${text}$`) }) });
const told = (page) => page.locator(".deskbar .news").innerText();

/** Says a sentence, as a person does: two actions. */
async function hear(page, text) {
  const before = await page.locator(".said").count();
  await page.fill("#desk-say", text);
  await page.press("#desk-say", "Enter");
  await page.waitForFunction((n) => document.querySelectorAll(".said").length > n, before);
}

async function factsNow(page) {
  await settled(page);
  return factsOf(await page.evaluate(readSheet)).facts;
}

test("a whole call, from the first sentence to the printed sheet, in fewer than 15 actions", async () => {
  await withPage(browser, {}, async (page) => {
    let actions = 0;
    const act = async (n, work) => {
      actions += n;
      await work();
    };
    await open(page);
    await act(1, () => page.fill("#desk-customer", "Sedgewray Dairy"));
    await act(2, () => hear(page, call));
    await act(1, () => page.keyboard.press("Enter")); // puts the sure ones on the sheet
    await act(1, () => page.getByRole("button", { name: "Discharge pressure 60 psi", exact: true }).click());
    await act(1, () => page.getByRole("button", { name: "Capacity 400 gpm", exact: true }).click());
    await act(2, () => hear(page, "oil lubricated, pump set at 240 ft, 6 inch column, 2 1/2 inch tube"));
    await act(1, () => page.keyboard.press("Enter"));
    await act(2, () => enter(page, "discharge-elevation", "2 ft"));
    await settled(page);
    const sheet = await page.evaluate(readSheet);
    const { facts } = factsOf(sheet);
    const native = reckon("total-head", facts);
    assert.ok(native.value > 330, `the facts do not lead to a head: ${JSON.stringify([...facts])} ${JSON.stringify(native)}`);
    assert.ok(isPrinted(rowOf(sheet, "total-head").value, native.value), `${rowOf(sheet, "total-head").value}, native ${native.value}`);
    assert.ok((await page.locator(".dutyline").innerText()).includes(rowOf(sheet, "total-head").value));
    const printed = await print(page, "A4");
    actions += 1;
    assert.ok(actions < 15, `${actions} actions`);
    for (const said of ["Sedgewray Dairy", rowOf(sheet, "total-head").value, "180 ft", "400 gpm", words["desk.print.open"], call.slice(0, 30)]) {
      assert.ok(printed.text.includes(said), `“${said}” is not printed`);
    }
  });
});

test("what is for readers without a script is not shown to others", async () => {
  await withPage(browser, { viewport: { width: 360, height: 740 } }, async (page) => {
    await open(page);
    for (const kind of [".still", ".deskasked", ".deskprint"]) assert.equal(await page.locator(`main ${kind}`).isVisible(), false, kind);
  });
});

test("what could mean two things is asked, and no number of Enters decides it", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await hear(page, call);
    for (let i = 0; i < 4; i++) await page.keyboard.press("Enter");
    const facts = await factsNow(page);
    assert.equal(facts.get("static-level"), "180ft");
    assert.ok(!facts.has("discharge-pressure") && !facts.has("delivery-pressure"), "an ambiguous piece went on the sheet");
    assert.ok(await piece(page, "60 psi").evaluate((e) => e.classList.contains("open")));
    assert.match(await piece(page, "60 psi").innerText(), /discharge pressure, the delivery pressure/);
    await page.getByRole("button", { name: "Delivery pressure 60 psi", exact: true }).click();
    assert.equal((await factsNow(page)).get("delivery-pressure"), "60psi");
  });
});

test("a reading is corrected, dropped and taken off with one click each", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await hear(page, call);
    await button(page, "desk.put.all", 3).click();
    await piece(page, "8 inch").getByRole("button", { name: "Column size 8 inch", exact: true }).click();
    let facts = await factsNow(page);
    assert.equal(facts.get("column-size"), "8inch");
    assert.ok(!facts.has("pipe-size"), "the former meaning is still on the sheet");
    await piece(page, "40").getByRole("button", { name: words["desk.off"] }).click();
    facts = await factsNow(page);
    assert.ok(!facts.has("drawdown"));
    await piece(page, "60 psi").getByRole("button", { name: words["desk.drop"] }).click();
    assert.ok(await piece(page, "60 psi").evaluate((e) => e.classList.contains("dropped")));
  });
});

test("a fact that contradicts the sheet is shown with both values, and the caller chooses", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await hear(page, "180 ft static, draws down 40 at 400 gpm");
    await page.keyboard.press("Enter");
    await hear(page, "static 190 ft, pumping level 250 ft");
    for (let i = 0; i < 3; i++) await page.keyboard.press("Enter");
    assert.equal((await factsNow(page)).get("static-level"), "180ft", "the second value went on the sheet by itself");
    const two = await piece(page, "190 ft").innerText();
    assert.ok(two.includes("190 ft") && two.includes("180 ft"), two);
    assert.match(await piece(page, "250 ft").innerText(), /220\sft/, "what follows from the sheet is not told");
    assert.ok(!(await factsNow(page)).has("pumping-level"));
    await button(page, "desk.take", "190 ft").click();
    assert.equal((await factsNow(page)).get("static-level"), "190ft");
    // the same length in metres is no other value
    await hear(page, "static 57.912 m");
    assert.ok(await piece(page, "57.912 m").evaluate((e) => e.classList.contains("on")));
  });
});

test("the questions come in order, tell why, lead to their line and go when they are answered", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    const list = () => page.$$eval(".asknext li", (l) => l.map((e) => ({ ask: e.querySelector(".ask").textContent, why: e.querySelector(".why").textContent, term: e.querySelector(".to").textContent })));
    const first = await list();
    assert.equal(first[0].term, "Build");
    assert.ok(first.every((q) => q.ask.endsWith("?") || q.ask.endsWith(")")) && first.every((q) => q.why.length > 20));
    await page.locator(".asknext .to").nth(1).click();
    assert.equal(await page.evaluate(() => document.activeElement.closest("li.row")?.dataset.term), "casing-inside-diameter");
    await page.keyboard.type("12 in");
    await page.keyboard.press("Enter");
    assert.ok(!(await list()).some((q) => q.term === "Casing inside diameter"), "an answered question is still asked");
    await page.locator(".asknext .acts button").click();
    assert.ok((await list()).length > 20);
    assert.match(await page.locator(".asknext").innerText(), wordPattern("desk.waits.many"));
  });
});

/** An enquiry with a bit of everything. */
async function fill(page) {
  await open(page);
  await page.fill("#desk-customer", "Sedgewray Dairy");
  await page.fill("#desk-telephone", "555 0142");
  await page.fill("#desk-job", "new well behind the barn");
  await page.locator(".desknotes summary").click();
  await page.fill("#desk-note-use", "farm");
  await hear(page, call + ", 50 horse motor, speed 1770 rpm");
  await page.keyboard.press("Enter");
  await piece(page, "60 psi").getByRole("button", { name: words["desk.drop"] }).click();
  await enter(page, "setting", "240 ft");
  await settled(page);
}

async function save(page) {
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, "desk.save").click()]);
  const file = join(dir, `${Math.random().toString(36).slice(2)}.json`);
  await download.saveAs(file);
  return { file, name: download.suggestedFilename(), text: readFileSync(file, "utf8") };
}

test("to the bowls and back: nothing is typed twice, and a curve of one's own is in the file, the link and on paper", async () => {
  const valid = new Ajv({ strict: true }).compile(JSON.parse(readFileSync(join(project, "site", "enquiry.schema.json"), "utf8")));
  await withPage(browser, {}, async (page) => {
    await open(page, "#facts=build:water-lubricated,capacity:220gpm,total-head:237ft,casing-inside-diameter:8in&want=total-head");
    await page.fill("#desk-customer", "Sedgewray Dairy");
    await hear(page, "static 57 ft");
    await page.keyboard.press("Enter");
    await settled(page);
    await page.waitForTimeout(400); // the desk keeps what it has after 300 ms
    await page.getByRole("link", { name: words["desk.bowls"] }).click();
    await page.waitForSelector("[data-family=dunlin-6] .acts a");
    assert.equal(await page.inputValue("li[data-term=static-level] input"), "57");
    await page.locator(".owncurve summary").click();
    const type = (id, text) => page.fill(`.owncurve input[aria-describedby='${id}']`, text);
    await type("own-name--1--1", "Sheet 12");
    await type("own-speed--1--1", "3500");
    for (const [i, point] of [["0", "80"], ["150", "70"], ["300", "40"]].entries()) for (const k of [0, 1]) await type(`own-point-${i}-${k}`, point[k]);
    await page.locator("[data-family=other-bowl] .acts a").click();
    await page.waitForSelector(".deskcurve p");
    assert.equal(await page.inputValue("#desk-customer"), "Sedgewray Dairy", "the head of the call was lost");
    assert.equal(await page.locator(".said").count(), 1, "the sentences of the call were lost");
    assert.match(await page.locator(".deskcurve p").innerText(), /Sheet 12/);
    const saved = await save(page);
    const json = JSON.parse(saved.text);
    assert.ok(valid(json), JSON.stringify(valid.errors));
    assert.deepEqual(json.curve, { name: "Sheet 12", figures: { speed: "3500" }, points: [{ capacity: "0", head: "80" }, { capacity: "150", head: "70" }, { capacity: "300", head: "40" }] });
    assert.deepEqual(json.facts.find((f) => f.term === "static-level"), { term: "static-level", text: "57 ft", from: "said", words: "57 ft" });
    assert.deepEqual(["bowl-family", "stages"].map((t) => json.facts.find((f) => f.term === t)?.text), ["other-bowl", "5"]);
    await button(page, "desk.link").click();
    const link = await page.inputValue("#desk-link");
    const load = async (text) => {
      writeFileSync(join(dir, "curve.json"), text);
      await page.setInputFiles("#desk-file", join(dir, "curve.json"));
      await page.waitForFunction((t) => document.querySelector(".deskbar .news").textContent !== t, words["desk.link.copied"]);
      return told(page);
    };
    assert.match(await load(saved.text.replace('"head": "40"', '"head": "90"')), /head rises.*Nothing was changed/);
    assert.equal((await save(page)).text, saved.text, "a damaged curve changed the enquiry");
    await page.emulateMedia({ media: "print" });
    assert.match(await page.locator(".deskprint .curve").innerText(), /Sheet 12[^]*150\s+70/);
    await page.emulateMedia({ media: "screen" });
    await page.goto("about:blank");
    await page.goto(link.replace("point%3A300", "point:300")); // on another machine: no call is kept there that it belongs to
    await page.waitForSelector(".deskcurve p");
    assert.match(await page.locator(".deskcurve p").innerText(), /Sheet 12/);
    await page.evaluate((h) => void (location.hash = h), new URL(link.replace("150%3B", "150%3B%3B%3B%3B")).hash);
    await page.waitForSelector(".deskbar .news.wrong");
    assert.match(await told(page), wordPattern("desk.link.curve"));
  });
});

test("a file is saved as the schema says, and loads to the same enquiry; what is wrong changes nothing", async () => {
  const valid = new Ajv({ strict: true }).compile(JSON.parse(readFileSync(join(project, "site", "enquiry.schema.json"), "utf8")));
  let saved;
  await withPage(browser, {}, async (page) => {
    await fill(page);
    saved = await save(page);
    assert.match(saved.name, /^enquiry-sedgewray-dairy-\d{4}-\d\d-\d\d\.json$/);
    const json = JSON.parse(saved.text);
    assert.ok(valid(json), JSON.stringify(valid.errors));
    assert.ok(json.facts.some((f) => f.term === "speed" && f.from === "said"), "a fact without a line is not in the file");
    assert.deepEqual(json.facts.find((f) => f.term === "setting"), { term: "setting", text: "240 ft", from: "typed" });
    assert.deepEqual(json.sentences[0].dropped, ["60 psi"]);
  });
  await withPage(browser, {}, async (page) => {
    await open(page);
    const load = async (text) => {
      const file = join(dir, "load.json");
      writeFileSync(file, text);
      await page.setInputFiles("#desk-file", file);
      await settled(page);
      return told(page);
    };
    await load(saved.text);
    await page.waitForSelector(".piece.dropped");
    assert.equal((await save(page)).text, saved.text, "the round trip changed the enquiry");
    for (const [text, key] of [[saved.text.slice(0, 300), "json"], [saved.text.replace('"form": 1', '"form": 3'), "newer"], [saved.text.replace('"typed"', '"dreamt"'), "damaged"],
      [saved.text.replace('"book": "', '"book": "other-'), "book"], [saved.text.replace('"term": "setting"', '"term": "soul"'), "term"]]) {
      assert.match(await load(text), wordPattern("desk.file." + key));
      assert.equal((await save(page)).text, saved.text, `a file that was refused (${key}) changed the enquiry`);
    }
  });
});

test("a link carries the facts and not the name; a damaged one changes nothing", async () => {
  await withPage(browser, {}, async (page, _guard, place) => {
    await fill(page);
    await button(page, "desk.link").click();
    const link = await page.inputValue("#desk-link");
    assert.ok(!link.includes("Sedgewray") && !link.includes("555"));
    const other = await place.newPage();
    await open(other, "#" + link.split("#")[1]);
    assert.deepEqual(await factsNow(other), await factsNow(page));
    await other.getByRole("button", { name: wordPattern("desk.undo") }).waitFor(); // the kept enquiry is not lost
    const before = await factsNow(other);
    for (const [cut, key] of [[link.split("#")[1].split("&")[0], "cut"], [link.split("#")[1].replace("setting", "soul"), "unknown"], ["facts=%E0%A4%A:1&want=total-head", "bad"]]) {
      await other.evaluate((h) => void (location.hash = h), cut);
      await settled(other);
      assert.match(await told(other), wordPattern("desk.link." + key));
      assert.deepEqual(new Map(await other.evaluate(() => document.querySelector("fact-sheet").carried.facts.map((f) => [f.term, f.text]))).size, before.size);
    }
  });
});

test("the enquiry stays in the browser, and a new one asks before it puts it away", async () => {
  await withPage(browser, {}, async (page) => {
    await fill(page);
    await page.waitForTimeout(500);
    await page.goto(address("index.html"));
    await open(page);
    await page.waitForFunction(() => document.querySelector("#desk-customer").value !== "");
    await page.waitForSelector(".piece.on");
    assert.equal(await page.inputValue("#desk-note-use"), "farm");
    await button(page, "desk.new").click();
    await button(page, "desk.sure.no").click();
    assert.equal(await page.inputValue("#desk-customer"), "Sedgewray Dairy");
    await button(page, "desk.new").click();
    await button(page, "desk.sure.yes").click();
    assert.equal(await page.inputValue("#desk-customer"), "");
    assert.equal((await factsNow(page)).size, 0);
    await button(page, "desk.undo", "Sedgewray Dairy").click();
    assert.equal((await factsNow(page)).get("setting"), "240ft");
    await button(page, "desk.example").click();
    await button(page, "desk.sure.yes").click();
    await settled(page);
    const head = rowOf(await page.evaluate(readSheet), "total-head").value;
    assert.ok(Math.abs(printedNumber(head) - 343) < 1.5, `the example has a total head of ${head} ft`);
  });
});

test("a call is taken by the keyboard alone", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await page.focus("#desk-say");
    await page.keyboard.type("180 ft static, 60 psi");
    await page.keyboard.press("Enter");
    await page.waitForSelector(".said");
    await page.keyboard.press("Enter");
    assert.ok(await page.evaluate(() => document.activeElement.matches(".piece.open")), "the question has not got the focus");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    const facts = await factsNow(page);
    assert.equal(facts.get("static-level"), "180ft");
    assert.equal(facts.get("discharge-pressure") ?? facts.get("delivery-pressure"), "60psi");
    assert.equal(await page.evaluate(() => document.activeElement.id), "desk-say");
  });
});

test("rules of access, on every paper and on a phone, in the middle of a call", async () => {
  for (const phone of [false, true]) {
    await withPage(browser, phone ? { viewport: { width: 360, height: 740 }, isMobile: true, hasTouch: true } : {}, async (page) => {
      await fill(page);
      await hear(page, "static 190 ft, 70 psi, pumping level 300 ft");
      await button(page, "desk.link").click();
      await button(page, "desk.new").click();
      assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= (phone ? 360 : 1280), "the page runs out sideways");
      await page.evaluate(axe);
      for (const paper of ["light", "dark", "contrast"]) {
        await page.locator(".paper label", { hasText: new RegExp(`^${words["theme." + paper]}$`) }).click();
        await page.evaluate(() => Promise.all(document.getAnimations().map((a) => a.finished.catch(() => null))));
        const found = await page.evaluate(async () => {
          const { violations } = await window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"], preload: false });
          return violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => `${n.target.join(" ")} ${n.any[0]?.message ?? ""}`).join("; ")}`);
        });
        assert.deepEqual(found, [], `${paper}${phone ? ", phone" : ""}`);
      }
    });
  }
});

async function print(page, format) {
  const file = join(dir, `${Math.random().toString(36).slice(2)}.pdf`);
  writeFileSync(file, await page.pdf({ format }));
  const run = (program, ...args) => execFileSync(program, args, { encoding: "utf8" });
  return { text: run(pdftotextPath(), "-layout", file, "-").replace(/[\s\u00a0]+/g, " "), pages: Number(/Pages:\s+(\d+)/.exec(run(pdfinfoPath(), file))[1]) };
}

for (const format of ["A4", "Letter"]) {
  test(`an enquiry on ${format}: two sheets at most, complete, without controls`, async () => {
    await withPage(browser, { colorScheme: "dark" }, async (page) => {
      await fill(page);
      const { text, pages } = await print(page, format);
      assert.ok(pages <= 2, `${pages} sheets`);
      for (const key of ["desk.sheet", "desk.print.duty", "desk.print.known", "desk.print.derived", "desk.print.cautions", "desk.print.open", "desk.print.said", "block.title"]) {
        assert.ok(text.includes(words[key]), `“${words[key]}” is not printed`);
      }
      for (const said of ["Sedgewray Dairy", "555 0142", "new well behind the barn", "farm", "Static level 180 ft", "Pumping level", "220 ft", "Speed 1770 rpm", "Well depth", "sounded lately?", "Are there wires"]) {
        assert.ok(text.includes(said), `“${said}” is not printed: ${text}`);
      }
      for (const key of ["desk.new", "desk.put", "desk.read", "sheet.print", "desk.next.all"]) assert.ok(!text.includes(words[key]), `a control is printed: ${words[key]}`);
    });
  });
}

test("an enquiry with bowls, ranges and thirty questions keeps to two sheets, in letters of 9 pt and more", async () => {
  await withPage(browser, {}, async (page) => {
    const facts = ["build:oil-lubricated", "casing-inside-diameter:12in", "static-level:180 to 200ft", "drawdown:40 to 60ft", "capacity:400 to 450gpm", "discharge-pressure:60psi",
      "setting:260ft", "column-size:6in", "tube-size:2.5in", "discharge-elevation:2ft", "bowl-family:lapwing-10", "line-voltage:460V", "frequency:60Hz",
      "running-hours:2000 to 2500 h", "energy-price:0.12 per kWh", "head-loss:0.6ft", "speed:1770rpm"];
    await open(page, `#facts=${facts.join(",").replaceAll(" ", "%20")}&want=total-head`);
    await page.fill("#desk-job", "new well behind the barn, and the old pump is to be pulled");
    await hear(page, "the well is 180 to 200 ft static and draws down 40 to 60 ft");
    await hear(page, "we need 400 to 450 gallons a minute at 60 psi for the new barn and the yard");
    await page.locator(".deskprint .blanks li").first().waitFor({ state: "attached" });
    await settled(page);
    assert.ok((await page.locator(".deskprint .blanks li").count()) >= 25, "hardly anything is open");
    assert.equal(await page.locator(".deskprint .known li").count(), facts.length);
    for (const format of ["A4", "Letter"]) {
      const { text, pages } = await print(page, format);
      assert.ok(pages <= 2, `${format}: ${pages} sheets`);
      for (const said of ["Lapwing 10", "372.6 to 415.3 ft", "Stages 7 to 8", words["desk.print.hangs"], "the yard", words["block.title"]]) assert.ok(text.includes(said), `${format}: “${said}” is not printed: ${text}`);
    }
    await page.emulateMedia({ media: "print" });
    const small = await page.evaluate(() => Array.from(document.querySelectorAll("main *"))
      .filter((e) => e.getClientRects().length > 0 && [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== ""))
      .filter((e) => parseFloat(getComputedStyle(e).fontSize) < 11.99)
      .map((e) => `${e.className || e.tagName}: ${e.textContent.slice(0, 30)}`));
    assert.deepEqual(small, [], "letters under 9 pt");
  });
});

test("without a script the page says what it does, leads on, and prints a blank form", async () => {
  await withPage(browser, { javaScriptEnabled: false }, async (page) => {
    await page.goto(address("desk.html"));
    assert.ok(await page.locator(".still a[href='well-to-wire.html']").isVisible());
    assert.ok(await page.locator(".still a[href^='questions/']").isVisible());
    assert.equal(await page.locator("main :is(input, button, textarea, select)").count(), 0);
    assert.ok((await page.locator(".deskasked li").count()) > 20);
    assert.ok((await print(page, "A4")).text.includes("Static level") || (await print(page, "A4")).text.includes("static level"));
  });
});
