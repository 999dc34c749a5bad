// What no page may do: reach for the network or for files outside its folder, print errors, break
// its own policy. Both browsers report through this.
import assert from "node:assert/strict";
import { pathToFileURL } from "node:url";

export class Guard {
  constructor(dir) {
    this.home = pathToFileURL(dir).href;
    this.troubles = [];
    this.allowed = [];
  }

  /** A trouble that this check makes on purpose. */
  allow(pattern) {
    this.allowed.push(pattern);
  }

  request(url) {
    if (/^(data|blob|about):/.test(url)) return;
    if (url.startsWith(this.home + "/")) return;
    this.trouble(`asked for ${url}`);
  }

  console(type, text) {
    if (type === "error" || type === "assert" || /Content.Security.Policy|violat/i.test(text)) this.trouble(`console ${type}: ${text}`);
  }

  trouble(text) {
    if (!this.allowed.some((p) => p.test(text))) this.troubles.push(text);
  }

  check() {
    assert.deepEqual(this.troubles, [], "the page made trouble");
  }
}

/** Runs in the page before anything of it: violations of the policy go to the console as errors. */
export function listenForViolations() {
  document.addEventListener("securitypolicyviolation", (e) => {
    console.error(`violates the policy: ${e.violatedDirective} ${e.blockedURI}`);
  });
}
