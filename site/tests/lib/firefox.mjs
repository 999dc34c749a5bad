// Firefox as people have it: the test tool's own profile lets all files of a folder share one
// origin, a stock Firefox does not, so the strict policy is forced on. Every way to the network
// leads to a closed door.
import puppeteer from "puppeteer-core";
import { editionDir } from "./edition.mjs";
import { Guard } from "./guard.mjs";
import { firefoxPath } from "./programs.mjs";

export function launchFirefox() {
  return puppeteer.launch({
    browser: "firefox",
    executablePath: firefoxPath(),
    headless: true,
    extraPrefsFirefox: {
      "security.fileuri.strict_origin_policy": true,
      "network.proxy.type": 1,
      "network.proxy.http": "127.0.0.1",
      "network.proxy.http_port": 9,
      "network.proxy.ssl": "127.0.0.1",
      "network.proxy.ssl_port": 9,
    },
  });
}

/** Gives work a page and fails when the page makes trouble; dir is the edition, if it is another. */
export async function withFirefoxPage(browser, work, dir = editionDir()) {
  const guard = new Guard(dir);
  const page = await browser.newPage();
  page.setDefaultTimeout(20_000);
  await page.setViewport({ width: 1280, height: 900 });
  page.on("request", (r) => guard.request(r.url()));
  page.on("requestfailed", (r) => guard.trouble(`could not load ${r.url()}`));
  page.on("console", (m) => guard.console(m.type(), m.text()));
  page.on("pageerror", (e) => guard.trouble(`error in a script: ${e.stack ?? e}`));
  try {
    const result = await work(page, guard);
    guard.check();
    return result;
  } finally {
    await page.close();
  }
}
