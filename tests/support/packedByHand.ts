import { createDeflateRaw, deflateRawSync } from 'node:zlib';

/** One entry of a zip, its sizes as it is wanted to tell them. */
export interface PackedEntry {
  readonly name: string;
  readonly deflated: Uint8Array;
  /** What the zip says that it unpacks to [bytes]. */
  readonly says: number;
  readonly encrypted?: boolean;
}

/** So many zeros, deflated as they come: they are never held. */
export async function deflatedZeros(megabytes: number): Promise<Uint8Array> {
  const deflate = createDeflateRaw({ level: 9 });
  const packed: Buffer[] = [];
  deflate.on('data', (part: Buffer) => packed.push(part));
  const ended = new Promise((end) => deflate.on('end', end));
  const zeros = Buffer.alloc(1_000_000);
  for (let i = 0; i < megabytes; i++) {
    if (!deflate.write(zeros)) await new Promise((go) => deflate.once('drain', go));
  }
  deflate.end();
  await ended;
  return Buffer.concat(packed);
}

export const deflated = (text: string): Uint8Array => deflateRawSync(Buffer.from(text));

/** A zip put together byte by byte (PKWARE APPNOTE 6.3), so that it may say of itself what is not so. */
export function packedByHand(entries: readonly PackedEntry[]): Uint8Array {
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let at = 0;
  for (const { name, deflated: data, says, encrypted } of entries) {
    const named = Buffer.from(name);
    const local = Buffer.alloc(30);
    const central = Buffer.alloc(46);
    local.writeUInt32LE(0x04034b50, 0);
    central.writeUInt32LE(0x02014b50, 0);
    // Flags, method, sizes and name stand alike in both, two bytes apart.
    for (const [header, shift] of [
      [local, 0],
      [central, 2],
    ] as const) {
      header.writeUInt16LE(encrypted ? 1 : 0, 6 + shift);
      header.writeUInt16LE(8, 8 + shift);
      header.writeUInt32LE(data.length, 18 + shift);
      header.writeUInt32LE(says, 22 + shift);
      header.writeUInt16LE(named.length, 26 + shift);
    }
    central.writeUInt32LE(at, 42);
    locals.push(local, named, Buffer.from(data));
    centrals.push(central, named);
    at += 30 + named.length + data.length;
  }
  const directory = Buffer.concat(centrals);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(at, 16);
  return new Uint8Array(Buffer.concat([...locals, directory, end]));
}
