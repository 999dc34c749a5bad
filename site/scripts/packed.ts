// What the edition of one file carries: blocks of the document that hold packed bytes as text.
import { EngineError } from "./engine";

/** The bytes of a block, unpacked, as a stream. */
export function packed(name: string): ReadableStream<Uint8Array> {
  const block = document.getElementById("packed:" + name);
  if (!block) throw new EngineError("file", name);
  if (typeof DecompressionStream !== "function") throw new EngineError("failed", "no DecompressionStream");
  return new Blob([dense(block.textContent ?? "")]).stream().pipeThrough(new DecompressionStream("gzip"));
}

/** The text of a block. */
export function packedText(name: string): Promise<string> {
  return new Response(packed(name)).text();
}

const unfit = [0, 13, 60]; // what cannot stand for itself, written as the letters from U+00A1 on

/** Seven bits stand in each sign; the number before them says how many bytes there are. */
function dense(text: string): Uint8Array<ArrayBuffer> {
  const start = text.indexOf(" ") + 1;
  const out = new Uint8Array(Number(text.slice(0, start)));
  let bits = 0;
  let have = 0;
  for (let at = start, i = 0; i < out.length; at++) {
    const c = text.charCodeAt(at);
    bits = (bits << 7) | (c > 127 ? (unfit[c - 161] ?? 0) : c);
    have += 7;
    if (have < 8) continue;
    have -= 8;
    out[i++] = bits >> have;
    bits &= (1 << have) - 1;
  }
  return out;
}
