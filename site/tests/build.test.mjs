// The pages of the pumps: the drawing that the engine makes takes the place of the printed one, and
// parts are picked, walked, hidden, asked for, pulled apart and compared.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { launch, withPage } from "./lib/chromium.mjs";
import { address, asset, copyOf, drawing, textOf, wordPattern, words } from "./lib/edition.mjs";
import { launchFirefox, withFirefoxPage } from "./lib/firefox.mjs";

let browser;
before(async () => void (browser = await launch()));
after(() => browser.close());

const oil = "builds/oil-lubricated.html";
const least = 12; // px, the smallest lettering

/** Opens a page at a sheet and waits for the living drawing. */
async function open(page, sheet, file = oil, dir = undefined) {
  await page.goto(address(`${file}#${sheet}`, dir));
  await page.locator(`#${sheet} .cutlive svg`).waitFor();
  return page.locator(`#${sheet}`);
}

const lit = (sheet) => sheet.locator("g.part.lit").evaluateAll((gs) => gs.map((g) => g.id.replace(/^d-[a-z]+-/, "")));
const card = (sheet) => sheet.locator(".cuttext").innerText();
const radio = (sheet, key) => sheet.getByRole("radio", { name: words[key], exact: true });
const button = (sheet, key) => sheet.getByRole("button", { name: words[key], exact: true });
const marked = (sheet) => sheet.locator("li[aria-current]").evaluateAll((list) => list.map((li) => li.dataset.label));

/** In the page: names of the list that stand anywhere in the drawing's own code. */
function leaks(id) {
  const sheet = document.getElementById(id);
  const code = sheet.querySelector(".cutlive svg").outerHTML.toLowerCase();
  return Array.from(sheet.querySelectorAll("li[data-label]"), (li) => [li.querySelector("a, .feature").textContent, li.querySelector("a") ? li.dataset.part : ""])
    .filter(([name, part]) => (name.includes(" ") && code.includes(name.toLowerCase())) || (part.includes("-") && code.includes(part)));
}

test("the living drawing takes the place of the printed one without moving the page", async () => {
  await withPage(browser, {}, async (page) => {
    await page.addInitScript(() => {
      window.shifts = 0;
      new PerformanceObserver((l) => l.getEntries().forEach((e) => (window.shifts += e.value))).observe({ type: "layout-shift", buffered: true });
    });
    const sheet = await open(page, "whole");
    const now = await sheet.locator(".cutlive svg").boundingBox();
    const printed = await sheet.evaluate(async (s) => {
      s.querySelector(".cutlive").hidden = true;
      s.querySelector("picture").hidden = false;
      const img = s.querySelector("img");
      img.loading = "eager";
      await img.decode();
      const { x, y, width, height } = img.getBoundingClientRect();
      return { x, y, width, height };
    });
    for (const side of ["x", "y", "width", "height"]) assert.ok(Math.abs(printed[side] - now[side]) <= 1, `${side}: ${printed[side]} became ${now[side]}`);
    assert.ok((await page.evaluate(() => window.shifts)) < 0.1, "the page moved while it was loaded");
  });
});

test("the room of the tools is kept before they are there", async () => {
  for (const width of [360, 768, 1280, 1920]) {
    await withPage(browser, { viewport: { width, height: 900 } }, async (page) => {
      const sheet = await open(page, "whole");
      const moved = await sheet.evaluate((s) => {
        const drawing = s.querySelector(".cutdraw");
        const before = drawing.getBoundingClientRect().y;
        s.querySelector(".cuttools").remove();
        return drawing.getBoundingClientRect().y - before;
      });
      assert.ok(Math.abs(moved) <= 4, `at ${width} px the drawing stands ${moved} px from where it would be painted first`);
    });
  }
});

