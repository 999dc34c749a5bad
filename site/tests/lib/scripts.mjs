// Scripts of the site that know no page, taken into Node: their types are stripped and they are
// imported from a folder of their own.
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { project, scratch } from "./edition.mjs";

const ts = createRequire(import.meta.url)("typescript");
const dir = scratch("scripts");
writeFileSync(join(dir, "package.json"), '{"type": "module"}\n');

/** Imports site/scripts/NAME.ts; what it imports itself must have been named before it. */
export async function script(name) {
  const source = readFileSync(join(project, "site", "scripts", `${name}.ts`), "utf8");
  const { outputText } = ts.transpileModule(source, { compilerOptions: { target: "es2022", module: "esnext" } });
  const file = join(dir, `${name}.js`);
  writeFileSync(file, outputText.replace(/from "(\.\/\w+)"/g, 'from "$1.js"'));
  return import(pathToFileURL(file).href);
}
