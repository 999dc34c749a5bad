// The edition under test, and copies of it that a test may break on purpose.
import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

export const project = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");

const made = [];
process.on("exit", () => made.forEach((dir) => rmSync(dir, { recursive: true, force: true })));

/** A folder of its own that goes when the process ends. */
export function scratch(name) {
  const dir = mkdtempSync(join(tmpdir(), `columnbowl-${name}-`));
  made.push(dir);
  return dir;
}

let command = process.env.COLUMNBOWL_COMMAND ?? "";

/** The columnbowl command; run.sh hands it over, a test run alone builds it. */
export function columnbowl() {
  if (command === "") {
    const file = join(scratch("command"), "columnbowl");
    execFileSync("go", ["build", "-o", file, "./build"], { cwd: project, stdio: "inherit" });
    command = file;
  }
  return command;
}

let content = process.env.COLUMNBOWL_CONTENT ?? "";

/**
 * The content that the edition was bound from: a copy, so that nobody who edits the content meanwhile
 * makes the page and the native engine speak of two different books.
 */
export function contentDir() {
  if (content === "") {
    const dir = join(scratch("content"), "content");
    cpSync(join(project, "content"), dir, { recursive: true });
    content = dir;
  }
  return content;
}

let bound = process.env.COLUMNBOWL_EDITION ?? "";

/** The folder of the edition; run.sh hands it over, a test run alone binds the content. */
export function editionDir() {
  if (bound === "") {
    const dir = join(scratch("edition"), "out");
    execFileSync(columnbowl(), ["bind", "--content", contentDir(), "--checks", "testdata/published/checks", "--out", dir], { cwd: project, stdio: ["ignore", "ignore", "inherit"] });
    bound = dir;
  }
  return bound;
}

/** The address by which a double click opens a page of the edition. */
export function address(path, dir = editionDir()) {
  const [file, fragment] = path.split("#");
  return pathToFileURL(join(dir, file)).href + (fragment === undefined ? "" : "#" + fragment);
}

/** All HTML files of the edition, as paths inside it. */
export function htmlFiles(dir = editionDir()) {
  return readdirSync(dir, { recursive: true }).map(String).filter((f) => f.endsWith(".html")).sort();
}

export const isPage = (file) => file !== "hub.html";

export function textOf(file, dir = editionDir()) {
  return readFileSync(join(dir, file), "utf8");
}

/** The path of an asset by its plain name: the names of most carry a sum of their bytes. */
export function asset(name, dir = editionDir()) {
  const [stem, ending] = name.split(".");
  const file = readdirSync(join(dir, "assets")).find((f) => f === name || (f.startsWith(stem + ".") && f.endsWith("." + ending) && f.split(".").length === 3));
  if (file === undefined) throw new Error(`the edition has no asset ${name}`);
  return "assets/" + file;
}

/** The path of a drawing by its plain name. */
export function drawing(name, dir = editionDir()) {
  const file = readdirSync(join(dir, "drawings")).find((f) => f.split(".")[0] === name);
  if (file === undefined) throw new Error(`the edition has no drawing ${name}`);
  return "drawings/" + file;
}

/** A copy of the edition. edit maps a file's text to another, per path. */
export function copyOf(edits = {}) {
  const dir = join(scratch("copy"), "out");
  cpSync(editionDir(), dir, { recursive: true });
  for (const [file, edit] of Object.entries(edits)) {
    if (edit === null) rmSync(join(dir, file));
    else writeFileSync(join(dir, file), edit(textOf(file, dir)));
  }
  return dir;
}

/** One page of every kind, as many as the checks of looks and of access need. */
export function samplePages() {
  const files = htmlFiles();
  const some = (folder, preferred, n) => {
    const all = files.filter((f) => dirname(f) === folder && !f.endsWith("index.html")).map((f) => relative(folder, f).replace(/\.html$/, ""));
    const list = [...preferred.filter((p) => all.includes(p)), ...all.filter((f) => !preferred.includes(f))];
    if (list.length < n) throw new Error(`the edition has ${list.length} pages in ${folder}/, ${n} are needed`);
    return list.slice(0, n).map((id) => `${folder}/${id}.html`);
  };
  return [
    "index.html",
    ...some("terms", ["total-head", "build", "stages"], 3),
    ...some("parts", ["head-shaft", "impeller"], 2),
    ...some("chapters", ["levels-and-heads", "powers-and-efficiencies"], 2),
    ...some("places", ["heads-and-losses"], 1),
    ...some("questions", ["how-big-a-pump"], 1),
    "questions/index.html",
    "sources.html",
    ...some("practice", ["chain-of-three", "name-the-part", "order-the-parts"], 3),
    "practice/index.html",
    ...some("pairs", ["field-head-total-head", "head-shaft-line-shaft"], 2),
    "pairs/index.html",
    "glossary.html",
    ...some("guides", ["authors", "trainers"], 2),
    "practice/cards.html",
    "practice/progress.html",
    "terms/index.html",
    "parts/index.html",
    "builds/index.html",
    "builds/oil-lubricated.html",
    "well-to-wire.html",
    "desk.html",
    "bowls.html",
    "take-off.html",
    "choices/lubrication.html",
    "faults/field-test.html",
  ];
}

/** The words of the interface, so that a check follows when they change. */
export const words = JSON.parse(readFileSync(join(project, "site", "words.json"), "utf8"));

/** A text of words.json as a pattern: what stands for {0} may be anything. */
export function wordPattern(key) {
  if (!(key in words)) throw new Error(`site/words.json has no ${key}`);
  const escaped = words[key].replace(/[.*+?^$()|[\]\\]/g, "\\$&");
  return new RegExp(escaped.replace(/\{\d\}/g, "(.+)"));
}
