// Pictures of every kind of page for people to look at; not a check.
//
//   node site/tests/shots.mjs DIR [page …]
//
// Writes DIR/PAGE-WIDTH-PAPER.png for 360, 768, 1280 and 1920 px, on light and dark paper.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, samplePages, words } from "./lib/edition.mjs";
import { hasAnswered } from "./lib/sheet.mjs";

const [dir, ...chosen] = process.argv.slice(2);
if (!dir) {
  console.error("usage: node site/tests/shots.mjs DIR [page …]   (a page is a path such as terms/total-head.html)");
  process.exit(2);
}
mkdirSync(dir, { recursive: true });

const browser = await launch();
for (const width of [360, 768, 1280, 1920]) {
  const phone = width === 360 ? { isMobile: true, hasTouch: true, deviceScaleFactor: 2 } : {};
  await withPage(browser, { viewport: { width, height: width === 360 ? 740 : 900 }, ...phone }, async (page, guard) => {
    for (const file of chosen.length ? chosen : samplePages()) {
      await page.goto(address(file));
      if (await page.locator("fact-sheet").count()) await page.waitForFunction(hasAnswered);
      for (const paper of ["light", "dark"]) {
        await page.locator(".paper label", { hasText: new RegExp(`^${words["theme." + paper]}$`) }).click();
        await page.evaluate(() => scrollTo(0, 0));
        const name = `${file.replace(/\.html$/, "").replace(/\//g, "-")}-${width}-${paper}.png`;
        await page.screenshot({ path: join(dir, name), fullPage: true });
        console.log(name);
      }
    }
    for (const trouble of guard.troubles.splice(0)) console.log(`  ${trouble}`);
  });
}
await browser.close();
