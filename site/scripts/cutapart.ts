// Pulls the assemblies of a drawing apart along the axis, and puts them together again. Only
// positions of what the engine drew are moved.
const gap = 40; // px of the sheet between two assemblies

const order = ["driver", "head", "column", "bowls", "motor"]; // from the top; the well stays

/** Moves the assemblies apart, or back. The drawing grows by the gaps. */
export function pull(svg: SVGSVGElement, apart: boolean): void {
  const list = order.flatMap((id) => svg.querySelector<SVGGElement>(`g.assembly[data-assembly="${id}"]`) ?? []);
  const box = svg.viewBox.baseVal;
  const whole = Number((svg.dataset.height ??= svg.getAttribute("height") ?? ""));
  const extra = apart ? gap * (list.length - 1) : 0;
  svg.classList.toggle("apart", apart);
  svg.setAttribute("viewBox", `0 0 ${box.width} ${whole + extra}`);
  svg.setAttribute("height", String(whole + extra));
  svg.querySelector(".cp")?.setAttribute("height", String(whole + extra));
  list.forEach((g, i) => (g.style.transform = apart ? `translateY(${i * gap}px)` : ""));
  svg.querySelector(".leader")?.remove();
  if (apart) leader(svg, whole + extra);
}

/** The line that the assemblies hang on: the axis, through all gaps. */
function leader(svg: SVGSVGElement, height: number): void {
  const axis = svg.querySelector<SVGGraphicsElement>(".axes .ax, .axes .axis")?.getBBox();
  const line = document.createElementNS("http://www.w3.org/2000/svg", "line");
  const x = String(axis ? axis.x + axis.width / 2 : svg.viewBox.baseVal.width / 2);
  for (const [name, value] of Object.entries({ class: "ax leader", x1: x, x2: x, y1: "4", y2: String(height - 4) })) line.setAttribute(name, value);
  svg.querySelector("g.assembly")?.before(line);
}
