// Reading and working a calculation sheet as a person does. The functions that run in the page are
// plain, so that both browsers take them.

/** In the page: all that a sheet shows. */
export function readSheet() {
  const text = (e) => (e?.textContent ?? "").replace(/\s+/g, " ").trim();
  const sheet = document.querySelector("fact-sheet");
  const rows = Array.from(sheet.querySelectorAll("li.row"), (li) => {
    const field = li.querySelector(".v input, .v select");
    const printed = li.querySelector(".v .num");
    return {
      term: li.dataset.term,
      state: Array.from(li.classList).find((c) => !["row", "sum", "pick", "bad"].includes(c)) ?? "",
      word: text(li.querySelector(".st span")),
      sign: li.querySelector(".st use")?.getAttribute("href") ?? "",
      wanted: li.classList.contains("sum"),
      alive: field !== null,
      choice: field?.tagName === "SELECT" || li.dataset.choices !== undefined,
      value: field ? field.value : text(printed),
      unit: text(li.querySelector(".v i")),
      other: text(li.querySelector(".o")),
      work: text(li.querySelector(".wk")),
      say: text(li.querySelector(".say")),
      invalid: field?.getAttribute("aria-invalid") === "true",
      describedBy: field?.getAttribute("aria-describedby") ?? "",
      sayID: li.querySelector(".say")?.id ?? "",
      label: field?.getAttribute("aria-label") ?? "",
    };
  });
  return {
    rows,
    count: text(sheet.querySelector(".count")),
    title: text(sheet.querySelector("h2")),
    foot: text(sheet.querySelector(".sheetfoot")),
    news: Array.from(sheet.querySelectorAll(".sheetfoot .news"), text).join(" ").trim(),
    find: sheet.querySelector(".find select")?.value ?? "",
    hash: location.hash,
    facts: sheet.getAttribute("facts") ?? "",
    wantedAtStart: sheet.getAttribute("want") ?? "",
  };
}

/** In the page: whether the engine has answered. */
export function hasAnswered() {
  return document.querySelector("fact-sheet .warnings")?.hasAttribute("data-key") ?? false;
}

export const field = (term) => `fact-sheet li[data-term="${term}"] .v :is(input, select)`;

export function rowOf(sheet, term) {
  const row = sheet.rows.find((r) => r.term === term);
  if (!row) throw new Error(`the sheet has no line for ${term}`);
  return row;
}

/** The facts behind a sheet: those of its address, or those it opened with. */
export function factsOf(sheet) {
  const part = (name) => sheet.hash.replace(/^#/, "").split("&").find((p) => p.startsWith(name + "="))?.slice(name.length + 1);
  const list = sheet.hash.includes("facts=") || sheet.hash.includes("want=") ? part("facts") ?? "" : sheet.facts;
  const facts = list.split(",").filter(Boolean).map((item) => {
    const at = item.indexOf(":");
    return [decodeURIComponent(item.slice(0, at)), decodeURIComponent(item.slice(at + 1))];
  });
  return { facts: new Map(facts), want: decodeURIComponent(part("want") ?? sheet.wantedAtStart) };
}

/** Waits until the address carries what was typed last (it is written a moment after). */
export async function settled(page) {
  await page.evaluate(() => new Promise((done) => setTimeout(done, 400)));
}

/** Playwright: types over what stands in a field, key by key, and stays in it. */
export async function typeOver(page, term, text) {
  const place = page.locator(field(term));
  await place.focus();
  await page.keyboard.press("Control+A");
  if (text === "") await page.keyboard.press("Delete");
  else await page.keyboard.type(text);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

/** Playwright: types and leaves the field, so that the number that was understood stands there. */
export async function enter(page, term, text) {
  await typeOver(page, term, text);
  await page.keyboard.press("Enter");
  await settled(page);
}
