// Where the programs are that the checks drive. A missing one is an error that says what to install.
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";

function find(name) {
  for (const dir of (process.env.PATH ?? "").split(delimiter)) {
    try {
      accessSync(join(dir, name), constants.X_OK);
      return join(dir, name);
    } catch {
      // not in this folder
    }
  }
  return null;
}

function program(names, pack) {
  for (const name of names) {
    const found = find(name);
    if (found) return found;
  }
  throw new Error(`${names[0]} is not installed; on Debian: apt-get install -y --no-install-recommends ${pack}`);
}

export const chromiumPath = () => program(["chromium", "chromium-browser", "google-chrome"], "chromium");
export const firefoxPath = () => program(["firefox-esr", "firefox"], "firefox-esr");
export const javaPath = () => program(["java"], "default-jre-headless");
export const pdftotextPath = () => program(["pdftotext"], "poppler-utils");
export const pdfinfoPath = () => program(["pdfinfo"], "poppler-utils");

/** The checker of EPUB books, a Java archive. */
export function epubcheckPath() {
  const file = "/usr/share/java/epubcheck.jar";
  try {
    accessSync(file, constants.R_OK);
  } catch {
    throw new Error(`${file} is not there; on Debian: apt-get install -y --no-install-recommends epubcheck`);
  }
  return file;
}
