// The chain page, opened as by a double click, worked as a person works it. Every number is
// compared with the native engine for the same facts.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, words, wordPattern } from "./lib/edition.mjs";
import { mainLines, reckon, sameAsNative } from "./lib/native.mjs";
import { enter, factsOf, field, hasAnswered, readSheet, rowOf, settled, typeOver } from "./lib/sheet.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const chain = "well-to-wire.html";

/** Opens a page of the edition and waits for the engine. */
async function open(page, path = chain) {
  await page.goto(address(path));
  await page.waitForFunction(hasAnswered);
  return page.evaluate(readSheet);
}

const read = (page) => page.evaluate(readSheet);

/** The lines whose number or state differs between two readings of a sheet. */
const moved = (a, b) => a.rows.filter((r) => ["value", "state"].some((k) => r[k] !== rowOf(b, r.term)[k])).map((r) => r.term);

test("the printed numbers are those of the engine, page and native alike", async () => {
  const printed = await withPage(browser, { javaScriptEnabled: false }, async (page) => {
    await page.goto(address(chain));
    return read(page);
  });
  await withPage(browser, {}, async (page) => {
    const alive = await open(page);
    assert.ok(alive.rows.length >= 40, `only ${alive.rows.length} lines`);
    const { facts } = factsOf(alive);
    sameAsNative(alive, facts);
    for (const row of alive.rows.filter((r) => !r.choice)) {
      const before = rowOf(printed, row.term);
      assert.equal(row.value, before.value, `${row.term}: the number changed when the engine came`);
      assert.equal(row.state, before.state, `${row.term}: the state changed when the engine came`);
      assert.equal(row.other, before.other, `${row.term}: the small number changed when the engine came`);
    }
    assert.equal(alive.count, printed.count, "the count changed when the engine came");
  });
});

test("a fact typed moves every number that hangs on it, as typed in any unit", async () => {
  await withPage(browser, {}, async (page) => {
    const first = await open(page);
    assert.equal(rowOf(first, "static-level").state, "given");
    for (const [typed, stands] of [["150 ft", "150"], ["46 m", "150.9"], ["12'6\"", "12.5"], ["138-1/2 ft", "138.5"], ["160", "160"]]) {
      const before = await read(page);
      await enter(page, "static-level", typed);
      const sheet = await read(page);
      const { facts } = factsOf(sheet);
      assert.equal(rowOf(sheet, "static-level").value, stands, `${typed} was read as`);
      const answers = sameAsNative(typed === "46 m" ? sheet : mainLines(sheet), facts);
      const change = moved(before, sheet);
      for (const term of ["pumping-level", "lift", "field-head", "total-head", "bowl-power", "brake-power", "input-power"]) {
        assert.ok(change.includes(term), `${term} did not move when the static level became ${typed}`);
      }
      assert.ok(answers.get("total-head").steps.length > 3);
      assert.ok(!change.includes("capacity") && !change.includes("specific-capacity"), "numbers moved that do not hang on the level");
    }
  });
});

test("the numbers move while typing, and the caret stays", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await typeOver(page, "static-level", "152.5");
    const sheet = await read(page);
    assert.equal(rowOf(sheet, "static-level").value, "152.5", "what is being typed must stand as typed");
    assert.equal(rowOf(sheet, "pumping-level").value, "207.5");
    const at = await page.evaluate((selector) => {
      const input = document.querySelector(selector);
      return { focused: document.activeElement === input, caret: input.selectionStart };
    }, field("static-level"));
    assert.deepEqual(at, { focused: true, caret: 5 });
  });
});

