// With the keyboard alone: everything is reached in the order of the page, the focus is seen, and
// nothing holds it.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, words } from "./lib/edition.mjs";
import { hasAnswered, readSheet, rowOf } from "./lib/sheet.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

/** In the page: what has the focus, and how it is drawn. */
function focused() {
  const e = document.activeElement;
  if (!e || e === document.body || e === document.documentElement) return null;
  const drawn = (x) => {
    const c = getComputedStyle(x);
    return [c.outlineStyle, c.outlineWidth, c.outlineColor, c.boxShadow, c.borderColor, c.borderWidth, c.backgroundColor, c.color, c.textDecorationLine, c.stroke, c.strokeWidth, c.opacity].join("|");
  };
  // a radio button may show its focus on the words beside it, a link of a drawing on its shapes
  const parts = [e, e.parentElement, ...(e.nextElementSibling ? [e.nextElementSibling] : []), ...e.querySelectorAll("*")].slice(0, 12);
  const now = parts.map(drawn);
  const r = e.getBoundingClientRect();
  const inWindow = r.bottom > 0 && r.top < innerHeight && r.right > 0 && r.left < innerWidth;
  const mark = e.dataset.walked ?? (e.dataset.walked = String(document.querySelectorAll("[data-walked]").length));
  e.blur();
  const off = parts.map(drawn);
  e.focus({ preventScroll: true });
  return {
    mark,
    tag: e.tagName.toLowerCase(),
    type: e.getAttribute("type") ?? "",
    name: (e.getAttribute("aria-label") ?? e.textContent ?? "").trim().slice(0, 50),
    href: e.getAttribute("href") ?? "",
    term: e.closest("li.row")?.dataset.term ?? "",
    place: e.closest("nav.rail") ? "rail" : e.closest("header") ? "masthead" : e.closest("fact-sheet") ? "sheet" : e.closest("main") ? "main" : "",
    seen: now.some((d, i) => d !== off[i]),
    inWindow,
  };
}

/** Presses Tab until the walk is round; the last focusable thing gives the focus back to the window. */
async function walk(page, key = "Tab", most = 400) {
  const steps = [];
  for (let i = 0; i < most; i++) {
    await page.keyboard.press(key);
    const at = await page.evaluate(focused);
    if (at === null || (steps.length > 0 && at.mark === steps[0].mark)) return { steps, round: true };
    steps.push(at);
  }
  return { steps, round: false };
}

for (const file of ["index.html", "well-to-wire.html", "terms/total-head.html", "chapters/levels-and-heads.html", "practice/chain-of-three.html", "practice/order-the-parts.html", "desk.html", "bowls.html", "take-off.html", "builds/oil-lubricated.html"]) {
  test(`${file}: Tab reaches everything once, in order, and the focus is seen`, async () => {
    await withPage(browser, {}, async (page) => {
      await page.goto(address(file));
      if (await page.locator("fact-sheet").count()) await page.waitForFunction(hasAnswered);
      await page.locator(".tools .switch").waitFor();
      const { steps, round } = await walk(page);
      assert.ok(round, `the walk does not come round; it ends in ${steps.slice(-4).map((s) => s.name).join(", ")}`);
      assert.deepEqual(steps.filter((s) => !s.seen).map((s) => `${s.tag} ${s.name}`), [], "focus that is not seen");
      assert.deepEqual(steps.filter((s) => !s.inWindow).map((s) => `${s.tag} ${s.name}`), [], "focus outside the window");
      assert.equal(steps[0].href, "#main", "the first stop is not the way past the masthead");
      const rail = steps.filter((s) => s.place === "rail" && s.href.includes("places/"));
      assert.equal(rail.length, 11, `links of the rail that Tab reaches: ${rail.map((s) => s.name)}`);
      assert.ok(steps.some((s) => s.type === "radio" && s.place === "masthead"), "the units switch is not reached");
      const fields = await page.evaluate(() => Array.from(document.querySelectorAll("fact-sheet li.row :is(input:not([type=radio]), select)"), (e) => e.closest("li").dataset.term));
      const walked = steps.filter((s) => s.term && (s.tag === "select" || (s.tag === "input" && s.type === "text"))).map((s) => s.term);
      assert.deepEqual(walked, fields, "the fields of the sheets, in the order of their lines");
      const buttons = file === "desk.html" ? ["desk.new", "desk.read", "desk.print"] : ["sheet.print", "sheet.ask", "sheet.steps", "sheet.back"];
      if (fields.length > 0) for (const key of buttons) assert.ok(steps.some((s) => s.tag === "button" && s.name === words[key]), `“${words[key]}” is not reached`);
      const order = ["masthead", "rail", "main"].map((p) => steps.findIndex((s) => s.place === p || (p === "main" && s.place === "sheet")));
      assert.ok(order[0] < order[1] && order[1] < order[2], `masthead, rail and text come as ${order}`);
    });
  });
}

test("Shift and Tab go back the same way", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("terms/total-head.html"));
    await page.waitForFunction(hasAnswered);
    await page.locator(".tools .switch").waitFor();
    const forth = (await walk(page)).steps;
    await page.evaluate(() => document.activeElement?.blur());
    const back = (await walk(page, "Shift+Tab")).steps;
    const marks = (steps) => steps.map((s) => s.mark).sort();
    assert.deepEqual(marks(back), marks(forth));
  });
});

test("the skip link jumps over masthead and rail", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("well-to-wire.html"));
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    assert.ok((await page.evaluate(focused)).place.match(/main|sheet/), "the next stop is not in the text");
  });
});

