// The pages of practice: exercises that are drawn, answered and judged, cards, progress, the projector.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, copyOf, htmlFiles, scratch, wordPattern, words } from "./lib/edition.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const chain = "practice/chain-of-three.html";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const alive = (page) => page.locator("practice-sheet[data-alive]").waitFor();
const button = (page, key) => page.getByRole("button", { name: words[key], exact: true });
const field = (page, i) => page.locator(`.asked > li:nth-child(${i + 1}) .line input`);
const verdict = (page, i) => page.locator(`.asked > li:nth-child(${i + 1}) .verdict`);
const sheetNo = (seed) => words["practice.sheet"].replace("{0}", seed);

async function open(page, path) {
  await page.goto(address(path));
  await alive(page);
}

/** The facts as the page tells them, as bare numbers. */
const facts = (page) => page.evaluate(() => Object.fromEntries(Array.from(document.querySelectorAll(".situation [data-fact]"), (e) => [e.dataset.fact, parseFloat(e.textContent)])));

/** Waits until the browser has kept what was counted, and reads it. */
async function kept(page, has) {
  return page.evaluate(async (id) => {
    for (let i = 0; i < 100; i++) {
      const text = sessionStorage.getItem(Object.keys(sessionStorage).find((k) => k.endsWith("/progress")) ?? "");
      const p = text ? JSON.parse(text) : null;
      if (p && (p.tallies[id] || p.cards[id])) return p;
      await new Promise((done) => setTimeout(done, 50));
    }
    throw new Error(`${id} was not kept`);
  }, has);
}

test("right answers are right, in either system of units", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page, `${chain}#seed=12`);
    const f = await facts(page);
    const level = f["static-level"] + f.drawdown;
    await field(page, 0).fill(`${(level * 0.3048).toFixed(3)} m`);
    await field(page, 1).fill(`${(f["discharge-pressure"] * 2.31).toFixed(1)} ft`);
    await field(page, 2).fill(`${(level + f["discharge-elevation"] + f["discharge-pressure"] * 2.31 + f["discharge-velocity-head"]).toFixed(1)} ft`);
    await button(page, "practice.check").click();
    for (const i of [0, 1, 2]) assert.equal(await verdict(page, i).getAttribute("data-verdict"), "right", `line ${i + 1}: ${await verdict(page, i).textContent()}`);
    assert.match(await page.locator(".acting .news").textContent(), new RegExp("^" + words["class.points"].replace("{0}", 6).replace("{1}", 6)));
    const p = await kept(page, "e/chain-of-three");
    assert.deepEqual({ n: 1, good: 1, helped: 0 }, { n: p.tallies["e/chain-of-three"].n, good: p.tallies["e/chain-of-three"].good, helped: p.tallies["e/chain-of-three"].helped });
    assert.equal(p.tallies["t/field-head"].good, 1);
  });
});

test("a known mistake is named with its page, and what follows from it is carried forward", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page, `${chain}#seed=12`);
    const f = await facts(page);
    const wrong = f["static-level"] - f.drawdown; // the drawdown taken off
    await field(page, 0).fill(`${wrong.toFixed(1)} ft`);
    await field(page, 1).fill(`${(f["discharge-pressure"] * 2.31).toFixed(1)} ft`);
    await field(page, 2).fill(`${(wrong + f["discharge-elevation"] + f["discharge-pressure"] * 2.31 + f["discharge-velocity-head"]).toFixed(1)} ft`);
    await button(page, "practice.check").click();
    assert.equal(await verdict(page, 0).getAttribute("data-verdict"), "mistake");
    const link = verdict(page, 0).locator(".again a");
    assert.equal(await link.getAttribute("href"), "../terms/pumping-level.html");
    assert.ok((await verdict(page, 0).locator(".slip").textContent()).length > 30, "what went wrong is not said");
    assert.equal(await verdict(page, 1).getAttribute("data-verdict"), "right");
    assert.equal(await verdict(page, 2).getAttribute("data-verdict"), "carried");
    await field(page, 0).fill("12 gpm");
    assert.equal(await verdict(page, 0).textContent(), "", "the old verdict stands under a new answer");
    await field(page, 0).fill("twelve");
    await button(page, "practice.check").click();
    assert.equal(await verdict(page, 0).getAttribute("data-verdict"), "unread");
  });
});