test("a part is picked by pointer in the drawing, by its balloon, and in the list", async () => {
  await withPage(browser, { viewport: { width: 1280, height: 1300 } }, async (page) => {
    const sheet = await open(page, "bowls");
    const shaft = await sheet.locator("#d-bowls-bowl-shaft").boundingBox();
    await page.mouse.click(shaft.x + shaft.width / 2 - 6, shaft.y + 40);
    assert.deepEqual(await lit(sheet), ["bowl-shaft"]);
    assert.match(await card(sheet), /Bowl shaft\s+turns\n+The bowl shaft/);
    assert.deepEqual(await marked(sheet), ["bowl-shaft"]);
    const n = await sheet.locator("li[data-label=discharge-case]").getAttribute("value");
    await sheet.locator("text.cb").filter({ hasText: new RegExp(`^${n}$`) }).click();
    assert.deepEqual(await lit(sheet), ["discharge-case"]);
    await sheet.locator("li[data-label=suction-case] .o").click();
    assert.deepEqual(await lit(sheet), ["suction-case"]);
    assert.match(await card(sheet), new RegExp(`Suction case\\s+${words["motion.stands"]}`));
    assert.equal(await sheet.locator(".cuttext a").getAttribute("href"), "../parts/suction-case.html");
    const empty = await sheet.locator(".cutlive svg").boundingBox();
    await page.mouse.click(empty.x + 60, empty.y + 4);
    assert.deepEqual(await lit(sheet), [], "a click beside the parts lets go");
  });
});

test("the pump is made otherwise by the keyboard, on every sheet that changes, and as usual again", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "column");
    const named = () => page.evaluate(() => document.activeElement?.value ?? document.activeElement?.textContent);
    const tab = async (until) => {
      for (let i = 0; i < 30 && !(await named()).includes(until); i++) await page.keyboard.press("Tab");
      assert.ok((await named()).includes(until), `Tab does not reach ${until}`);
    };
    assert.equal(await sheet.locator("#d-column-flanged-column-joint").count(), 0);
    await sheet.locator(".cuttools > summary").focus();
    await page.keyboard.press("Tab");
    await tab(words["cut.made"]);
    await page.keyboard.press("Enter");
    await tab("threaded");
    await page.keyboard.press("ArrowRight");
    assert.equal(await named(), "flanged");
    await sheet.locator("#d-column-flanged-column-joint").waitFor();
    const line = sheet.locator("li[data-label=flanged-column-joint] a");
    assert.equal(await line.getAttribute("href"), "../parts/flanged-column-joint.html", "the new part has no way to its page");
    const now = words["cut.made.now"].replace("{0}", `${words["cut.option.flanged"]} (${words["cut.choice.threaded"].toLowerCase()})`);
    assert.equal(await sheet.locator(".cutmade [aria-live=polite]").textContent(), now);
    assert.equal(await sheet.locator(".madenow").innerText(), now);
    assert.equal(await page.locator("[aria-live=polite].off").filter({ hasText: now }).count(), 1, "it is told more than once");
    assert.match(await sheet.locator(".cutlive svg > title").textContent(), /flanged/, "the name of the drawing");
    // one pump on all sheets: the list in the head and the whole pump follow, a sheet without joints does not
    assert.equal(await page.locator(".made input[value=flanged]").isChecked(), true);
    await page.evaluate(() => document.querySelector("#whole").scrollIntoView());
    await page.locator("#whole .cutlive svg > title", { hasText: "flanged" }).waitFor({ state: "attached" });
    await page.evaluate(() => document.querySelector("#stage").scrollIntoView());
    await page.locator("#stage .cutlive svg").waitFor();
    assert.equal(await page.locator("#stage .madenow").isVisible(), false);
    assert.equal(await page.locator("#power .cutmade").count(), 0, "a tool that changes nothing");
    await button(sheet, "cut.made.back").focus();
    await page.keyboard.press("Enter");
    await sheet.locator("#d-column-flanged-column-joint").waitFor({ state: "detached" });
    assert.equal(await named(), words["cut.made"], "the focus is lost with the button");
    assert.equal(await page.locator(".made input[value=threaded]").isChecked(), true);
    assert.equal(await sheet.locator(".madenow").isVisible(), false);
  });
});

test("an option that leaves nothing to choose closes the choice, and a test of names is not disturbed", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "stage");
    await sheet.locator(".cutmade > summary").click();
    await radio(sheet, "cut.option.key").check();
    assert.equal(await radio(sheet, "cut.option.taper-up").isDisabled(), true, "a keyed impeller has no collet");
    await sheet.locator("#d-stage-impeller-key").waitFor();
    await button(sheet, "cut.quiz.name").click();
    const asked = await lit(sheet);
    await page.locator(".made > summary").click();
    await page.locator(".made input[value=collet]").check();
    assert.deepEqual(await lit(sheet), asked);
    await button(sheet, "cut.quiz.end").click();
    await sheet.locator("#d-stage-impeller-collet").waitFor();
    assert.equal(await radio(sheet, "cut.option.taper-up").isDisabled(), false);
  });
});