test("typing, Enter and Escape work a sheet without a pointer", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("well-to-wire.html"));
    await page.waitForFunction(hasAnswered);
    for (let i = 0; i < 200; i++) {
      await page.keyboard.press("Tab");
      if (await page.evaluate(() => document.activeElement.matches('li[data-term="static-level"] input'))) break;
    }
    await page.keyboard.type("150");
    await page.keyboard.press("Enter");
    assert.equal(await page.evaluate(() => document.activeElement.closest("li")?.dataset.term), "drawdown", "Enter does not lead to the next line");
    assert.equal(rowOf(await page.evaluate(readSheet), "pumping-level").value, "205");
    await page.keyboard.type("60");
    await page.keyboard.press("Escape");
    await page.waitForFunction(() => document.querySelector('li[data-term="pumping-level"] input').value === "205");
    assert.equal(rowOf(await page.evaluate(readSheet), "drawdown").value, "55");
    for (let i = 0; i < 300; i++) {
      await page.keyboard.press("Tab");
      if (await page.evaluate((t) => document.activeElement.textContent === t, words["sheet.back"])) break;
    }
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelector('li[data-term="pumping-level"] input').value === "195");
  });
});

test("Find and the units are worked with the arrow keys", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("terms/total-head.html"));
    await page.waitForFunction(hasAnswered);
    await page.locator(".tools input[value=us]").focus();
    await page.keyboard.press("ArrowRight");
    assert.equal(await page.evaluate(() => document.documentElement.dataset.units), "si");
    const find = page.locator("fact-sheet .find select");
    await find.focus();
    const before = await find.inputValue();
    await page.keyboard.press("ArrowUp");
    await page.waitForFunction((was) => document.querySelector("fact-sheet .find select").value !== was, before);
    assert.equal(await page.evaluate(() => document.querySelector("li.row.sum").dataset.term), await find.inputValue());
  });
});

test("the point of the curves is moved by keys, a family is drawn by them, and the focus stays", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("bowls.html"));
    await page.waitForSelector(".along input[aria-valuetext]");
    const slider = page.locator(".along input");
    const state = () => page.evaluate(() => ({
      said: document.querySelector(".along input").getAttribute("aria-valuetext"),
      at: Number(document.querySelector(".along input").value),
      drawn: document.querySelector(".curves svg [data-left]").outerHTML,
      held: document.activeElement === document.querySelector(".along input"),
    }));
    /** Presses a key and waits for the drawing that follows. */
    const press = async (key, times = 1) => {
      const was = await state();
      for (let i = 0; i < times; i++) await page.keyboard.press(key);
      await page.waitForFunction((said) => document.querySelector(".along input").getAttribute("aria-valuetext") !== said, was.said);
      const now = await state();
      assert.ok(now.held, `${key} loses the focus`);
      assert.notEqual(now.drawn, was.drawn, `the point does not move on ${key}`);
      return now.at - was.at;
    };
    await slider.focus();
    assert.ok((await press("ArrowRight")) > 0);
    assert.ok((await press("ArrowLeft")) < 0);
    assert.ok((await press("ArrowUp")) > 0);
    assert.ok((await press("PageDown")) <= -50, "a page is hardly more than a step");
    await press("End");
    assert.ok((await state()).at >= 990, "another family's axis came under the point at the end of the curve");
    await press("Home");
    assert.ok((await state()).at <= 10, "another family's axis came under the point at no flow");
    assert.ok((await press("ArrowRight", 5)) >= 40, "the point does not come back from the end of its axis");
    for (const [key, n] of [["Enter", 1], ["Space", 2]]) {
      const draw = page.locator("li.family .acts button").nth(n);
      const family = await draw.evaluate((b) => b.closest("li").dataset.family);
      await draw.focus();
      await page.keyboard.press(key);
      await page.waitForSelector(`[data-family="${family}"] button[aria-pressed=true]`);
      assert.equal(await page.evaluate(() => document.activeElement.closest("li.family")?.dataset.family), family, `${key} draws ${family} and loses the focus`);
    }
  });
});

test("the tools of a drawing are worked with arrows and Space, and a test of names is left", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("builds/submersible.html#bowls"));
    const sheet = page.locator("#bowls");
    await sheet.locator(".cutlive svg").waitFor();
    await sheet.getByRole("radio", { name: words["cut.labels.numbered"], exact: true }).focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    assert.equal(await sheet.locator(".cutsheet").getAttribute("data-labels"), "hidden");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Tab");
    await page.keyboard.press("ArrowRight");
    await sheet.locator("svg.follow-water").waitFor();
    await sheet.getByRole("button", { name: words["cut.apart"] }).focus();
    await page.keyboard.press("Space");
    await sheet.getByRole("button", { name: words["cut.together"] }).waitFor();
    assert.equal(await page.evaluate(() => document.activeElement.textContent), words["cut.together"]);
    await sheet.locator(".cuttools > summary").focus();
    await page.keyboard.press("Enter");
    assert.equal(await sheet.locator(".cuttools").evaluate((d) => d.open), false);
    await page.keyboard.press("Space");
    await sheet.getByRole("button", { name: words["cut.quiz.name"] }).focus();
    await page.keyboard.press("Enter");
    const end = sheet.getByRole("button", { name: words["cut.quiz.end"] });
    await end.waitFor();
    assert.ok(await page.evaluate(() => document.activeElement.closest(".cutcard") !== null), "the test begins without the focus");
    await end.focus();
    await page.keyboard.press("Enter");
    await end.waitFor({ state: "detached" });
    assert.ok(await page.evaluate(() => document.activeElement.closest("#bowls") !== null), "the end of the test loses the focus");
  });
});
