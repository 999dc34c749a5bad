// The engine when the browser cannot run it, when a file is missing, when it dies, and when a
// server hands it over.
import assert from "node:assert/strict";
import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, asset, copyOf, editionDir, wordPattern, words } from "./lib/edition.mjs";
import { mainLines, sameAsNative } from "./lib/native.mjs";
import { enter, factsOf, field, hasAnswered, readSheet, rowOf, typeOver } from "./lib/sheet.mjs";

let browser;
let known; // the numbers that the page was printed with, by line
before(async () => {
  browser = await launch();
  known = await printed();
});
after(() => browser.close());

const chain = "well-to-wire.html";
const read = (page) => page.evaluate(readSheet);
const said = (page, key) => page.waitForFunction((text) => document.querySelector("fact-sheet .sheetfoot").textContent.includes(text), words[key].split("{")[0].slice(0, 60));

async function printed() {
  return withPage(browser, { javaScriptEnabled: false }, async (page) => {
    await page.goto(address(chain));
    return new Map((await read(page)).rows.filter((r) => !r.choice).map((r) => [r.term, `${r.value} ${r.unit} ${r.other} ${r.state}`]));
  });
}

async function numbersStay(page) {
  for (const row of (await read(page)).rows.filter((r) => !r.choice)) {
    assert.equal(`${row.value} ${row.unit} ${row.other} ${row.state}`, known.get(row.term), `${row.term}: the printed number went`);
  }
}

const lacks = {
  "no WebAssembly": () => { delete window.WebAssembly; },
  "no way to unpack": () => { delete window.DecompressionStream; },
  "WebAssembly that refuses": () => { WebAssembly.instantiateStreaming = () => Promise.reject(new WebAssembly.CompileError("refused")); },
};
for (const [what, before] of Object.entries(lacks)) {
  test(`${what}: the sheet says so in words, and the printed numbers stay`, async () => {
    await withPage(browser, { before }, async (page) => {
      await page.goto(address(chain));
      await said(page, "engine.failed");
      await numbersStay(page);
      await typeOver(page, "static-level", "150 ft");
      assert.equal(rowOf(await read(page), "static-level").value, "150 ft", "the field took no text");
      await page.locator(".tools .switch label", { hasText: words["units.si"] }).click();
      assert.equal(rowOf(await read(page), "total-head").value, "104.5", "the switch of the units needs the engine");
    });
  });
}

for (const name of ["engine.js", "book.js", "names.js"]) {
  test(`${name} is missing: the sheet says so, and the printed numbers stay`, async () => {
    const dir = copyOf({ [asset(name)]: null });
    await withPage(browser, { dir }, async (page, guard) => {
      guard.allow(/could not load .*\/(engine|book|names)\.|ERR_FILE_NOT_FOUND/);
      await page.goto(address(chain, dir));
      await said(page, "engine.file");
      await numbersStay(page);
    });
  });
}

/** Runs before the page: keeps hold of the engine's instances, to break them. */
function hold() {
  window.held = [];
  const stream = WebAssembly.instantiateStreaming;
  WebAssembly.instantiateStreaming = async (...args) => {
    const started = await stream.apply(WebAssembly, args);
    window.held.push(started.instance);
    return started;
  };
  const Plain = WebAssembly.Instance;
  WebAssembly.Instance = function (...args) {
    if (window.noMore) throw new RangeError("out of memory");
    const instance = new Plain(...args);
    window.held.push(instance);
    return instance;
  };
}

/** In the page: writes over all the memory of the engine that runs now. */
const kill = () => new Uint8Array(window.held.at(-1).exports.memory.buffer).fill(0xff);

