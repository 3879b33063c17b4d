/** Deflate packs a byte at most so many times over: what cannot reach the limit needs no look. */
const GREATEST_RATIO = 1032;

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const DEFLATED = 8;
/** Stands where a size needs 64 bits, which no package under the limit needs. */
const IN_64_BITS = 0xffffffff;

/**
 * Whether a zip unpacks to more than a limit. What the zip says of its own sizes is not believed: where it matters each
 * entry is unpacked and thrown away as it comes, so that a trap costs time up to the limit and no memory.
 * @source PKWARE APPNOTE 6.3, 4.3.7, 4.3.12 and 4.3.16
 * @param limit [bytes]
 */
export async function unpacksBeyond(bytes: Uint8Array, limit: number): Promise<boolean> {
  if (bytes.length * GREATEST_RATIO <= limit) return false;
  let size = 0;
  for (const { packed, deflated } of entriesOf(bytes)) {
    if (packed === undefined) return true;
    if (!deflated) size += packed.length;
    else size += await inflatedSize(packed, limit - size);
    if (size > limit) return true;
  }
  return false;
}

/** The entries as the central directory lists them, one that is listed twice twice; `packed` undefined in 64 bits. */
function* entriesOf(
  bytes: Uint8Array,
): Generator<{ readonly packed: Uint8Array | undefined; readonly deflated: boolean }> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  while (end >= 0 && view.getUint32(end, true) !== END) end--;
  if (end < 0) return;
  let at = view.getUint32(end + 16, true);
  while (at + 46 <= bytes.length && view.getUint32(at, true) === CENTRAL) {
    const deflated = view.getUint16(at + 10, true) === DEFLATED;
    const length = view.getUint32(at + 20, true);
    const local = view.getUint32(at + 42, true);
    if (length === IN_64_BITS || local === IN_64_BITS) yield { packed: undefined, deflated };
    else if (local + 30 <= bytes.length && view.getUint32(local, true) === LOCAL) {
      const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
      yield { packed: bytes.subarray(from, from + length), deflated };
    }
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
}

/** How many bytes a deflated entry holds; counting ends above `most`, and at what is damaged. */
async function inflatedSize(packed: Uint8Array, most: number): Promise<number> {
  const inflate = new DecompressionStream('deflate-raw');
  const writer = inflate.writable.getWriter();
  // A fault in the data shows where it is read.
  const ignore = (): void => undefined;
  writer.write(new Uint8Array(packed)).catch(ignore);
  writer.close().catch(ignore);
  const reader = inflate.readable.getReader();
  let size = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return size;
      size += value.length;
      if (size > most) {
        await reader.cancel();
        return size;
      }
    }
  } catch {
    // Damaged from here on: whoever unpacks it in earnest says so.
    return size;
  }
}
