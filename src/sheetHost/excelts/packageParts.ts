import { unzip, zip } from '@cj-tech-master/excelts/archive';

/** The parts of an .xlsx package by name, as bytes. */
export type PackageParts = Map<string, Uint8Array>;

/** More than this unpacked is no workbook of a month of surveys, and may be a trap [bytes]. */
const UNPACKED_LIMIT = 200_000_000;

/** Unpacks a package. Throws for bytes that are no readable zip, or unpack to more than the limit. */
export async function readParts(bytes: Uint8Array): Promise<PackageParts> {
  const parts: PackageParts = new Map();
  let size = 0;
  for await (const entry of unzip(bytes).entries()) {
    if (entry.path.endsWith('/')) continue;
    const content = await entry.bytes();
    size += content.length;
    if (size > UNPACKED_LIMIT) throw new RangeError('the workbook is too large when unpacked');
    parts.set(entry.path, content);
  }
  return parts;
}

/** Packs parts again, in their order. */
export async function writeParts(parts: PackageParts): Promise<Uint8Array> {
  const archive = zip();
  for (const [name, content] of parts) archive.add(name, content);
  return archive.bytes();
}
