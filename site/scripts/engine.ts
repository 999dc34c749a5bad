// Loading the engine and talking to it.
import { inside } from "./address";
import { packed, packedText } from "./packed";
import { wasiImports } from "./wasi";
import { pictureWords } from "./words";
import { writeRequest, type Reply, type Request } from "./protocol";

/** Why there is no answer. The kind names the words that tell the reader. */
export class EngineError extends Error {
  constructor(
    readonly kind: "failed" | "file" | "died" | "refused",
    message: string,
  ) {
    super(message);
  }
}

interface Exports {
  memory: WebAssembly.Memory;
  _initialize(): void;
  buffer(n: number): number;
  load(n: number): number;
  add(n: number): number;
  answer(n: number): number;
  reply(): number;
}

declare global {
  interface Window {
    columnbowlEngine?: (base64: string) => void;
    columnbowlBook?: (pack: string) => void;
    columnbowlPack?: (pack: string) => void;
    columnbowlNames?: (names: Record<string, string>) => unknown;
  }
}

export class Engine {
  private exports: Exports;
  private readonly asked = new Map<string, Promise<void>>();
  private readonly added: string[] = [];

  private constructor(
    private readonly module: WebAssembly.Module,
    instance: WebAssembly.Instance,
    cell: MemoryCell,
    private readonly pack: string,
    private readonly root: string,
  ) {
    this.exports = this.begin(instance, cell);
  }

  /**
   * Loads the engine and the book from the assets folder under root. A page that has been open since
   * before a new edition does not find its files: it asks how they are called now.
   */
  static async start(root: string): Promise<Engine> {
    if (typeof WebAssembly !== "object") throw new EngineError("failed", "no WebAssembly");
    if (listed === null) return Engine.load(root);
    return Engine.load(root).catch((e: unknown) => {
      if (!(e instanceof EngineError) || e.kind !== "file") throw e;
      listed = null;
      return Engine.load(root);
    });
  }

  private static async load(root: string): Promise<Engine> {
    const cell = new MemoryCell();
    const pack = fetchBook(root);
    const source = root === inside ? carried(cell) : /^https?:$/.test(location.protocol) ? served(root, cell) : handed(root, cell);
    const [started, text] = await Promise.all([source, pack]);
    return new Engine(started.module, started.instance, cell, text, root);
  }

  /** Brings a pack that only some pages need, such as the profiles of the drawings; each comes once. */
  add(name: string): Promise<void> {
    let coming = this.asked.get(name);
    if (!coming) this.asked.set(name, (coming = this.fetchPack(name)));
    return coming;
  }

  /** Asks about the numbers of a sheet. */
  ask(request: Request): Reply {
    return this.talk<Reply>(writeRequest(request));
  }

  /** Hands over lines of a request and returns the reply. It starts a fresh instance once if the present one breaks. */
  talk<R>(lines: string): R {
    try {
      return this.answer<R>(lines);
    } catch (e) {
      if (e instanceof EngineError) throw e;
      this.restart();
      return this.answerOrDie<R>(lines);
    }
  }

  private answerOrDie<R>(text: string): R {
    try {
      return this.answer<R>(text);
    } catch (e) {
      if (e instanceof EngineError) throw e;
      throw new EngineError("died", String(e));
    }
  }

  private answer<R>(text: string): R {
    const length = this.exports.answer(this.put(text));
    const reply = this.read(Math.abs(length));
    if (length < 0) throw new EngineError("refused", reply);
    return JSON.parse(reply) as R;
  }

  private restart(): void {
    try {
      const cell = new MemoryCell();
      this.exports = this.begin(new WebAssembly.Instance(this.module, wasiImports(cell.view)), cell);
    } catch (e) {
      throw new EngineError("died", String(e));
    }
  }

  private begin(instance: WebAssembly.Instance, cell: MemoryCell): Exports {
    this.exports = instance.exports as unknown as Exports;
    cell.memory = this.exports.memory;
    this.exports._initialize();
    this.taken(this.exports.load(this.put(this.pack)), "the book");
    this.exports.answer(this.put(pictureWords));
    for (const pack of this.added) this.taken(this.exports.add(this.put(pack)), "a pack");
    return this.exports;
  }

  private async fetchPack(name: string): Promise<void> {
    const pack = this.root === inside ? await packedText(name) : await handedPack(this.root, name);
    this.taken(this.exports.add(this.put(pack)), name);
    this.added.push(pack); // a fresh instance gets it again
  }

