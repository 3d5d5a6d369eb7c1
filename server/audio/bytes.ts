/** A stream of bytes that can be looked at before it is taken. */
export type Bytes = {
  /** The next `count` bytes, or fewer at the end, without taking them. */
  peek(count: number): Promise<Uint8Array>;
  /** Takes exactly `count` bytes, or what is left. */
  take(count: number): Promise<Uint8Array>;
  skip(count: number): Promise<void>;
  /** Everything that is left, in pieces. */
  rest(): AsyncGenerator<Uint8Array>;
};

export function bytesOf(source: AsyncIterable<Uint8Array>): Bytes {
  const iterator = source[Symbol.asyncIterator]();
  let held: Uint8Array = new Uint8Array(0);
  const more = async (): Promise<boolean> => {
    const { value, done } = await iterator.next();
    if (done === true) return false;
    held = held.length === 0 ? value : Buffer.concat([held, value]);
    return true;
  };
  const fill = async (count: number): Promise<void> => {
    while (held.length < count && (await more()));
  };
  const drop = (count: number): Uint8Array => {
    const taken = held.subarray(0, count);
    held = held.subarray(count);
    return taken;
  };
  return {
    async peek(count) {
      await fill(count);
      return held.subarray(0, count);
    },
    async take(count) {
      await fill(count);
      return drop(count);
    },
    async skip(count) {
      for (let left = count; left > 0;) {
        if (held.length === 0 && !(await more())) return;
        left -= drop(left).length;
      }
    },
    async *rest() {
      try {
        do if (held.length > 0) yield drop(held.length);
        while (await more());
      } finally {
        await iterator.return?.();
      }
    },
  };
}