test("a hint shows the relation, then the numbers, then the result, and counts as help; the whole way shows all", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page, `${chain}#seed=3`);
    const steps = page.locator(".asked .steps li");
    assert.equal(await steps.count(), 0);
    await button(page, "practice.next").click();
    assert.equal(await steps.count(), 1);
    assert.equal(await steps.first().textContent(), "pumping level = static level + drawdown", "the first hint tells more than the relation");
    await button(page, "practice.next").click();
    assert.match(await steps.first().locator("p").last().textContent(), /^pumping level = [\d.]+\s?ft \+ [\d.]+\s?ft$/, "the second hint tells the result, or no numbers");
    await button(page, "practice.next").click();
    assert.equal(await steps.count(), 1);
    const right = /= ([\d.]+\s?ft)$/.exec(await steps.first().textContent())[1];
    await field(page, 0).fill(right.replace("\u00a0", " "));
    await button(page, "practice.check").click();
    assert.equal(await verdict(page, 0).getAttribute("data-verdict"), "right");
    const p = await kept(page, "t/pumping-level");
    assert.deepEqual([p.tallies["t/pumping-level"].good, p.tallies["t/pumping-level"].helped], [0, 1]);
    await button(page, "practice.next").click();
    assert.ok((await page.locator(".asked > li:nth-child(2) .steps li").count()) === 1, "the next hint is not about the next open line");
    await button(page, "practice.way").click();
    assert.equal(await page.locator(".asked > li:nth-child(3) .steps li").count(), 2);
    const q = await kept(page, "e/chain-of-three");
    assert.deepEqual([q.tallies["e/chain-of-three"].n, q.tallies["e/chain-of-three"].good, q.tallies["e/chain-of-three"].helped], [1, 0, 1]);
    await button(page, "practice.next").click();
    assert.equal(await page.locator(".acting .news").textContent(), words["practice.next.none"]);
  });
});

test("in SI the same sheet is told, asked, judged and explained in SI, and what is typed stays", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page, `${chain}#seed=12`);
    const us = await facts(page);
    await field(page, 0).fill("1 ft");
    await button(page, "practice.check").click();
    await page.locator("input[name=units][value=si]").check({ force: true });
    await page.locator(".situation [data-fact=static-level]", { hasText: /m \(/ }).waitFor();
    const si = await facts(page);
    assert.ok(Math.abs(si["static-level"] - us["static-level"] * 0.3048) < 0.001, "the fact is another");
    assert.equal(await field(page, 0).inputValue(), "1 ft");
    assert.equal(await verdict(page, 0).textContent(), "", "a verdict of the other units stands");
    await field(page, 0).fill((si["static-level"] + si.drawdown).toFixed(2)); // a bare number
    await field(page, 1).fill(((si["discharge-pressure"] / 6.894757) * 2.31 * 0.3048).toFixed(2) + " m");
    await button(page, "practice.check").click();
    for (const i of [0, 1]) assert.equal(await verdict(page, i).getAttribute("data-verdict"), "right", await verdict(page, i).textContent());
    await button(page, "practice.way").click();
    assert.doesNotMatch(await page.locator(".asked .steps").allTextContents().then((t) => t.join(" ")), /\bft\b|\bpsi\b/);
  });
});

test("the same seed gives the same sheet, another seed another; the address carries it", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address(chain));
    const printed = await facts(page);
    await alive(page);
    assert.deepEqual(await facts(page), printed, "the living page shows other facts than the printed one");
    await open(page, `${chain}#seed=4711`);
    const text = await page.locator(".situation").textContent();
    assert.ok((await page.locator(".sheetno").textContent()) === sheetNo("4711"));
    await button(page, "practice.another").click();
    await page.waitForFunction((t) => document.querySelector(".situation").textContent !== t, text);
    const seed = /^#seed=(\d+)$/.exec(new URL(page.url()).hash)[1];
    assert.equal(await page.locator(".sheetno").textContent(), sheetNo(seed));
    await page.goBack();
    await page.waitForFunction((t) => document.querySelector(".situation").textContent === t, text);
    await page.getByLabel(words["practice.seed"], { exact: true }).fill("12");
    await button(page, "practice.seed.take").click();
    await page.waitForFunction((t) => document.querySelector(".sheetno").textContent === t, sheetNo("12"));
    for (const bad of ["x", "-1", ""]) {
      await page.getByLabel(words["practice.seed"], { exact: true }).fill(bad);
      await button(page, "practice.seed.take").click();
      assert.equal(await page.locator(".acting .news").textContent(), words["practice.seed.bad"].replace("{0}", bad));
    }
    await page.evaluate(() => (location.hash = "seed=99999999999999999999"));
    await page.waitForFunction(() => document.querySelector(".acting .news").textContent.includes("99999999999999999999"));
    assert.equal(await page.locator(".sheetno").textContent(), sheetNo("12"), "a bad seed changed the sheet");
  });
});

