// The keyboard in a drawing: one stop for Tab, arrows walk the parts from the top down.

/** What the keys do. */
export interface Walker {
  /** The parts in the order of the walk. */
  readonly order: string[];
  /** Where the walk stands. */
  readonly at: string;
  group(part: string): SVGGElement | undefined;
  /** The walk has come to a part. */
  come(part: string): void;
  /** Enter or space on a part. */
  take(part: string, space: boolean): void;
  letGo(): void;
}

const steps: Record<string, number> = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1, Home: -Infinity, End: Infinity };

/** The part that lies a number of steps down from another; it stays within the ends. */
export function along(order: readonly string[], at: string, by: number): string {
  const i = order.indexOf(at);
  const from = i < 0 ? (by > 0 ? -1 : order.length) : i;
  return order[Math.min(Math.max(from + by, 0), order.length - 1)] ?? "";
}

/** Makes one part the stop for Tab. */
export function stopAt(w: Walker, part: string): void {
  const stop = w.order.includes(part) ? part : w.order[0];
  for (const p of w.order) w.group(p)?.setAttribute("tabindex", p === stop ? "0" : "-1");
}

export function walkKeys(e: KeyboardEvent, w: Walker): void {
  if (e.ctrlKey || e.metaKey || e.altKey) return;
  const by = steps[e.key];
  if (by !== undefined) {
    const part = along(w.order, w.at, by);
    stopAt(w, part);
    w.group(part)?.focus({ preventScroll: true });
    w.come(part);
  } else if (e.key === "Enter" || e.key === " ") w.take(w.at, e.key === " ");
  else if (e.key === "Escape") w.letGo();
  else return;
  e.preventDefault();
}

const enough = 120; // px of a part that must be seen

/** Brings a part into the window if little of it is seen; cover is what hides the window's lower edge. */
export function bringIn(g: SVGGElement | undefined, cover: number): void {
  const at = g?.getBoundingClientRect();
  if (!at) return;
  const seen = Math.min(at.bottom, innerHeight - cover) - Math.max(at.top, 0);
  if (seen >= Math.min(at.height, enough)) return;
  scrollBy({ top: Math.min((at.top + at.bottom) / 2, at.top + enough) - (innerHeight - cover) / 2 });
}

/** Brings the upper end of a drawing up if most of the window shows something else, as on a phone. */
export function showTop(e: Element): void {
  const { top } = e.getBoundingClientRect();
  if (top > innerHeight * .55) scrollBy({ top: top - innerHeight * .2 });
}

/** Does something once, at rest, when an element comes near the window. */
export function whenNear(e: Element, then: () => void): void {
  const near = new IntersectionObserver((seen) => {
    if (!seen.some((s) => s.isIntersecting)) return;
    near.disconnect();
    if (typeof requestIdleCallback === "function") requestIdleCallback(then, { timeout: 2000 });
    else setTimeout(then, 200);
  }, { rootMargin: "300px" });
  near.observe(e);
}
