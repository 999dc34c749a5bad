// How long a reader waits: for the first result after a double click, and for new numbers after a
// key. Medians beside the budgets.
//
//   node site/tests/bench.mjs [runs]      20 runs unless told otherwise
import { launch, withPage } from "./lib/chromium.mjs";
import { address } from "./lib/edition.mjs";
import { field, hasAnswered } from "./lib/sheet.mjs";

const runs = Number(process.argv[2] ?? 20);
const chain = "well-to-wire.html";

/** Runs before the page: notes when the first answer is on the sheet. */
function watch() {
  window.times = { first: 0 };
  const answered = () => document.querySelector("fact-sheet .warnings")?.hasAttribute("data-key");
  new MutationObserver((_, me) => {
    if (!answered()) return;
    window.times.first = performance.now();
    me.disconnect();
  }).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ["data-key"] });
}

async function throttle(page, rate) {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
}

async function firstResult(browser, rate, path = chain) {
  return withPage(browser, { before: watch }, async (page) => {
    await throttle(page, rate);
    await page.goto(address(path));
    await page.waitForFunction(hasAnswered, null, { timeout: 60_000 });
    return page.evaluate(() => window.times.first);
  });
}

/** From the key, as the browser took it, to the new numbers on the sheet, and to the pictures drawn with them. */
async function keystrokes(browser, rate, n) {
  return withPage(browser, { before: watch }, async (page) => {
    await throttle(page, rate);
    await page.goto(address(chain));
    await page.waitForFunction(hasAnswered, null, { timeout: 60_000 });
    await page.focus(field("static-level"));
    await page.evaluate(() => {
      const level = document.querySelector('li[data-term="brake-power"] input');
      window.strokes = [];
      let key = null;
      document.addEventListener("keydown", (e) => (key = { at: e.timeStamp, before: level.value }), true);
      // said by the sheet when its rows have taken the new numbers
      document.querySelector("fact-sheet").addEventListener("facts", () => {
        if (!key || level.value === key.before) return;
        key.numbers = performance.now() - key.at;
      });
      const drawn = new MutationObserver(() => {
        if (!key?.numbers) return;
        window.strokes.push({ numbers: key.numbers, drawn: performance.now() - key.at });
        key = null;
      });
      for (const place of document.querySelectorAll("[data-picture]")) drawn.observe(place, { childList: true });
    });
    const numbers = [];
    const drawn = [];
    for (let i = 0; i < n; i++) {
      await page.evaluate(() => {
        document.querySelector('li[data-term="static-level"] input').setSelectionRange(2, 3);
      });
      await page.keyboard.press(String(1 + (i % 9)));
      await page.waitForFunction((k) => window.strokes.length > k, i, { timeout: 60_000 });
      const stroke = await page.evaluate((k) => window.strokes[k], i);
      numbers.push(stroke.numbers);
      drawn.push(stroke.drawn);
    }
    return { numbers, drawn };
  });
}

const ranges = { "static-level": "130 to 150 ft", drawdown: "50 to 60 ft", "discharge-pressure": "55 to 65 psi", "bowl-efficiency": "79 to 83 %", setting: "230 to 250 ft" };

/**
 * The engine alone, in the page: the chain with plain facts, and how much longer it takes with the first
 * of the ranges, the bounds, the ranking and the places where a choice changes included.
 */
