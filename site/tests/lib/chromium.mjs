// Chromium with the network off.
import { chromium } from "playwright-core";
import { editionDir } from "./edition.mjs";
import { Guard, listenForViolations } from "./guard.mjs";
import { chromiumPath } from "./programs.mjs";

export const chromiumFlags = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];

export function launch() {
  return chromium.launch({ executablePath: chromiumPath(), args: chromiumFlags });
}

/**
 * Gives work a fresh context and a page in it, and fails when the page makes trouble.
 * options: those of a context; dir, the edition if it is a copy; before, a function for the page's
 * start; online, an origin that is allowed.
 */
export async function withPage(browser, options, work) {
  const { dir = editionDir(), before = [], online = "", ...context } = options;
  const guard = new Guard(dir);
  if (online) guard.home = online;
  const place = await browser.newContext({ viewport: { width: 1280, height: 900 }, offline: online === "", ...context });
  place.setDefaultTimeout(15_000);
  await place.addInitScript(listenForViolations);
  for (const script of [before].flat()) await place.addInitScript(script);
  place.on("page", (page) => watch(page, guard));
  try {
    const page = await place.newPage();
    const result = await work(page, guard, place);
    guard.check();
    return result;
  } finally {
    await place.close();
  }
}

function watch(page, guard) {
  page.on("request", (r) => guard.request(r.url()));
  page.on("requestfailed", (r) => guard.trouble(`could not load ${r.url()}: ${r.failure()?.errorText}`));
  page.on("console", (m) => guard.console(m.type(), `${m.text()} (${m.location().url})`));
  page.on("pageerror", (e) => guard.trouble(`error in a script: ${e.stack ?? e}`));
}
