// The few calls that Go's wasip1 runtime makes. Everything else is answered with EBADF.
const EBADF = 8;

type Call = (...args: never[]) => number;

/** The imports of the engine; view gives a fresh look at its memory, which moves when it grows. */
export function wasiImports(view: () => DataView): WebAssembly.Imports {
  const zeroSizes = (count: number, bytes: number): number => {
    view().setUint32(count, 0, true);
    view().setUint32(bytes, 0, true);
    return 0;
  };
  const known: Record<string, Call> = {
    args_get: () => 0,
    environ_get: () => 0,
    args_sizes_get: zeroSizes,
    environ_sizes_get: zeroSizes,
    sched_yield: () => 0,
    clock_time_get: (_id: number, _precision: bigint, at: number) => {
      view().setBigUint64(at, BigInt(Math.round((performance.timeOrigin + performance.now()) * 1000)) * 1000n, true);
      return 0;
    },
    random_get: (at: number, length: number) => {
      const v = view();
      for (let done = 0; done < length; done += 65536) {
        crypto.getRandomValues(new Uint8Array(v.buffer as ArrayBuffer, at + done, Math.min(65536, length - done)));
      }
      return 0;
    },
    fd_write: (_fd: number, vectors: number, n: number, written: number) => writeText(view(), vectors, n, written),
    poll_oneoff: (_in: number, _out: number, n: number, events: number) => {
      view().setUint32(events, n, true);
      return 0;
    },
    proc_exit: (code: number) => {
      throw new Error(`the engine ended with code ${code}`);
    },
  };
  return { wasi_snapshot_preview1: new Proxy(known, { get: (calls, name: string) => calls[name] ?? (() => EBADF) }) };
}

let unfinished = ""; // a line that the engine has begun to print

/** What the engine prints before it dies goes to the console line by line, for whoever mends it. */
function writeText(v: DataView, vectors: number, n: number, written: number): number {
  let total = 0;
  for (let i = 0; i < n; i++) {
    const at = v.getUint32(vectors + 8 * i, true);
    const length = v.getUint32(vectors + 8 * i + 4, true);
    unfinished += new TextDecoder().decode(new Uint8Array(v.buffer as ArrayBuffer, at, length));
    total += length;
  }
  const lines = unfinished.split("\n");
  unfinished = lines.pop() ?? "";
  for (const line of lines) if (line !== "") console.warn(line);
  v.setUint32(written, total, true);
  return 0;
}