test("Enter judges a line and leads to the next; a choice and an order are worked by keys alone", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page, `${chain}#seed=12`);
    const f = await facts(page);
    await field(page, 0).focus();
    await page.keyboard.type(`${(f["static-level"] + f.drawdown).toFixed(1)} ft`);
    await page.keyboard.press("Enter");
    assert.equal(await verdict(page, 0).getAttribute("data-verdict"), "right");
    assert.ok(await field(page, 1).evaluate((e) => e === document.activeElement), "the next field has not the focus");

    await open(page, "practice/name-the-part.html#seed=2");
    await page.locator(".choice input").first().focus();
    await page.keyboard.press("Space");
    await page.keyboard.press("ArrowDown");
    await button(page, "practice.check").focus();
    await page.keyboard.press("Enter");
    assert.match(await verdict(page, 0).getAttribute("data-verdict"), /^(right|wrong)$/);
    assert.equal(await page.locator(".choice").first().locator("input:checked").inputValue(), "B");

    await open(page, "practice/order-the-parts.html#seed=2");
    const first = page.locator(".order").first();
    await button(page, "practice.check").focus();
    await page.keyboard.press("Enter");
    assert.equal(await page.locator(".acting .news").textContent(), words["practice.nothing"], "an order that nobody touched is judged");
    // the right order from the projector's key, put there with the arrow keys
    await button(page, "practice.projector").click();
    const right = (await page.locator(".projector .steps li").first().textContent()).match(/: ([A-Z]+):/)[1];
    await page.keyboard.press("Escape");
    for (const [place, sign] of Array.from(right).entries()) {
      await first.locator(`li[data-letter=${sign}] button`).first().focus();
      for (let i = 0; i < right.length; i++) {
        const at = await first.evaluate((ol, s) => Array.from(ol.children).findIndex((li) => li.dataset.letter === s), sign);
        if (at === place) break;
        await page.keyboard.press(at > place ? "ArrowUp" : "ArrowDown");
        assert.ok(await first.locator(`li[data-letter=${sign}] button`).first().evaluate((e) => e === document.activeElement), "the focus was lost");
      }
    }
    await button(page, "practice.check").click();
    assert.equal(await verdict(page, 0).getAttribute("data-verdict"), "right");
  });
});

test("progress stays over a reload, goes to a file and comes back; a damaged or newer file changes nothing", async () => {
  const dir = scratch("progress");
  await withPage(browser, { acceptDownloads: true }, async (page) => {
    await open(page, `${chain}#seed=12`);
    await field(page, 0).fill("1 ft");
    await button(page, "practice.check").click();
    await button(page, "practice.way").click();
    await kept(page, "e/chain-of-three");
    const settled = () => page.locator("practice-progress[data-alive]").waitFor();
    await page.goto(address("practice/progress.html"));
    await settled();
    await page.reload();
    await settled();
    const rows = () => page.locator("practice-progress tbody th").allTextContents();
    const had = await rows();
    assert.ok(had.includes("Field head in three steps") && had.includes("Pumping level"), `kept are ${had}`);
    assert.ok((await page.locator("practice-progress h2 + table").count()) >= 3, "chapter, exercise and terms have a table each");
    const [download] = await Promise.all([page.waitForEvent("download"), button(page, "progress.save").click()]);
    assert.match(download.suggestedFilename(), /^column-and-bowl-progress-\d{4}-\d\d-\d\d\.json$/);
    const file = join(dir, "saved.json");
    await download.saveAs(file);
    const text = readFileSync(file, "utf8");
    const load = async (name, content, key) => {
      writeFileSync(join(dir, name), content);
      await page.locator("practice-progress input[type=file]").setInputFiles(join(dir, name));
      const pattern = wordPattern(key);
      await page.waitForFunction((p) => new RegExp(p).test(document.querySelector("practice-progress .news").textContent), pattern.source);
    };
    const saved = JSON.parse(text);
    const broken = { ...saved, tallies: { ...saved.tallies, "e/chain-of-three": { n: 1, good: 7, helped: 0, last: 1 } } };
    await load("cut.json", text.slice(0, -20), "progress.file.damaged");
    await load("odd.json", JSON.stringify(broken), "progress.file.damaged");
    await load("other.json", "[]", "progress.file.damaged");
    await load("newer.json", JSON.stringify({ ...saved, form: 2, tallies: 7 }), "progress.file.newer");
    await load("book.json", JSON.stringify({ ...saved, book: "another" }), "progress.file.other-book");
    assert.deepEqual(await rows(), had, "a file that was refused changed something");
    await button(page, "progress.clear").click();
    assert.deepEqual(await rows(), had, "one press forgets everything");
    await button(page, "progress.clear.sure").click();
    await page.waitForFunction(() => document.querySelectorAll("practice-progress tbody th").length === 0);
    await load("saved.json", text, "progress.loaded");
    assert.deepEqual(await rows(), had);
    await load("saved.json", text, "progress.loaded");
    await page.reload();
    await settled();
    assert.deepEqual(await rows(), had, "what was loaded is not kept");
    assert.equal(JSON.stringify((await kept(page, "e/chain-of-three")).tallies["e/chain-of-three"]), JSON.stringify(saved.tallies["e/chain-of-three"]), "loading twice counts twice");
  });
});

