// Text that is told by what stands before it: steps of "so many new bytes, then so many that stood
// there". build/onefile/echo.go writes it and says how.

class Reader {
  at = 0;

  constructor(private readonly data: Uint8Array) {}

  number(): number {
    let n = 0;
    for (let unit = 1; ; unit *= 128) {
      const b = this.data[this.at++] ?? 0;
      n += (b & 127) * unit;
      if (b < 128) return n;
    }
  }

  signed(): number {
    const n = this.number();
    return n % 2 === 0 ? n / 2 : -(n + 1) / 2;
  }
}

/** Reads data behind what is known. */
export function unecho(known: Uint8Array, data: Uint8Array): string {
  const steps = new Reader(data);
  const size = steps.number();
  const end = steps.at + size;
  let fresh = end;
  let out = new Uint8Array(known.length * 8 + data.length);
  out.set(known);
  let length = known.length;
  const room = (n: number) => {
    if (length + n <= out.length) return;
    const more = new Uint8Array(2 * (length + n));
    more.set(out);
    out = more;
  };
  let last = 0;
  while (steps.at < end) {
    const news = steps.number();
    const copied = steps.number();
    const from = last + steps.signed();
    room(news + copied);
    out.set(data.subarray(fresh, fresh + news), length);
    fresh += news;
    length += news;
    out.copyWithin(length, from, from + copied);
    length += copied;
    last = from + copied;
  }
  return new TextDecoder().decode(out.subarray(known.length, length));
}