for (const [what, typed] of [["nonsense", "abc"], ["a value out of range", "99999 ft"], ["a wrong unit", "150 psi"]]) {
  test(`${what} is explained beside the field, and costs no other fact`, async () => {
    await withPage(browser, {}, async (page) => {
      const first = await open(page);
      const { facts } = factsOf(first);
      await enter(page, "static-level", "150 ft");
      await typeOver(page, "static-level", typed);
      const sheet = await read(page);
      const row = rowOf(sheet, "static-level");
      assert.ok(row.say.length > 20, `no explanation beside the field: “${row.say}”`);
      assert.ok(row.invalid, "the field does not say aria-invalid");
      assert.equal(row.describedBy, row.sayID, "the explanation is not tied to the field");
      assert.equal(row.value, typed, "the typed text was taken away");
      facts.delete("static-level");
      const others = { ...sheet, rows: sheet.rows.filter((r) => r.term !== "static-level") };
      sameAsNative(what === "nonsense" ? others : mainLines(others), facts);
      for (const r of others.rows) if (facts.has(r.term)) assert.equal(r.state, "given", `${r.term} lost its fact`);
      noHoles(sheet);
      await page.keyboard.press("Escape");
      await settled(page);
      const restored = await read(page);
      assert.equal(rowOf(restored, "static-level").value, "150", "Escape did not restore");
      assert.ok(!rowOf(restored, "static-level").invalid);
      assert.equal(rowOf(restored, "static-level").say, "");
      sameAsNative(mainLines(restored), facts.set("static-level", "150 ft"));
    });
  });
}

test("an emptied field withdraws its fact, and what it carried waits", async () => {
  await withPage(browser, {}, async (page) => {
    const { facts } = factsOf(await open(page));
    await enter(page, "static-level", "");
    const sheet = await read(page);
    facts.delete("static-level");
    assert.deepEqual(factsOf(sheet).facts, facts);
    assert.equal(rowOf(sheet, "static-level").value, "");
    sameAsNative(sheet, facts);
    noHoles(sheet);
  });
});

/** No word of a programming language stands on a sheet. */
function noHoles(sheet) {
  for (const row of sheet.rows) {
    for (const key of ["word", "value", "unit", "other", "work", "say", "label"]) {
      assert.doesNotMatch(row[key], /undefined|NaN|null|\[object|Infinity/, `${row.term}: ${key}`);
    }
  }
  assert.doesNotMatch(sheet.foot + sheet.count, /undefined|NaN|null|\[object|Infinity/, "the foot of the sheet");
}

test("the SI switch swaps large and small, and a bare number then counts in SI", async () => {
  await withPage(browser, {}, async (page) => {
    const us = await open(page);
    await page.locator(".tools .switch label", { hasText: words["units.si"] }).click();
    const si = await read(page);
    const { facts } = factsOf(us);
    sameAsNative(si, facts, "si");
    for (const row of si.rows.filter((r) => !r.choice)) {
      const was = rowOf(us, row.term);
      assert.equal(row.state, was.state);
      if (was.other !== "") assert.equal(`${row.value} ${row.unit}`.trim(), was.other, `${row.term}: the small number did not become large`);
    }
    await enter(page, "static-level", "46");
    const typed = await read(page);
    assert.equal(rowOf(typed, "static-level").value, "46");
    assert.equal(rowOf(typed, "static-level").other.replace(/\s/g, " "), "150.9 ft");
    sameAsNative(mainLines(typed), factsOf(typed).facts, "si");
    noHoles(typed);
  });
});

test("every state can be reached, and says its word", async () => {
  await withPage(browser, {}, async (page) => {
    const seen = new Map();
    const note = (sheet) => {
      for (const r of sheet.rows) {
        assert.equal(r.word, words["state." + r.state], `${r.term}: the word of ${r.state}`);
        assert.equal(r.sign, "#sign-" + r.state, `${r.term}: the sign of ${r.state}`);
        seen.set(r.state, r.term);
      }
      const n = (state) => sheet.rows.filter((r) => r.state === state).length;
      assert.match(sheet.count, new RegExp(`\\b${n("given")} given`), `the count says “${sheet.count}”, ${n("given")} lines say given`);
      noHoles(sheet);
    };
    note(await open(page));
    await enter(page, "drawdown", "");
    note(await read(page));
    await enter(page, "drawdown", "55 ft");
    await enter(page, "pumping-level", "230 ft");
    const clashing = await read(page);
    note(clashing);
    const said = clashing.rows.filter((r) => r.state === "clash");
    assert.ok(said.length > 0, "two levels and a drawdown that disagree do not clash");
    assert.ok(said.some((r) => /55|205|195|35/.test(r.work)), `the clash is not explained: ${JSON.stringify(said)}`);
    await enter(page, "pumping-level", "");
    await page.selectOption(field("build"), "submersible");
    await settled(page);
    note(await read(page));
    const want = ["given", "follows", "estimated", "assumed", "missing", "waits", "clash", "not-applicable"];
    assert.deepEqual(want.filter((s) => !seen.has(s)), [], `states never shown; seen ${[...seen.keys()].join(", ")}`);
  });
});

test("a clash says which facts disagree, on every line that clashes", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await enter(page, "pumping-level", "230 ft");
    await page.selectOption(field("build"), "submersible");
    await settled(page);
    const sheet = await read(page);
    for (const r of sheet.rows.filter((x) => x.state === "clash")) assert.ok(r.work.length > 10, `${r.term} clashes and does not say with what`);
  });
});