test("the list scrolls to the part in its own column, and the page stays", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "whole");
    await page.evaluate(() => document.querySelector("#whole .cutcols").scrollIntoView());
    const at = await page.evaluate(() => scrollY);
    await sheet.locator("text.cb").filter({ hasText: /^26$/ }).click();
    const line = await sheet.locator("li[aria-current]").evaluate((li) => {
      const a = li.getBoundingClientRect(), b = li.closest(".cutscroll").getBoundingClientRect();
      return a.top >= b.top - 1 && a.bottom <= b.bottom + 1;
    });
    assert.ok(line, "the line is not in view in its column");
    assert.equal(await page.evaluate(() => scrollY), at);
  });
});

test("the keyboard walks the parts from the top down, and lets go", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "tube-tension");
    const order = await sheet.evaluate((s) => {
      const drawn = new Set(Array.from(s.querySelectorAll("g.part"), (g) => g.id.slice("d-tube-tension-".length)));
      return [...new Set(Array.from(s.querySelectorAll("li"), (li) => li.dataset.part))].filter((p) => drawn.has(p));
    });
    assert.ok(order.length >= 8);
    assert.equal(await sheet.locator("g.part[tabindex='0']").count(), 1, "one stop for Tab");
    await sheet.locator("g.part[tabindex='0']").focus();
    await page.keyboard.press("Home");
    const walked = [];
    for (let i = 0; i < order.length; i++) {
      const focused = await page.evaluate(() => document.activeElement.id.slice("d-tube-tension-".length));
      assert.deepEqual(await lit(sheet).then((l) => l.length), 1);
      walked.push(focused);
      await page.keyboard.press("ArrowDown");
    }
    assert.deepEqual(walked, order);
    await page.keyboard.press("End");
    assert.equal(await page.evaluate(() => document.activeElement.id), "d-tube-tension-" + order.at(-1));
    await page.keyboard.press("ArrowUp");
    assert.equal(await page.evaluate(() => document.activeElement.id), "d-tube-tension-" + order.at(-2));
    await page.keyboard.press("Escape");
    assert.deepEqual(await lit(sheet), []);
    assert.deepEqual(await marked(sheet), []);
    assert.match(await card(sheet), wordPattern("cut.none"));
    await button(sheet, "cut.next").click();
    assert.equal((await lit(sheet)).length, 1, "the step button");
  });
});

test("without labels nothing in the drawing tells a name", async () => {
  await withPage(browser, { viewport: { width: 1280, height: 1300 } }, async (page) => {
    const sheet = await open(page, "bowls");
    assert.ok((await page.evaluate(leaks, "bowls")).length > 5, "the check finds the names when they are there");
    await radio(sheet, "cut.labels.hidden").check();
    await page.waitForFunction(() => !document.querySelector("#d-bowls-impeller"));
    assert.deepEqual(await page.evaluate(leaks, "bowls"), []);
    assert.equal(await sheet.locator("g.part title").count(), 0, "a title gives the name away");
    assert.equal(await sheet.locator("svg text:visible").count(), 0, "labels are seen");
    assert.equal(await sheet.locator(".cutlist a:visible").count(), 0, "the list is seen");
    const names = await sheet.locator("g.part").evaluateAll((gs) => gs.map((g) => g.getAttribute("aria-label")));
    const neutral = new RegExp(`^(${wordPattern("cut.turns").source}|${wordPattern("cut.stands").source}|${wordPattern("cut.free-turns").source}|${wordPattern("cut.free-stands").source})$`);
    for (const name of names) assert.match(name, neutral);
    await button(sheet, "cut.next").click();
    assert.match((await card(sheet)).replace(/^\d+\s*/, ""), neutral);
    await radio(sheet, "cut.labels.numbered").check();
    assert.ok((await page.evaluate(leaks, "bowls")).length > 5);
    assert.ok(await sheet.locator(".cutlist a:visible").count());
  });
});

