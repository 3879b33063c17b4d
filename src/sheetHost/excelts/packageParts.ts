import { unzip, zip } from '@cj-tech-master/excelts/archive';
import { unpacksBeyond } from './unpackedSize';

/** The parts of an .xlsx package by name, as bytes. */
export type PackageParts = Map<string, Uint8Array>;

/** More than this unpacked is no workbook of a month of surveys, and may be a trap [bytes]. */
const UNPACKED_LIMIT = 200_000_000;

/** The package unpacks to more than the limit. */
export class TooLargeUnpacked extends Error {
  override readonly message = 'the workbook is too large when unpacked';
}

/** Unpacks a package. Throws `TooLargeUnpacked`, and anything for bytes that are no readable zip. */
export async function readParts(bytes: Uint8Array): Promise<PackageParts> {
  // The library unpacks an entry as a whole before it tells how large it is.
  if (await unpacksBeyond(bytes, UNPACKED_LIMIT)) throw new TooLargeUnpacked();
  const parts: PackageParts = new Map();
  for await (const entry of unzip(bytes).entries()) {
    if (entry.path.endsWith('/')) continue;
    parts.set(entry.path, await entry.bytes());
  }
  return parts;
}

/** Packs parts again, in their order. */
export async function writeParts(parts: PackageParts): Promise<Uint8Array> {
  const archive = zip();
  for (const [name, content] of parts) archive.add(name, content);
  return archive.bytes();
}
