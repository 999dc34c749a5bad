// Every file of the edition as a piece of HTML: valid, named, within its policy, and every way on
// the pages leads somewhere.
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { createRequire } from "node:module";
import { dirname, posix } from "node:path";
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch } from "./lib/chromium.mjs";
import { editionDir, htmlFiles, isPage, textOf } from "./lib/edition.mjs";
import { javaPath } from "./lib/programs.mjs";

let browser;
let facts; // by file
before(async () => {
  browser = await launch();
  const page = await browser.newPage();
  facts = new Map();
  for (const file of htmlFiles()) facts.set(file, await page.evaluate(parse, textOf(file)));
});
after(() => browser.close());

/** In a browser: what is said in the markup alone, nothing loaded and nothing run. */
function parse(text) {
  const d = new DOMParser().parseFromString(text, "text/html");
  const elements = Array.from(d.querySelectorAll("*"));
  const attributes = elements.flatMap((e) => Array.from(e.attributes, (a) => ({ tag: e.localName, name: a.name, value: a.value })));
  const ids = elements.map((e) => e.id).filter(Boolean);
  return {
    doctype: d.doctype?.name ?? "",
    lang: d.documentElement.getAttribute("lang") ?? "",
    title: d.title.trim(),
    h1: Array.from(d.querySelectorAll("h1"), (h) => h.textContent.trim()),
    viewport: d.querySelector("meta[name=viewport]")?.content ?? "",
    policy: d.querySelector("meta[http-equiv=Content-Security-Policy]")?.content ?? "",
    policyBeforeLoads: !d.querySelector("script, link, style") || Boolean(d.querySelector("meta[http-equiv=Content-Security-Policy]")?.compareDocumentPosition(d.querySelector("script, link, style")) & 4),
    style: attributes.filter((a) => a.name === "style").length + d.querySelectorAll("style").length,
    handlers: attributes.filter((a) => /^on/.test(a.name)).map((a) => `${a.tag} ${a.name}`),
    inline: Array.from(d.querySelectorAll("script"), (s) => ({ src: s.getAttribute("src"), text: s.textContent.trim() })).filter((s) => s.text !== "" || s.src === null).length,
    loads: attributes.filter((a) => ["src", "srcset", "poster", "data", "action", "formaction", "ping"].includes(a.name) || (a.name === "href" && ["link", "use", "image", "base"].includes(a.tag))).map((a) => a.value),
    links: attributes.filter((a) => (a.name === "href" || a.name === "xlink:href") && a.tag === "a").map((a) => a.value),
    ids,
    doubled: ids.filter((id, i) => ids.indexOf(id) !== i),
  };
}

const every = (check) => {
  const bad = [];
  for (const [file, f] of facts) {
    const said = check(f, file);
    if (said) bad.push(`${file}: ${said}`);
  }
  assert.deepEqual(bad, []);
};

// The checker gives a file no origin, so that to it 'self' matches nothing; and a list without its
// role is no list to one screen reader when its marks are taken off by the style.
const knownBetter = /Resource violates Content Security Policy|The “list” role is unnecessary/;

test("the checker of HTML finds no error in the whole edition", async (t) => {
  const jar = createRequire(import.meta.url).resolve("vnu-jar/build/dist/vnu.jar");
  const args = ["-Xss1m", "-jar", jar, "--format", "json", "--exit-zero-always", "--skip-non-html", editionDir()];
  const out = await new Promise((done, fail) => execFile(javaPath(), args, { maxBuffer: 1 << 28 }, (e, stdout, stderr) => (e ? fail(e) : done(stderr || stdout))));
  const { messages } = JSON.parse(out);
  const where = (m) => `${m.url.replace(/.*\/out\//, "")}:${m.lastLine ?? 0}: ${m.message}${m.extract ? `  ${m.extract.replace(/\s+/g, " ").slice(0, 120)}` : ""}`;
  const warnings = new Map();
  for (const m of messages.filter((x) => x.type === "info" && !knownBetter.test(x.message))) warnings.set(m.message, [...(warnings.get(m.message) ?? []), m]);
  for (const [, list] of warnings) t.diagnostic(`${list.length} times: ${where(list[0])}`);
  const errors = messages.filter((m) => m.type !== "info");
  assert.deepEqual(errors.slice(0, 20).map(where), [], `${errors.length} errors`);
});