test("names come one by one, by button and by space", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "stage");
    await radio(sheet, "cut.labels.single").check();
    await sheet.locator("li.veiled").first().waitFor({ state: "attached" });
    const all = await sheet.locator("li").count();
    assert.equal(await sheet.locator("li.veiled").count(), all);
    assert.deepEqual(await page.evaluate(leaks, "stage"), []);
    assert.equal(await sheet.locator("g.part title, text.cn:visible").count(), 0, "a name is told before its time");
    const balloons = () => sheet.locator("circle.bal").evaluateAll((cs) => cs.map((c) => c.getBBox().y));
    const before = await balloons();
    assert.equal(before.length, all, "what is not told has its number");
    await button(sheet, "cut.show-next").click();
    assert.equal(await sheet.locator("li.veiled").count(), all - 1);
    await sheet.locator(".cutdraw").evaluate((e) => e.scrollIntoView());
    const at = await button(sheet, "cut.show-next").boundingBox();
    assert.ok(at.y > 0 && at.y + at.height <= 900, "the button is out of sight while the drawing is looked at");
    const first = await sheet.locator("li").first().locator("a, .feature").innerText();
    assert.ok((await card(sheet)).includes(first));
    assert.equal((await sheet.locator("text.cn:visible").allTextContents()).join(" "), first, "the drawing does not tell the name");
    assert.deepEqual(await balloons().then((b) => b.length), all - 1, "the name does not stand in the place of its number");
    await sheet.locator("g.part[tabindex='0']").focus();
    await page.keyboard.press("Space");
    assert.equal(await sheet.locator("li.veiled").count(), all - 2);
    for (let i = 2; i < all; i++) await button(sheet, "cut.show-next").click();
    assert.equal(await sheet.locator("li.veiled").count(), 0);
    assert.equal(await sheet.locator("circle.bal").count(), 0);
    await page.setViewportSize({ width: 360, height: 800 });
    await sheet.locator("rect.tag").waitFor();
    assert.equal(await sheet.locator("text.cn:visible").count(), 1, "on a narrow page the latest name stands over the drawing");
  });
});

test("with names the words stand in the drawing, where there is room", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "head");
    await radio(sheet, "cut.labels.named").check();
    await sheet.locator("text.cn", { hasText: "Discharge head" }).waitFor();
    await page.setViewportSize({ width: 600, height: 800 });
    await sheet.locator("text.cn").first().waitFor({ state: "detached" });
    assert.ok(await sheet.locator("text.cb").count(), "numbers come where names have no room");
  });
});

test("paths are followed as far as the drawing has them", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "whole");
    for (const path of ["water", "oil", "thrust", "torque"]) {
      await radio(sheet, "cut.follow." + path).check();
      await page.waitForFunction((p) => document.querySelector("#whole svg.follow-" + p), path);
      assert.deepEqual(await sheet.locator("g.path").evaluateAll((gs) => gs.filter((g) => getComputedStyle(g).display !== "none").map((g) => g.classList[1])), ["path-" + path]);
      assert.match(await card(sheet), wordPattern("cut.follow-says." + path));
    }
    await radio(sheet, "cut.follow.none").check();
    assert.equal(await sheet.locator("g.path").evaluateAll((gs) => gs.filter((g) => getComputedStyle(g).display !== "none").length), 0);
    assert.equal(await radio(page.locator("#stage"), "cut.follow.oil").count(), 0, "one stage shows no oil");
  });
});

test("assemblies are pulled apart in order, at once where motion is not wanted, and put together", async () => {
  await withPage(browser, { reducedMotion: "reduce" }, async (page) => {
    const sheet = await open(page, "whole");
    const tops = () => sheet.evaluate((s) => ["driver", "head", "column", "bowls"].map((id) => s.querySelector(`[data-assembly=${id}]`).getBoundingClientRect().top - s.querySelector("svg").getBoundingClientRect().top));
    const together = await tops();
    await button(sheet, "cut.apart").click();
    const apart = await tops();
    const moved = apart.map((t, i) => t - together[i]);
    for (let i = 1; i < moved.length; i++) assert.ok(moved[i] > moved[i - 1] + 20, `assembly ${i} moved by ${moved[i]}`);
    assert.equal(await sheet.locator("line.leader").count(), 1);
    await button(sheet, "cut.together").click();
    assert.deepEqual(await tops(), together);
    assert.equal(await sheet.locator("line.leader").count(), 0);
  });
});