test("Find looks for another term: drawdown from brake power", async () => {
  await withPage(browser, {}, async (page) => {
    const first = await open(page);
    const { facts, want } = factsOf(first);
    facts.delete("drawdown");
    facts.set("brake-power", "95 hp");
    await open(page, `${chain}#facts=${Array.from(facts, ([t, v]) => `${t}:${encodeURIComponent(v)}`).join(",")}&want=${want}`);
    const kept = rowOf(await read(page), want);
    await page.selectOption("fact-sheet .find select", "drawdown");
    await settled(page);
    const sheet = await read(page);
    const now = factsOf(sheet);
    assert.equal(now.want, "drawdown");
    assert.ok(!now.facts.has("drawdown"), "the term looked for is still a fact");
    assert.equal(now.facts.get(want)?.replace(/\s/g, ""), kept.value + kept.unit, "the term looked for before did not keep its value");
    assert.ok(rowOf(sheet, "drawdown").wanted && !rowOf(sheet, want).wanted);
    const native = reckon("drawdown", now.facts);
    assert.ok(native.value > 60, "more power bears more drawdown than in the example");
    sameAsNative(sheet, now.facts);
    assert.match(sheet.news, wordPattern("sheet.kept"));
    await page.getByRole("button", { name: words["sheet.back"] }).click();
    await settled(page);
    const back = await read(page);
    assert.deepEqual(factsOf(back).facts, factsOf(first).facts, "Back to the example does not bring the example back");
    assert.deepEqual(moved(first, back), []);
  });
});

test("Ask lists the questions for what is missing and leads to the first", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await enter(page, "drawdown", "");
    await page.getByRole("button", { name: words["sheet.ask"] }).click();
    const asked = await page.evaluate(() => ({
      lines: Array.from(document.querySelectorAll("fact-sheet .asks li"), (li) => li.textContent.trim()),
      focus: document.activeElement.closest("li.row")?.dataset.term ?? "",
    }));
    assert.ok(asked.lines.length > 0, "no question is listed");
    const native = reckon("overall-efficiency", factsOf(await read(page)).facts);
    assert.ok(native.missing.includes(asked.focus), `the focus is on “${asked.focus}”, the native engine misses ${native.missing}`);
  });
});

test("a link with facts gives the same sheet in another page", async () => {
  const [first, link] = await withPage(browser, {}, async (page) => {
    await open(page);
    await enter(page, "static-level", "12'6\"");
    await enter(page, "discharge-pressure", "0.45 MPa");
    const sheet = await read(page);
    return [sheet, page.url()];
  });
  assert.match(link, /#facts=.*static-level:12%276%22/, "the address does not carry what was typed");
  assert.match(link, /^[^#]*#[A-Za-z0-9._~%:,&=-]+$/, "the address holds what is not allowed in the link form");
  await withPage(browser, {}, async (page) => {
    await page.goto(link);
    await page.waitForFunction(hasAnswered);
    const second = await read(page);
    const bare = (s) => s.rows.map((r) => ({ ...r }));
    assert.deepEqual(bare(second), bare(first));
    assert.equal(second.count, first.count);
    assert.equal(second.find, first.find);
  });
});

test("a damaged link loses nothing but what is damaged, and says so", async () => {
  await withPage(browser, {}, async (page) => {
    const link = "#facts=static-level:150ft,%E0%A4%A:5ft,drawdown:,nobody-knows:3ft,setting:240ft,capacity:abc,casing,head-loss:0.61ft&want=total-head&odd=1";
    const sheet = await open(page, chain + link);
    assert.equal(rowOf(sheet, "static-level").value, "150");
    assert.equal(rowOf(sheet, "setting").value, "240");
    assert.equal(rowOf(sheet, "head-loss").value, "0.61");
    assert.ok(rowOf(sheet, "capacity").invalid && rowOf(sheet, "capacity").say !== "", "a fact that cannot be read is not explained at its line");
    assert.ok(rowOf(sheet, "total-head").wanted);
    for (const bad of ["%E0%A4%A:5ft", "drawdown:", "casing", "odd=1"]) assert.ok(sheet.news.includes(bad), `the sheet does not tell of “${bad}”: ${sheet.news}`);
    assert.ok(sheet.news.includes("nobody-knows"), "the sheet does not tell of a term that nobody knows");
    noHoles(sheet);
  });
});

test("an unknown term to look for in a link does not silence the sheet", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, chain + "#facts=static-level:150ft,drawdown:55ft&want=no-such-term");
    assert.equal(rowOf(sheet, "static-level").value, "150");
    assert.equal(rowOf(sheet, "pumping-level").value, "205", "nothing is worked out");
    assert.ok(sheet.news.includes("no-such-term"), `the sheet does not say that it does not know the term: “${sheet.news}”`);
  });
});