test("what cannot be read in the browser's memory is left as it is", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("practice/progress.html"));
    await page.locator("practice-progress[data-alive]").waitFor();
    const hub = page.frames().find((f) => f.url().endsWith("hub.html"));
    const newer = JSON.stringify({ columnbowl: "progress", form: 9, book: "column-and-bowl" });
    await hub.evaluate((text) => localStorage.setItem("columnbowl/column-and-bowl/1/progress", text), newer);
    await open(page, `${chain}#seed=12`);
    await button(page, "practice.way").click();
    await page.goto(address("practice/progress.html"));
    await page.waitForFunction((t) => document.querySelector("practice-progress .news")?.textContent === t, words["progress.kept.newer"]);
    const again = page.frames().find((f) => f.url().endsWith("hub.html"));
    assert.equal(await again.evaluate(() => localStorage.getItem("columnbowl/column-and-bowl/1/progress")), newer);
  });
});

test("cards are turned and rated by keys, and come again when they are due", async () => {
  await withPage(browser, {}, async (page) => {
    await page.clock.install({ time: new Date("2026-03-02T10:00:00") });
    await page.goto(address("practice/cards.html"));
    const due = async () => (await page.locator("practice-cards .news").textContent()).match(/\d+/g).map(Number);
    await page.locator("practice-cards .news", { hasText: /\d/ }).waitFor();
    const [, fresh, all] = await due();
    assert.ok(fresh === all && all > 300, `${fresh} new of ${all}`);
    const where = page.getByRole("combobox", { name: words["practice.pick.place"], exact: true });
    await where.selectOption("suction");
    await page.waitForFunction((n) => !document.querySelector("practice-cards .news").textContent.includes(String(n)), all);
    const [, , few] = await due();
    const there = await page.locator("[data-card][data-place=suction]").count();
    assert.ok(few >= there && few <= 2 * there, `${few} cards of ${there} terms and parts`);
    await where.selectOption("");
    await page.waitForFunction((n) => document.querySelector("practice-cards .news").textContent.includes(String(n)), all);
    await button(page, "cards.begin").click();
    await page.locator(".flash").waitFor();
    assert.ok(await page.locator(".deck").first().isHidden(), "the list tells the answers");
    assert.equal(await page.locator(".flash .back").count(), 0);
    await page.keyboard.press("4"); // nothing lies open yet
    assert.equal(await page.locator(".flash .back").count(), 0);
    await page.keyboard.press("Enter");
    await page.locator(".flash .back").waitFor();
    await page.keyboard.press("Enter"); // a second press judges nothing
    assert.equal(await page.locator(".flash .back").count(), 1);
    await page.keyboard.press("4");
    await page.keyboard.press("Enter");
    await page.keyboard.press("1"); // not known: it comes again in this session
    const p = await page.evaluate(() => document.querySelector("practice-cards .news").textContent);
    assert.match(p, /9/);
    await button(page, "cards.stop").click();
    await page.waitForFunction((n) => document.querySelector("practice-cards .news").textContent.includes(String(n)), fresh - 2);
    assert.ok(await page.locator(".deck").first().isVisible());
    const states = Object.values((await page.evaluate(() => JSON.parse(sessionStorage.getItem("columnbowl/column-and-bowl/1/progress")))).cards);
    assert.deepEqual(states.map((c) => [c.reps, c.interval]).sort(), [[0, 1], [1, 1]]);
    await page.clock.setFixedTime(new Date("2026-03-03T10:00:00"));
    await page.reload();
    await page.locator("practice-cards .news", { hasText: /^2 / }).waitFor();
  });
});