test("stages can be changed within their range", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "bowls");
    const field = sheet.getByLabel(words["cut.stages"]);
    await field.fill("5");
    await field.press("Enter");
    await sheet.locator("text", { hasText: words["cut.more"].replace("{0}", "3") }).waitFor();
    await field.fill("99");
    await field.press("Enter");
    assert.equal(await field.inputValue(), "20");
    await sheet.locator("text", { hasText: words["cut.more"].replace("{0}", "18") }).waitFor();
  });
});

/** The name that belongs to the part that is marked in a test; numbers lead to it. */
const markedName = (sheet) => sheet.evaluate((s) => {
  const n = s.querySelector("g.part.lit").dataset.number;
  return Array.from(s.querySelectorAll("li")).find((li) => String(li.value) === n).querySelector("a").textContent;
});

test("a test of names: right, wrong, and what was missed comes again", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "tube-tension");
    await sheet.locator("li[data-label=tube-tension-nut] .o").click();
    await button(sheet, "cut.quiz.name").click();
    await sheet.getByText(words["cut.quiz.ask-name"]).waitFor();
    assert.equal(await markedName(sheet), "Tube tension nut", "what was looked at comes first");
    assert.ok((await card(sheet)).includes(words["cut.quiz.met"]));
    assert.deepEqual(await page.evaluate(leaks, "tube-tension"), []);
    const offers = () => sheet.locator(".cutcard .act").allInnerTexts().then((l) => l.slice(0, -1));
    const missed = await markedName(sheet);
    const first = await offers();
    assert.equal(new Set(first).size, 4);
    assert.ok(first.includes(missed));
    await sheet.locator(".cutcard").getByRole("button", { name: first.find((o) => o !== missed), exact: true }).click();
    assert.ok((await card(sheet)).includes(words["cut.quiz.was"].replace("{0}", missed)));
    assert.ok((await card(sheet)).includes(words["cut.quiz.score"].replace("{0}", "0").replace("{1}", "1")));
    const asked = [];
    let right = 0;
    for (let i = 0; i < 40; i++) {
      await button(sheet, "cut.quiz.next").click();
      if (!(await sheet.getByText(words["cut.quiz.ask-name"]).count())) break;
      const name = await markedName(sheet);
      asked.push(name);
      await sheet.locator(".cutcard").getByRole("button", { name, exact: true }).click();
      right++;
      assert.ok((await card(sheet)).includes(words["cut.quiz.right"].replace("{0}", name)));
      assert.ok((await card(sheet)).includes(words["cut.quiz.score"].replace("{0}", right).replace("{1}", right + 1)));
    }
    assert.ok(asked.includes(missed), "what was missed did not come again");
    assert.equal(new Set(asked).size, asked.length, "only what was missed comes twice");
    assert.match(await card(sheet), wordPattern("cut.quiz.done"));
    await button(sheet, "cut.quiz.end").click();
    assert.ok(await sheet.locator(".cutlist a:visible").count(), "the list came back");
    assert.ok((await page.evaluate(leaks, "tube-tension")).length > 3);
  });
});

test("a test of places: by pointer and by keyboard", async () => {
  await withPage(browser, { viewport: { width: 1280, height: 1300 } }, async (page) => {
    const sheet = await open(page, "tube-tension");
    const numberOf = (name) => sheet.evaluate((s, wanted) => Array.from(s.querySelectorAll("li")).find((li) => li.querySelector("a")?.textContent === wanted).value, name);
    await button(sheet, "cut.quiz.find").click();
    const question = wordPattern("cut.quiz.ask-find");
    const wanted = question.exec(await card(sheet))[1];
    const n = await numberOf(wanted);
    await sheet.locator("g.part[tabindex='0']").focus();
    await page.keyboard.press("Home");
    assert.deepEqual(await lit(sheet), [], "the walk must not answer");
    for (let i = 0; i < 30 && (await page.evaluate(() => document.activeElement.dataset.number)) !== String(n); i++) await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    assert.ok((await card(sheet)).includes(words["cut.quiz.right"].replace("{0}", wanted)));
    await button(sheet, "cut.quiz.next").click();
    const second = question.exec(await card(sheet))[1];
    const target = sheet.locator(`g.part[data-number="${await numberOf(second)}"] path`).first();
    await target.dispatchEvent("click", { bubbles: true });
    assert.ok((await card(sheet)).includes(words["cut.quiz.right"].replace("{0}", second)));
    await button(sheet, "cut.quiz.next").click();
    const third = question.exec(await card(sheet))[1];
    const other = (await numberOf(third)) === 1 ? 2 : 1;
    await sheet.locator(`g.part:not([data-number="${await numberOf(third)}"]) path`).nth(other).dispatchEvent("click", { bubbles: true });
    assert.match(await card(sheet), new RegExp(words["cut.quiz.lit"].replace("{0}", third).replaceAll(".", "\\.")));
    assert.equal(await markedName(sheet), third);
  });
});

