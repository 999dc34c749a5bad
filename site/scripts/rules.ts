// The rows of a table of choices or faults follow the sheet of their page: which of them hold, and
// what the others lack to be checked, is the engine's word.
import { setAttr, setText } from "./dom";
import type { Reply, RowReply } from "./protocol";
import { answered, type FactSheet } from "./sheet";
import { say } from "./words";

/** Lets the rows of a section follow a sheet. */
export function followRules(section: Element, sheet: FactSheet): void {
  sheet.addEventListener(answered, (event) => {
    const { rows } = (event as CustomEvent<Reply>).detail;
    if (rows) show(section, rows);
  });
}

function show(section: Element, rows: readonly RowReply[]): void {
  for (const row of rows) {
    const tr = section.querySelector(`tr[data-row="${row.id}"]`);
    if (!tr) continue;
    setAttr(tr, "data-state", row.state);
    setText(tr.querySelector(".rulestate")!, say(`rules.state.${row.state}`));
    setText(tr.querySelector(".rulelacks")!, row.lacks ? say("rules.lacks", row.lacks.join(", ")) : "");
  }
  const count = (state: RowReply["state"]) => rows.filter((r) => r.state === state).length;
  setText(section.querySelector(".rulesum")!, say("rules.sum", count("holds"), rows.length, count("unchecked")));
}
