// The book for reading devices, as the checker of its format sees it.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { join } from "node:path";
import { test } from "node:test";
import { columnbowl, contentDir, project, scratch } from "./lib/edition.mjs";
import { epubcheckPath, javaPath } from "./lib/programs.mjs";

test("the EPUB edition is valid: no error, no warning", () => {
  const file = join(scratch("epub"), "handbook.epub");
  execFileSync(columnbowl(), ["bind", "--content", contentDir(), "--checks", "testdata/published/checks", "--epub", file], { cwd: project });
  const run = spawnSync(javaPath(), ["-jar", epubcheckPath(), file, "--failonwarnings"], { encoding: "utf8" });
  assert.equal(run.status, 0, run.stdout + run.stderr);
  assert.match(run.stdout + run.stderr, /No errors or warnings detected/);
});