test("two pumps are compared in drawings, words and table, and the table says the same", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("builds/index.html"));
    const pair = words["builds.compare.pair"].replace("{0}", words["build.water-lubricated"]).replace("{1}", words["build.oil-lubricated"]);
    await page.getByRole("radio", { name: pair, exact: true }).check();
    await page.locator("section.pump .cutlive svg").nth(1).waitFor();
    assert.equal(await page.locator("section.pump:visible").count(), 2);
    const lights = (build) => page.locator(`section[data-build=${build}] g.part.lit`).evaluateAll((gs, b) => gs.map((g) => g.id.slice(`m-${b}-`.length)), build);
    const rows = await page.locator("tr[data-part].differs").evaluateAll((trs) => trs.map((tr) => [tr.dataset.part, Array.from(tr.cells).slice(1, 3).map((td) => td.querySelector(".has") !== null)]));
    for (const [i, build] of ["water-lubricated", "oil-lubricated"].entries()) {
      const alone = new Set(rows.filter(([, has]) => has[i] && !has[1 - i]).map(([p]) => p));
      const shown = await lights(build);
      assert.ok(shown.length >= 3, `${build}: hardly anything is marked`);
      for (const p of shown) assert.ok(alone.has(p), `${p} is lit in ${build}, but is no difference`);
    }
    assert.ok((await lights("oil-lubricated")).includes("enclosing-tube"));
    assert.ok((await lights("water-lubricated")).includes("stuffing-box"));
    assert.equal(await page.locator("table.compare thead th:visible").count(), 3);
    await page.getByLabel(words["builds.compare.rows"]).check();
    assert.equal(await page.locator("tr[data-part]:visible").count(), rows.length);
    await page.getByRole("radio", { name: words["builds.compare.all"], exact: true }).check();
    assert.equal(await page.locator("section.pump:visible img:visible").count(), 3);
  });
});

test("which pump is this: the answer is told, with what it can be told by", async () => {
  await withPage(browser, {}, async (page) => {
    await page.goto(address("builds/index.html"));
    const box = page.locator("cut-which");
    await button(box, "which.start").click();
    const builds = ["water-lubricated", "oil-lubricated", "submersible"];
    const seen = new Set();
    // more than there are drawings: what was missed has come again; drawn by lot, so go on until both were seen
    for (let i = 0; i < 14 || (seen.size < 2 && i < 60); i++) {
      await box.locator(".cutlive svg").waitFor();
      const code = await box.locator("svg").evaluate((s) => s.outerHTML);
      assert.ok(!/lubricated|submersible|tube-|stuffing/.test(code), "the drawing tells the answer");
      await box.getByRole("button", { name: words["build.oil-lubricated"], exact: true }).click();
      const text = await box.locator(".whichtext").innerText();
      const right = text.includes(words["which.right"].replace("{0}", words["build.oil-lubricated"]));
      assert.ok(right || builds.some((b) => text.includes(words["which.wrong"].replace("{0}", words["build." + b]))), text);
      assert.match(text, new RegExp(`${wordPattern("which.by").source}|${wordPattern("which.by-lack").source}`));
      seen.add(right);
      await button(box, "which.next").click();
    }
    assert.equal(seen.size, 2, "no drawing of the pump that was always answered, or no other");
  });
});

