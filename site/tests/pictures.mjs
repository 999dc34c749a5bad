// The pictures of README.md, from the bound edition: each shows one thing that a reader does. `make pictures`.
//
//   COLUMNBOWL_EDITION=out node site/tests/pictures.mjs .pictures
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, words } from "./lib/edition.mjs";
import { enter, hasAnswered, settled } from "./lib/sheet.mjs";

const dir = process.argv[2];
if (!dir) {
  console.error("usage: node site/tests/pictures.mjs DIR");
  process.exit(2);
}
mkdirSync(dir, { recursive: true });

const most = 400_000; // bytes of all pictures together: they are in every clone
let sum = 0;

/** Writes what the window shows; WebP, which the browser makes itself. */
async function take(page, name) {
  await page.mouse.move(0, 0);
  await page.evaluate(() => document.activeElement?.blur());
  const session = await page.context().newCDPSession(page);
  const { data } = await session.send("Page.captureScreenshot", { format: "webp", quality: 60 });
  const bytes = Buffer.from(data, "base64");
  sum += bytes.length;
  writeFileSync(join(dir, name + ".webp"), bytes);
  console.log(`${name}.webp ${Math.round(bytes.length / 1000)} kB`);
}

/** Scrolls so that what is meant stands a little below the top. */
const bring = (page, selector, above = 24) => page.evaluate(([s, a]) => scrollTo(0, document.querySelector(s).getBoundingClientRect().top + scrollY - a), [selector, above]);

const pictures = {
  // apprentice: a pump taken apart, one part picked
  async pump(page) {
    await page.goto(address("builds/oil-lubricated.html#head"));
    const sheet = page.locator("#head");
    await sheet.locator(".cutlive svg").waitFor();
    await sheet.locator("g.part[id$=tube-tension-nut]").first().click({ force: true });
    await sheet.locator("g.part.lit").first().waitFor();
    await bring(page, "#head .cutlive", 60);
  },
  // apprentice: a term whose facts were changed
  async term(page) {
    await page.goto(address("terms/total-head.html"));
    await page.waitForFunction(hasAnswered);
    await enter(page, "setting", "300 ft");
    await settled(page);
    await bring(page, "main .rel", 60);
  },
  // counter: a sentence becomes facts
  async desk(page) {
    await page.goto(address("desk.html"));
    await page.waitForFunction(hasAnswered);
    await page.fill("#desk-say", "static 180 ft, draws down 40 at 400 gpm, wants 60 psi at the head, 12 inch casing");
    await page.press("#desk-say", "Enter");
    await page.locator(".said").first().waitFor();
    await bring(page, "#desk-say", 70);
  },
  // counter: from well to wire, in pictures
  async chain(page) {
    await page.goto(address("well-to-wire.html"));
    await page.waitForFunction(hasAnswered);
    await page.evaluate(() => scrollTo(0, 0));
  },
  // trainer: a mistake that is named
  async exercise(page) {
    await page.goto(address("practice/chain-of-three.html#seed=12"));
    await page.locator("practice-sheet[data-alive]").waitFor();
    const f = await page.evaluate(() => Object.fromEntries(Array.from(document.querySelectorAll(".situation [data-fact]"), (e) => [e.dataset.fact, parseFloat(e.textContent)])));
    const answers = [f["static-level"] + f.drawdown, f["discharge-pressure"] * 2.31, f["static-level"] + f["discharge-elevation"] + f["discharge-pressure"] * 2.31 + f["discharge-velocity-head"]];
    for (const [i, a] of answers.entries()) await page.locator(`.asked > li:nth-child(${i + 1}) .line input`).fill(`${a.toFixed(1)} ft`);
    await page.getByRole("button", { name: words["practice.check"], exact: true }).click();
    await page.locator(".verdict").first().waitFor();
    await bring(page, "ol.asked", 40);
  },
};

const browser = await launch();
for (const [name, prepare] of Object.entries(pictures)) {
  await withPage(browser, { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 0.8 }, async (page) => {
    await prepare(page);
    await page.evaluate(() => Promise.all(document.getAnimations().map((a) => a.finished.catch(() => null))));
    await take(page, name);
  });
}
await browser.close();
if (sum > most) {
  console.error(`the pictures have ${sum} bytes, ${most} are allowed`);
  process.exit(1);
}
