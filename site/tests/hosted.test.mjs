// A copy on a server: after one visit it is all there without the network, and it can be installed.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { editionDir } from "./lib/edition.mjs";
import { factsOf, hasAnswered, readSheet } from "./lib/sheet.mjs";
import { mainLines, sameAsNative } from "./lib/native.mjs";

const types = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml", ".wasm": "application/wasm", ".woff2": "font/woff2", ".webmanifest": "application/manifest+json" };
const dir = editionDir();
let browser, server, origin;

before(async () => {
  server = createServer(async (ask, reply) => {
    const path = normalize(decodeURIComponent(new URL(ask.url, "http://x").pathname)).replace(/\/$/, "/index.html");
    try {
      const data = await readFile(join(dir, path));
      reply.writeHead(200, { "Content-Type": types[extname(path)] ?? "application/octet-stream" }).end(data);
    } catch {
      reply.writeHead(404).end();
    }
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  origin = `http://127.0.0.1:${server.address().port}`;
  browser = await launch();
});
after(async () => {
  await browser.close();
  server.close();
});

test("after one visit every page, its engine and its drawings are there with the network cut", async () => {
  await withPage(browser, { online: origin }, async (page, guard, place) => {
    await page.goto(origin + "/");
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    const manifest = await page.evaluate(() => fetch(document.querySelector("link[rel=manifest]").href).then((r) => r.json()));
    assert.equal(manifest.start_url, "index.html");
    assert.ok(manifest.icons.length > 0 && manifest.name.length > 10);
    const cdp = await place.newCDPSession(page);
    assert.deepEqual((await cdp.send("Page.getAppManifest")).errors, []);
    assert.deepEqual((await cdp.send("Page.getInstallabilityErrors")).installabilityErrors.filter((e) => e.errorId !== "in-incognito"), []);
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
    await place.setOffline(true);
    await page.goto(origin + "/well-to-wire.html");
    await page.waitForFunction(hasAnswered);
    const sheet = await page.evaluate(readSheet);
    sameAsNative(mainLines(sheet), factsOf(sheet).facts);
    await page.goto(origin + "/builds/oil-lubricated.html");
    await page.locator("cut-sheet .cutlive g.part").first().waitFor();
    await page.goto(origin + "/terms/?from=home#letter-T");
    assert.ok((await page.locator("main h1").innerText()).length > 3);
  });
});