test("the card of a part does not give its name away", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("practice/cards.html"));
    await page.locator("practice-cards select").first().selectOption("p");
    await button(page, "cards.begin").click();
    let drawings = 0;
    for (let i = 0; i < 10; i++) {
      const ask = await page.locator(".flash .key").textContent();
      const front = await page.locator(".flash .front").textContent();
      await page.keyboard.press("Enter");
      const name = await page.locator(".flash .back a").textContent();
      if (ask === words["cards.ask.name"]) {
        assert.ok(!front.toLowerCase().includes(name.toLowerCase()), `${name}: ${front}`);
        drawings += await page.locator(".flash img").evaluateAll((list) => Promise.all(list.map((e) => e.decode().then(() => 1)))).then((l) => l.length);
      } else assert.equal(front, name);
      await page.keyboard.press("4");
    }
    assert.ok(drawings > 0, "no card shows a drawing");
  });
});

test("the projector shows the steps one at a time, with nothing cut off", async () => {
  for (const [width, height] of [[1280, 720], [1920, 1080]]) {
    await withPage(browser, { viewport: { width, height } }, async (page) => {
      await open(page, "practice/chain-of-six.html#seed=7&view=projector");
      const shown = () => page.locator(".projector .steps li:visible").count();
      await page.locator(".projector[open]").waitFor();
      assert.equal(await shown(), 0);
      for (const [key, n] of [["Space", 1], ["ArrowRight", 2], ["ArrowLeft", 1], ["PageDown", 2], ["Space", 3]]) {
        await page.keyboard.press(key);
        assert.equal(await shown(), n, `after ${key}`);
      }
      await button(page, "practice.projector.before").click();
      assert.equal(await shown(), 2);
      for (let i = 0; i < 12; i++) await page.keyboard.press("ArrowRight");
      const looks = await page.evaluate(() => {
        const box = (e) => e.getBoundingClientRect();
        const steps = Array.from(document.querySelectorAll(".projector .steps li"));
        const last = box(steps.at(-1));
        const given = document.querySelector(".projector .given");
        return {
          all: steps.every((e) => !e.hidden),
          seen: last.top >= 0 && last.bottom <= box(document.querySelector(".projector footer")).top + 1,
          wide: steps.every((e) => e.scrollWidth <= e.clientWidth),
          whole: given.scrollHeight <= given.clientHeight + 1,
          size: parseFloat(getComputedStyle(steps[0]).fontSize) / innerHeight,
        };
      });
      assert.ok(looks.all && looks.seen && looks.wide && looks.whole, JSON.stringify(looks));
      assert.ok(looks.size > 1 / 36, `letters of ${looks.size} of the height: too small for the last row`);
      await page.keyboard.press("Escape");
      assert.equal(await page.locator(".projector[open]").count(), 0);
    });
  }
});

test("an exercise by place and level, the least practised first", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("practice/index.html"));
    await page.getByRole("combobox", { name: words["practice.pick.place"], exact: true }).selectOption("heads-and-losses");
    await page.getByRole("combobox", { name: words["practice.pick.level"], exact: true }).selectOption("1");
    const fit = await page.locator(".trainset[data-place=heads-and-losses] li[data-level='1']").evaluateAll((list) => list.map((li) => li.dataset.exercise));
    await button(page, "practice.pick.go").click();
    await page.waitForURL(/#seed=\d+$/);
    assert.ok(fit.includes(/practice\/(.+)\.html/.exec(page.url())[1]), page.url());
  });
});

