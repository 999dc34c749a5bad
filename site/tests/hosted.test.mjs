// A copy on a server: after one visit it is all there without the network, and it can be installed.
// And the server of the command itself, that shows a book to its author while it is written.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { asset, columnbowl, editionDir, project, scratch, wordPattern, words } from "./lib/edition.mjs";
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

/** Starts `columnbowl read` on a content, and gives its address and how to end it. */
async function reading(content) {
  const command = spawn(columnbowl(), ["read", "--content", content, "--port", "0"], { cwd: project, stdio: ["ignore", "pipe", "inherit"] });
  const at = await new Promise((found, failed) => {
    let said = "";
    command.stdout.on("data", (d) => {
      said += d;
      const m = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
      if (m) found(m[0]);
    });
    command.on("exit", () => failed(new Error(`read has ended: ${said}`)));
  });
  // it listens at once, and says 503 until its first pages are made
  while ((await fetch(`${at}/index.html`)).status === 503) await new Promise((done) => setTimeout(done, 50));
  return { at, end: () => command.kill() };
}

test("while a book is written, an edit is seen in the open page, and a mistake is told over the old one", async () => {
  const content = join(scratch("written"), "content");
  cpSync(join(project, "testdata", "bindery", "content"), content, { recursive: true });
  const file = join(content, "terms", "pumping-level.md");
  const edit = (old, fresh) => {
    const text = readFileSync(file, "utf8");
    assert.ok(text.includes(old));
    writeFileSync(file, text.replace(old, fresh));
  };
  const { at, end } = await reading(content);
  try {
    await withPage(browser, { online: at }, async (page, guard) => {
      guard.allow(/~changes|favicon|nothing\.html/); // the line to the server breaks when the page loads itself again
      await page.goto(`${at}/terms/pumping-level.html`);
      await page.waitForFunction(hasAnswered);
      edit("The pumping level is", "Herons stand still. The pumping level is");
      await page.locator("main", { hasText: "Herons stand still." }).waitFor();
      edit("expect pumping-level = 195 ft", "expect pumping-level = 196 ft");
      const note = page.locator(".readnote");
      await note.waitFor();
      assert.match(await note.innerText(), /content\/terms\/pumping-level\.md:\d+:\d+:/);
      assert.match(await note.innerText(), /196 ft[^]*write: 195 ft/);
      assert.match(await note.innerText(), wordPattern("read.kept"));
      assert.ok((await page.locator("main").innerText()).includes("Herons stand still."), "the pages did not stay");
      edit("expect pumping-level = 196 ft", "expect pumping-level = 195 ft");
      await note.waitFor({ state: "detached" });
      const answer = await page.goto(`${at}/terms/nothing.html`);
      assert.equal(answer.status(), 404);
      assert.equal(await page.locator("h1").innerText(), words["read.title"]);
    });
  } finally {
    end();
  }
});

test("what may be kept for ever has the sum of its bytes in its name", () => {
  for (const name of ["page.js", "page.css", "hub.js", "engine.js", "engine.packed", "book.js", "words.js", "cutaway.js", "exercises.js", "columnbowl-math.woff2"]) {
    assert.match(asset(name), /\.[0-9a-f]{12}\.[a-z0-9]+$/);
  }
  assert.equal(asset("names.js"), "assets/names.js");
});
