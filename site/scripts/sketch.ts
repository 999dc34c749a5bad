// A drawing that stands once in the document, shown where a page wants it.

const space = "http://www.w3.org/2000/svg";

/** Shows the drawing of "k3", or of "k3 k3-impeller" with that part lit. */
export function sketch(wanted: string, alt: string): SVGSVGElement {
  const [id = "", lit] = wanted.split(" ");
  const svg = document.createElementNS(space, "svg");
  svg.setAttribute("class", "fig printed");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", alt);
  svg.setAttribute("viewBox", document.getElementById(id)?.getAttribute("viewBox") ?? "0 0 1 1");
  svg.append(use(id, ""));
  if (lit !== undefined) svg.append(use(lit, "lit"));
  return svg;
}

function use(id: string, kind: string): SVGUseElement {
  const u = document.createElementNS(space, "use");
  u.setAttribute("href", "#" + id);
  if (kind !== "") u.setAttribute("class", kind);
  return u;
}