test("on every exercise the printed sheet is the living one", async () => {
  await withPage(browser, {}, async (page) => {
    for (const file of htmlFiles().filter((f) => /^practice\/(?!index|cards|progress)/.test(f))) {
      await page.goto(address(file));
      const look = () => page.evaluate(() => [".situation", ".raised", ".asked .what"].map((s) => Array.from(document.querySelectorAll(s), (e) => e.textContent.replace(/\s+/g, " ").trim()).join("|")));
      await alive(page);
      const living = await look();
      const still = await page.evaluate((html) => {
        const d = new DOMParser().parseFromString(html, "text/html");
        return [".situation", ".raised", ".asked .what"].map((s) => Array.from(d.querySelectorAll(s), (e) => e.textContent.replace(/\s+/g, " ").trim()).join("|"));
      }, readFileSync(new URL(address(file)), "utf8"));
      assert.deepEqual(living, still, file);
    }
  });
});

test("access: judged lines, a card, the projector and progress, on every paper", async () => {
  await withPage(browser, {}, async (page) => {
    const found = [];
    const look = async (what) => {
      await page.evaluate(axe);
      for (const paper of ["light", "dark", "contrast"]) {
        await page.evaluate((p) => (document.documentElement.dataset.theme = p), paper);
        await page.evaluate(() => Promise.all(document.getAnimations().map((a) => a.finished.catch(() => null))));
        const { violations } = await page.evaluate(() => window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"], resultTypes: ["violations"], preload: false }));
        found.push(...violations.map((v) => `${what}, ${paper}: ${v.id} ${v.nodes.slice(0, 2).map((n) => n.target.join(" ")).join("; ")}`));
      }
    };
    await open(page, `${chain}#seed=12`);
    const f = await facts(page);
    await field(page, 0).fill(`${(f["static-level"] - f.drawdown).toFixed(1)} ft`);
    await field(page, 1).fill("nonsense");
    await field(page, 2).fill("7 ft");
    await button(page, "practice.check").click();
    await button(page, "practice.next").click();
    await look("judged");
    await button(page, "practice.projector").click();
    await page.keyboard.press("Space");
    await look("projector");
    await page.goto(address("practice/progress.html"));
    await page.locator("practice-progress table").first().waitFor();
    await look("progress");
    await page.goto(address("practice/cards.html"));
    await page.locator("practice-cards select").first().selectOption("p");
    await button(page, "cards.begin").click();
    await page.keyboard.press("Enter");
    await look("card");
    await open(page, "practice/order-the-parts.html");
    await look("order");
    assert.deepEqual(found, []);
  });
});

test("nothing is wider than a phone", async () => {
  await withPage(browser, { viewport: { width: 360, height: 740 } }, async (page) => {
    for (const file of [chain, "practice/read-the-curve.html", "practice/order-the-parts.html", "practice/index.html", "practice/progress.html", "practice/cards.html"]) {
      await page.goto(address(file));
      if (await page.locator("practice-sheet").count()) {
        await alive(page);
        await button(page, "practice.way").click();
      }
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), file);
    }
  });
});

test("on paper: the sheet with its title block and lines for the answers, no controls", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page, `${chain}#seed=12`);
    await button(page, "practice.way").click();
    await page.emulateMedia({ media: "print" });
    const text = await page.locator("main").innerText();
    for (const key of ["practice.check", "practice.next", "practice.another", "practice.projector", "practice.seed.take"]) assert.ok(!text.includes(words[key]), `a control is printed: ${words[key]}`);
    assert.ok(text.includes(sheetNo("12")) && /Sheet\s+12\b/.test(text) && text.includes(words["block.title"]) && text.includes(words["block.demo"]));
    assert.ok(!/pumping level = /.test(text), "the key is printed on the learner's sheet");
    for (const [path, list] of [["practice/which-build.html", ".choice"], ["practice/order-the-parts.html", ".order"]]) {
      await open(page, path);
      const line = await page.locator(list).first().evaluate((e) => getComputedStyle(e, "::after").borderBottomWidth);
      assert.ok(parseFloat(line) > 0, `${path} has no line to write letters on`);
    }
  });
});

test("without its pack an exercise says so, and the printed sheet stays with its key", async () => {
  const dir = copyOf({ "assets/exercises.js": null });
  await withPage(browser, { dir }, async (page, guard) => {
    guard.allow(/exercises\.js|ERR_FILE_NOT_FOUND/);
    await page.goto(address(chain, dir));
    await page.locator(".acting .news", { hasText: words["engine.file"] }).waitFor();
    assert.equal(await page.locator("practice-sheet button").count(), 0, "a button stands there that does nothing");
    await page.locator(".wholeway summary").click();
    assert.ok(await page.locator(".wholeway .steps li").first().isVisible());
  });
});