  private taken(status: number, what: string): void {
    if (status < 0) throw new EngineError("refused", status < -1 ? this.read(-status) : what);
  }

  private put(text: string): number {
    const bytes = new TextEncoder().encode(text);
    const at = this.exports.buffer(bytes.length);
    new Uint8Array(this.exports.memory.buffer, at, bytes.length).set(bytes);
    return bytes.length;
  }

  // the view is made after the call, because memory may have grown in it
  private read(length: number): string {
    return new TextDecoder().decode(new Uint8Array(this.exports.memory.buffer, this.exports.reply(), length));
  }
}

/** The imports need the memory, which the instance brings: this holds it until then. */
class MemoryCell {
  memory: WebAssembly.Memory | null = null;
  readonly view = (): DataView => {
    if (this.memory === null) throw new Error("the engine spoke before it had memory");
    return new DataView(this.memory.buffer);
  };
}

type Started = WebAssembly.WebAssemblyInstantiatedSource;

/** From a server: the packed engine, unpacked and compiled while it comes in. */
async function served(root: string, cell: MemoryCell): Promise<Started> {
  const file = await assetAt(root, "engine", "packed");
  const response = await fetch(file).catch(() => null);
  if (!response?.ok || !response.body) throw new EngineError("file", file);
  return unpacked(response.body, cell);
}

/** From a folder: a script that hands over the packed engine as text. */
async function handed(root: string, cell: MemoryCell): Promise<Started> {
  const base64 = await viaScript(await assetAt(root, "engine", "js"), (take) => (window.columnbowlEngine = take));
  return unpacked(new Blob([fromBase64(base64)]).stream(), cell);
}

function unpacked(packed: ReadableStream<Uint8Array<ArrayBuffer>>, cell: MemoryCell): Promise<Started> {
  if (typeof DecompressionStream !== "function") throw new EngineError("failed", "no DecompressionStream");
  const stream = packed.pipeThrough(new DecompressionStream("gzip"));
  const response = new Response(stream, { headers: { "Content-Type": "application/wasm" } });
  return WebAssembly.instantiateStreaming(response, wasiImports(cell.view));
}

/** From the document itself. */
function carried(cell: MemoryCell): Promise<Started> {
  const response = new Response(packed("engine"), { headers: { "Content-Type": "application/wasm" } });
  return WebAssembly.instantiateStreaming(response, wasiImports(cell.view));
}

async function fetchBook(root: string): Promise<string> {
  if (root === inside) return packedText("book");
  return viaScript(await assetAt(root, "book", "js"), (take) => (window.columnbowlBook = take));
}

async function handedPack(root: string, name: string): Promise<string> {
  const file = await assetAt(root, name, "js");
  return oneByOne(() => viaScript(file, (take) => (window.columnbowlPack = take)));
}

/**
 * Where a file of the assets stands: its name carries a sum of its bytes, and one list tells the
 * names. The page has it in its head; a list that did not come is asked for again the next time.
 */
let listed: Promise<Record<string, string>> | null = null;
window.columnbowlNames = (names) => (listed = Promise.resolve(names));

async function assetAt(root: string, stem: string, ending: "js" | "packed"): Promise<string> {
  listed ??= viaScript<Record<string, string>>(`${root}assets/names.js`, (take) => (window.columnbowlNames = take));
  const names = await listed.catch((e: unknown) => {
    listed = null;
    throw e;
  });
  const name = `${stem}.${ending}`;
  return `${root}assets/${names[name] ?? name}`;
}

/** Packs come through one function of the page, so only one may be on its way. */
let before: Promise<unknown> = Promise.resolve();
function oneByOne<T>(load: () => Promise<T>): Promise<T> {
  const now = before.then(load, load);
  before = now.catch(() => undefined);
  return now;
}

/** Runs a script of the folder that calls one function with what it has to give, mostly a text. */
function viaScript<T = string>(src: string, offer: (take: (given: T) => void) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    offer(resolve);
    const script = document.createElement("script");
    script.src = src;
    script.async = false;
    script.onerror = () => reject(new EngineError("file", src));
    script.onload = () => script.remove();
    document.head.append(script);
  });
}

function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const native = (Uint8Array as unknown as { fromBase64?: (t: string) => Uint8Array<ArrayBuffer> }).fromBase64;
  if (native) return native.call(Uint8Array, text);
  const binary = atob(text);
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; i++) bytes[i] = binary.charCodeAt(i);
  return bytes;
}