test("an engine that dies is started again, and nothing is lost", async () => {
  await withPage(browser, { before: hold }, async (page) => {
    await page.goto(address(chain));
    await page.waitForFunction(hasAnswered);
    await enter(page, "static-level", "150 ft");
    for (const [typed, level] of [["60", "210"], ["61", "211"]]) {
      const before = await page.evaluate(() => window.held.length);
      await page.evaluate(kill);
      await enter(page, "drawdown", typed);
      const sheet = await read(page);
      assert.equal(await page.evaluate(() => window.held.length), before + 1, "no new engine was started, so the old one did not die");
      assert.equal(rowOf(sheet, "pumping-level").value, level);
      assert.doesNotMatch(sheet.foot, wordPattern("engine.died"), "the sheet complains although it works");
      sameAsNative(mainLines(sheet), factsOf(sheet).facts);
    }
  });
});

test("an engine that cannot be started again is told of, and what was typed stays", async () => {
  await withPage(browser, { before: hold }, async (page) => {
    await page.goto(address(chain));
    await page.waitForFunction(hasAnswered);
    await page.evaluate(kill);
    await page.evaluate(() => (window.noMore = true));
    await enter(page, "static-level", "150 ft");
    await said(page, "engine.died");
    assert.match(page.url(), /static-level:150ft/, "the facts are not in the address");
    await page.reload();
    await page.waitForFunction(hasAnswered);
    assert.equal(rowOf(await read(page), "pumping-level").value, "205");
  });
});

test("fields can be typed into before the engine is there", async () => {
  await withPage(browser, { before: () => { window.requestIdleCallback = () => 0; } }, async (page) => {
    await page.goto(address(chain));
    await page.locator(field("static-level")).waitFor();
    await page.evaluate((selector) => {
      const input = document.querySelector(selector);
      input.focus();
      input.value = "150";
      input.dispatchEvent(new Event("input", { bubbles: true }));
    }, field("static-level"));
    await page.waitForFunction(() => document.querySelector('li[data-term="pumping-level"] input').value === "205");
  });
});

test("the engine is loaded only where there is a sheet, and comes by itself", async (t) => {
  await withPage(browser, {}, async (page) => {
    const asked = [];
    page.on("request", (r) => asked.push(r.url()));
    await page.goto(address("index.html"));
    await page.waitForTimeout(1500);
    assert.ok(!asked.some((u) => /assets\/(engine|book)\./.test(u)), "a page without a sheet loads the engine");
    await page.goto(address(chain));
    await page.waitForFunction(hasAnswered);
    const ms = await page.evaluate(() => Math.round(performance.now()));
    t.diagnostic(`the engine had answered at most ${ms} ms after the page was opened`);
    assert.ok(!asked.some((u) => u.endsWith(asset("engine.packed"))), "from a folder the packed script is used");
  });
});

test("from a server the engine is streamed, and the numbers are the same", async () => {
  const types = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".wasm": "application/wasm", ".woff2": "font/woff2" };
  const asked = [];
  const server = createServer((request, response) => {
    const file = join(editionDir(), normalize(decodeURIComponent(request.url.split(/[?#]/)[0])));
    asked.push(request.url);
    if (!existsSync(file) || !statSync(file).isFile()) return response.writeHead(404).end();
    response.writeHead(200, { "Content-Type": types[extname(file)] ?? "application/octet-stream" });
    createReadStream(file).pipe(response);
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  const origin = `http://127.0.0.1:${server.address().port}`;
  try {
    await withPage(browser, { online: origin }, async (page, guard) => {
      guard.allow(/favicon/);
      await page.goto(`${origin}/${chain}`);
      await page.waitForFunction(hasAnswered);
      await enter(page, "static-level", "150 ft");
      const sheet = await read(page);
      assert.equal(rowOf(sheet, "pumping-level").value, "205");
      sameAsNative(mainLines(sheet), factsOf(sheet).facts);
      assert.ok(asked.includes("/" + asset("engine.packed")) && !asked.includes("/" + asset("engine.js")), `asked for ${asked}`);
      await page.goto(`${origin}/terms/total-head.html`);
      await page.getByRole("button", { name: words["sheet.last"] }).waitFor();
    });
  } finally {
    server.closeAllConnections();
    server.close();
  }
});