async function withRanges(browser, n) {
  return withPage(browser, {}, async (page) => {
    await page.goto(address(chain));
    await page.waitForFunction(hasAnswered, null, { timeout: 60_000 });
    return page.evaluate(async ([ranges, n]) => {
      const sheet = document.querySelector("fact-sheet");
      const show = sheet.lines.map((r) => r.term);
      let tried = 0;
      const time = async (count) => {
        const some = Object.fromEntries(Object.entries(ranges).slice(0, count));
        const times = [];
        for (let i = 0; i < n + 3; i++) {
          // another capacity each time: the engine keeps what it has just worked out
          const facts = sheet.carried.facts.map((f) => ({ ...f, text: f.term === "capacity" ? `${780 + ++tried / 4} gpm` : (some[f.term] ?? f.text) }));
          const start = performance.now();
          const reply = await sheet.inquire({ want: "overall-efficiency", show, facts });
          times.push(performance.now() - start);
          if (count > 0 && !reply.hangs) throw new Error("nothing is ranked");
        }
        return times.slice(3);
      };
      const plain = await time(0);
      const middle = [...plain].sort((a, b) => a - b)[Math.floor(n / 2)];
      const beyond = async (count) => (await time(count)).map((t) => t - middle);
      return { plain, one: await beyond(1), three: await beyond(3), five: await beyond(5) };
    }, [ranges, n]);
  });
}

/** The families ranked, and where in a range another pump would be chosen: asked when the reader is at rest. */
async function choosing(browser, n) {
  return withPage(browser, {}, async (page) => {
    await page.goto(address("bowls.html"));
    await page.waitForFunction(hasAnswered, null, { timeout: 60_000 });
    return page.evaluate(async (n) => {
      const sheet = document.querySelector("fact-sheet");
      let tried = 0;
      const time = async (line, facts) => {
        const times = [];
        for (let i = 0; i < n + 1; i++) {
          const now = facts.map((f) => (f.term === "setting" ? { ...f, text: `${200 + ++tried / 4} ft` } : f));
          const start = performance.now();
          await sheet.inquire({ facts: now, lines: [line] });
          times.push(performance.now() - start);
        }
        return times.slice(1);
      };
      const facts = sheet.carried.facts;
      const ranged = facts.map((f) => (f.term === "capacity" ? { ...f, text: "700 to 900 gpm" } : f));
      return { rank: await time("choice\t\tus\twide\t", facts), pumps: await time("pumps", ranged) };
    }, n);
  });
}

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const worst = (list) => Math.max(...list);

/** One figure: beside its budget, in the form of build/budget, or for information. */
function line(what, list, budget) {
  const m = `${median(list).toFixed(1)} ms`;
  if (budget === null) return console.log(`  ${what.padEnd(58)} ${m.padStart(10)}   worst ${worst(list).toFixed(1)} ms`);
  const verdict = median(list) <= budget ? "holds" : "MISSED";
  console.log(`budget  ${what.padEnd(58)} ${m.padStart(10)}   floor -                at most ${`${budget} ms`.padStart(10)}   ${verdict}   (worst ${worst(list).toFixed(1)} ms)`);
}

const browser = await launch();
await firstResult(browser, 1); // the first page warms the disk cache
const each = async (n, f) => {
  const out = [];
  for (let i = 0; i < n; i++) out.push(await f());
  return out;
};
console.log(`${runs} runs each, Chromium, from a folder, a fresh context each time`);
line("first result, the chain page", await each(runs, () => firstResult(browser, 1)), 300);
line("first result, a term page", await each(runs, () => firstResult(browser, 1, "terms/total-head.html")), 300);
line("first result, the chain page, CPU 6 times slower", await each(runs, () => firstResult(browser, 6)), 1500);
const quick = await keystrokes(browser, 1, runs);
line("key to new numbers, the chain page", quick.numbers, 16);
line("key to the pictures drawn with them", quick.drawn, 16);
const slow = await keystrokes(browser, 6, runs);
line("key to new numbers, CPU 6 times slower", slow.numbers, null);
line("key to the pictures drawn with them", slow.drawn, null);
const ranged = await withRanges(browser, runs);
line("engine, the chain with plain facts", ranged.plain, null);
line("  longer with one range, ranked", ranged.one, 100);
line("  longer with three", ranged.three, 100);
line("  longer with five", ranged.five, 100);
const chosen = await choosing(browser, runs);
line("engine, the families ranked and drawn", chosen.rank, null);
line("engine, where another pump would be chosen, one range", chosen.pumps, null);
await browser.close();