test("every page has a language, a title of its own and one heading of the first rank", () => {
  every((f) => (f.doctype !== "html" ? "no doctype" : f.lang === "" ? "no language" : f.title === "" ? "no title" : ""));
  every((f, file) => isPage(file) && (f.h1.length !== 1 || f.h1[0] === "") && `headings of the first rank: ${JSON.stringify(f.h1)}`);
  every((f, file) => isPage(file) && !/width=device-width/.test(f.viewport) && "no viewport");
  every((f, file) => isPage(file) && /user-scalable=no|maximum-scale/.test(f.viewport) && "it forbids zooming");
  const titles = new Map();
  every((f, file) => {
    const other = titles.get(f.title);
    titles.set(f.title, file);
    return other && `has the title of ${other}: ${f.title}`;
  });
});

test("the policy stands on every page, before anything is loaded, and keeps the network shut", () => {
  every((f) => {
    const rules = new Map(f.policy.split(";").map((r) => r.trim().split(/\s+/)).map(([name, ...values]) => [name, values]));
    if (rules.get("default-src")?.join() !== "'none'") return `default-src is ${rules.get("default-src")}`;
    for (const [name, values] of rules) {
      const odd = values.filter((v) => !["'none'", "'self'", "data:", "'wasm-unsafe-eval'"].includes(v));
      if (odd.length > 0) return `${name} allows ${odd}`;
      if (name === "script-src" && values.includes("data:")) return "script-src allows data:";
    }
    if (!rules.has("script-src")) return "no script-src";
    return f.policyBeforeLoads ? "" : "something is loaded before the policy";
  });
});

test("no style attribute, no inline script, no handler", () => {
  every((f) => f.style > 0 && `${f.style} styles inside the page`);
  every((f) => f.inline > 0 && `${f.inline} scripts inside the page`);
  every((f) => f.handlers.length > 0 && f.handlers.join(", "));
});

test("nothing is loaded from outside the folder", () => {
  every((f) => f.loads.filter((v) => /^([a-z][a-z0-9+.-]*:|\/)/i.test(v) && !v.startsWith("data:image/")).join(", "));
});

test("every link leads to a page and an id that exist", () => {
  const known = new Map([...facts].map(([file, f]) => [file, new Set(f.ids)]));
  for (const file of readdirSync(join(editionDir(), "drawings"))) { // a part is lit by the address of its drawing
    known.set("drawings/" + file, new Set(Array.from(textOf("drawings/" + file).matchAll(/ id="([^"]+)"/g), (m) => m[1])));
  }
  every((f, file) => {
    const bad = [];
    for (const link of new Set([...f.links, ...f.loads])) {
      if (/ZgotmplZ/.test(link)) bad.push(`${link} (an address that the template refused)`);
      if (/^(https?|mailto|data):/.test(link)) continue;
      const [path, fragment] = link.split("#");
      const target = path === "" ? file : posix.normalize(posix.join(dirname(file), decodeURIComponent(path)));
      if (!existsSync(join(editionDir(), target))) bad.push(`${link} (no such file)`);
      else if (fragment && !/^(facts|want|choose|seed)=/.test(fragment) && !known.get(target)?.has(decodeURIComponent(fragment))) bad.push(`${link} (no such id)`);
    }
    return bad.slice(0, 5).join(", ");
  });
  every((f) => f.doubled.length > 0 && `the ids ${f.doubled.slice(0, 5)} stand twice`);
});

test("every page can be reached from the first", () => {
  const seen = new Set(["index.html"]);
  for (const file of seen) {
    for (const link of facts.get(file)?.links ?? []) {
      if (/^[a-z]+:/.test(link)) continue;
      const path = link.split("#")[0];
      const target = path === "" ? file : posix.normalize(posix.join(dirname(file), decodeURIComponent(path)));
      if (facts.has(target)) seen.add(target);
    }
  }
  assert.deepEqual(htmlFiles().filter((f) => isPage(f) && !seen.has(f)), []);
});