test("a link followed on the open page is taken", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await page.evaluate(() => (location.hash = "#facts=static-level:99ft,drawdown:1ft&want=pumping-level"));
    await page.waitForFunction(() => document.querySelector('li[data-term="pumping-level"] input').value === "100");
    const sheet = await read(page);
    sameAsNative(sheet, factsOf(sheet).facts);
  });
});

test("facts and units survive a reload and the way to another page", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    await enter(page, "static-level", "150 ft");
    await page.locator(".tools .switch label", { hasText: words["units.si"] }).click();
    await settled(page);
    await page.reload();
    await page.waitForFunction(hasAnswered);
    let sheet = await read(page);
    assert.equal(rowOf(sheet, "static-level").value, "45.72", "after a reload");
    sameAsNative(mainLines(sheet), factsOf(sheet).facts, "si");
    await page.locator('li[data-term="total-head"] a.nm').click();
    await page.waitForURL(/terms\/total-head\.html/);
    await page.waitForFunction(hasAnswered);
    assert.equal(await page.evaluate(() => document.documentElement.dataset.units), "si", "the units were forgotten");
    await page.getByRole("button", { name: words["sheet.last"] }).click();
    await settled(page);
    sheet = await read(page);
    assert.equal(factsOf(sheet).facts.get("static-level"), "150ft");
    sameAsNative(sheet, factsOf(sheet).facts, "si");
    await page.getByRole("link", { name: words["sheet.carry"] }).click();
    await page.waitForURL(/well-to-wire\.html/);
    await page.waitForFunction(hasAnswered);
    sheet = await read(page);
    assert.equal(rowOf(sheet, "static-level").value, "45.72", "carried back to the chain");
    sameAsNative(mainLines(sheet), factsOf(sheet).facts, "si");
  });
});

test("a worked example can be put on the sheet of its page", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page, "terms/total-head.html");
    const buttons = page.getByRole("button", { name: words["sheet.take"] });
    const n = await buttons.count();
    assert.ok(n > 0, "no example can be taken");
    await buttons.nth(n - 1).click();
    await settled(page);
    const sheet = await read(page);
    sameAsNative(sheet, factsOf(sheet).facts);
  });
});

test("the pictures move with the numbers, and come back with the example", async () => {
  await withPage(browser, {}, async (page) => {
    await open(page);
    const drawn = () => page.evaluate(() => Object.fromEntries([...document.querySelectorAll("[data-picture]")]
      .filter((p) => p.offsetParent !== null).map((p) => [p.dataset.picture, p.innerHTML])));
    const first = await drawn();
    assert.deepEqual(Object.keys(first), ["well", "ladder", "power", "annulus", "thrust", "stretch"]);
    await enter(page, "static-level", "190 ft");
    await page.waitForFunction(() => document.querySelector('[data-picture="well"]')?.textContent?.match(/190\sft/));
    const second = await drawn();
    for (const name of ["well", "ladder", "power", "thrust", "stretch"]) assert.notEqual(second[name], first[name], `${name} stood still`);
    assert.equal(second.annulus, first.annulus, "the column does not hang on the level");
    assert.match(await page.textContent(".pictures figcaption"), wordPattern("picture.redrawn"));
    await enter(page, "static-level", "140 ft");
    await page.waitForFunction(() => document.querySelectorAll(".redrawn").length === 0);
    assert.deepEqual(await drawn(), first);
  });
});
