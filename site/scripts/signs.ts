// The signs of the states. A page carries those that it shows; what it may come to show is added here.
import assumed from "../signs/assumed.svg";
import caution from "../signs/caution.svg";
import clash from "../signs/clash.svg";
import danger from "../signs/danger.svg";
import estimated from "../signs/estimated.svg";
import follows from "../signs/follows.svg";
import given from "../signs/given.svg";
import missing from "../signs/missing.svg";
import notApplicable from "../signs/not-applicable.svg";
import outside from "../signs/outside.svg";
import several from "../signs/several.svg";
import waits from "../signs/waits.svg";

const signs: Record<string, string> = {
  assumed,
  caution,
  clash,
  danger,
  estimated,
  follows,
  given,
  missing,
  "not-applicable": notApplicable,
  outside,
  several,
  waits,
};

/** Adds the signs that the page does not have yet, as symbols that rows use. */
export function bringSigns(): void {
  const sprite = document.querySelector("svg.sprite");
  if (!sprite) return;
  for (const [name, text] of Object.entries(signs)) {
    if (document.getElementById(`sign-${name}`)) continue;
    const drawn = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
    const symbol = document.createElementNS("http://www.w3.org/2000/svg", "symbol");
    for (const a of drawn.attributes) if (a.name !== "xmlns") symbol.setAttribute(a.name, a.value);
    symbol.id = `sign-${name}`;
    symbol.append(...drawn.childNodes);
    sprite.append(symbol);
  }
}