test("lettering is never under 12 px: printed, living, on the three widths", async () => {
  for (const width of [360, 768, 1280]) {
    await withPage(browser, { viewport: { width, height: 900 } }, async (page) => {
      for (const build of ["water-lubricated", "oil-lubricated", "submersible"]) {
        await page.goto(address(`builds/${build}.html`));
        const small = await page.evaluate(async (bound) => {
          const bad = [];
          for (const img of document.querySelectorAll("main picture img")) {
            img.loading = "eager";
            const wide = Array.from(img.parentElement.querySelectorAll("source")).find((s) => matchMedia(s.media).matches) ?? img;
            const size = 16 * img.getBoundingClientRect().width / Number(wide.getAttribute("width"));
            if (img.offsetParent && size < bound) bad.push(`${img.alt}: ${size}`);
          }
          return bad;
        }, least);
        assert.deepEqual(small, [], `${build} at ${width}, printed`);
        await page.locator("#whole .cutlive svg").waitFor();
        const living = await page.locator("#whole").evaluate((s) => {
          const svg = s.querySelector(".cutlive svg");
          const k = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
          return Math.min(...Array.from(svg.querySelectorAll("text"), (t) => parseFloat(getComputedStyle(t).fontSize) * k));
        });
        assert.ok(living >= least, `${build} at ${width}, living: ${living}`);
        assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width);
      }
    });
  }
  const css = textOf(drawing("oil-lubricated-whole-768"));
  assert.match(css, /text\.cb\{font-size:16px/, "the printed drawing has the lettering that is counted with");
});

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

test("the living pages keep the rules of access, on every paper and in a test", async () => {
  await withPage(browser, {}, async (page) => {
    const check = async (what) => {
      if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe);
      return page.evaluate(async (state) => {
        const r = await window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"], resultTypes: ["violations"], preload: false });
        return r.violations.map((v) => `${state}: ${v.id} ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join("; ")}`);
      }, what);
    };
    const sheet = await open(page, "bowls");
    await sheet.locator("li[data-label=impeller] .o").click();
    await page.locator(".made > summary").click();
    await sheet.locator(".cutmade > summary").click();
    await radio(sheet, "cut.option.key").check();
    const found = await check("light, picked, made otherwise");
    for (const paper of ["dark", "contrast"]) {
      await page.locator(".paper label", { hasText: new RegExp(`^${words["theme." + paper]}$`) }).click();
      await page.evaluate(() => Promise.all(document.getAnimations().map((a) => a.finished.catch(() => null))));
      found.push(...(await check(paper)));
    }
    await button(sheet, "cut.quiz.name").click();
    found.push(...(await check("in a test")));
    await page.goto(address("builds/index.html"));
    await page.locator("cut-compare input[type=radio]").nth(1).check();
    await page.locator("section.pump .cutlive svg").nth(1).waitFor();
    found.push(...(await check("compared")));
    assert.deepEqual(found, [], found.join("\n"));
  });
});

test("if the drawings cannot be loaded the printed ones stay, and the page says why", async () => {
  const dir = copyOf({ [asset("cutaway.js")]: null });
  await withPage(browser, { dir }, async (page, guard) => {
    guard.allow(/cutaway\.|ERR_FILE_NOT_FOUND/);
    await page.goto(address(oil, dir));
    const sheet = page.locator("#whole");
    await sheet.locator(".cuttext", { hasText: wordPattern("cut.failed") }).waitFor();
    assert.ok(await sheet.locator("picture img").isVisible());
    assert.equal(await sheet.locator(".cuttools").isVisible(), false, "tools that do nothing");
    await sheet.locator("li[data-label=head-shaft] .o").click();
    assert.match(await card(sheet), /Head shaft/);
  });
});

test("paper gets the drawing with its numbers and the names", async () => {
  await withPage(browser, {}, async (page) => {
    const sheet = await open(page, "stage");
    await radio(sheet, "cut.labels.hidden").check();
    await page.emulateMedia({ media: "print" });
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    assert.ok(await sheet.locator("text.cb:visible").count(), "no numbers on paper");
    assert.ok(await sheet.locator(".cutlist a:visible").count(), "no names on paper");
    assert.equal(await sheet.locator(".cuttools:visible, .cutcard:visible").count(), 0);
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    await page.emulateMedia({ media: "screen" });
    assert.equal(await sheet.locator("svg text:visible").count(), 0, "hidden again");
  });
});

test("Firefox draws and picks as well", async () => {
  const fox = await launchFirefox();
  try {
    await withFirefoxPage(fox, async (page) => {
      await page.goto(address(oil + "#stage"));
      await page.waitForSelector("#stage .cutlive svg");
      await page.$eval("#stage li[data-label=impeller] .o", (e) => e.click());
      assert.deepEqual(await page.$$eval("#stage g.part.lit", (gs) => gs.map((g) => g.id)), ["d-stage-impeller"]);
    });
  } finally {
    await fox.close();
  }
});
