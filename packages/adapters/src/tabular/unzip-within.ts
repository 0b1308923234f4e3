import { inflateRawSync } from "node:zlib";

/** An entry of a zip archive, unpacked. */
export interface UnzippedEntry {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export type Unzipped =
  | { readonly ok: true; readonly entries: readonly UnzippedEntry[] }
  | { readonly ok: false; readonly why: "not a zip" | "encrypted" | "too large" | "broken" };

/** A workbook has some dozens of entries; an archive with thousands is none. */
const MOST_ENTRIES = 2000;

/**
 * Unpacks a zip archive without ever holding more than `maxBytes` of content: what the archive says of its sizes is not
 * believed. Reads the central directory (PKWARE APPNOTE 4.3.12; from memory); archives of more than 4 GB are refused.
 */
export function unzipWithin(archive: Uint8Array, maxBytes: number): Unzipped {
  const buffer = Buffer.from(archive.buffer, archive.byteOffset, archive.byteLength);
  const end = buffer.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]));
  if (buffer.length < 22 || buffer.readUInt32LE(0) !== 0x04034b50) return { ok: false, why: "not a zip" };
  if (end < 0 || end + 22 > buffer.length) return { ok: false, why: "broken" };
  const count = buffer.readUInt16LE(end + 10);
  if (count > MOST_ENTRIES) return { ok: false, why: "too large" };
  const entries: UnzippedEntry[] = [];
  const names = new Set<string>();
  let left = maxBytes;
  let at = buffer.readUInt32LE(end + 16);
  for (let index = 0; index < count; index++) {
    if (at + 46 > buffer.length || buffer.readUInt32LE(at) !== 0x02014b50)
      return { ok: false, why: "broken" };
    const entry = directoryEntry(buffer, at);
    if (names.has(entry.name)) return { ok: false, why: "broken" };
    names.add(entry.name);
    if (entry.encrypted) return { ok: false, why: "encrypted" };
    if (entry.unpackedSize > left) return { ok: false, why: "too large" };
    const bytes = unpack(buffer, entry, left);
    if (typeof bytes === "string") return { ok: false, why: bytes };
    left -= bytes.length;
    entries.push({ name: entry.name, bytes });
    at += entry.length;
  }
  return { ok: true, entries };
}

interface DirectoryEntry {
  readonly name: string;
  readonly encrypted: boolean;
  readonly method: number;
  readonly packedSize: number;
  readonly unpackedSize: number;
  readonly offset: number;
  readonly length: number;
}

function directoryEntry(buffer: Buffer, at: number): DirectoryEntry {
  const nameLength = buffer.readUInt16LE(at + 28);
  return {
    name: buffer.toString("utf8", at + 46, at + 46 + nameLength),
    encrypted: (buffer.readUInt16LE(at + 8) & 1) === 1,
    method: buffer.readUInt16LE(at + 10),
    packedSize: buffer.readUInt32LE(at + 20),
    unpackedSize: buffer.readUInt32LE(at + 24),
    offset: buffer.readUInt32LE(at + 42),
    length: 46 + nameLength + buffer.readUInt16LE(at + 30) + buffer.readUInt16LE(at + 32),
  };
}

function unpack(
  buffer: Buffer,
  entry: DirectoryEntry,
  maxBytes: number,
): Uint8Array | "too large" | "broken" {
  const { offset } = entry;
  if (offset + 30 > buffer.length || buffer.readUInt32LE(offset) !== 0x04034b50) return "broken";
  const start = offset + 30 + buffer.readUInt16LE(offset + 26) + buffer.readUInt16LE(offset + 28);
  const packed = buffer.subarray(start, start + entry.packedSize);
  if (packed.length < entry.packedSize) return "broken";
  if (entry.method === 0) return packed.length > maxBytes ? "too large" : packed;
  if (entry.method !== 8) return "broken";
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, maxBytes) });
  } catch (error) {
    return error instanceof RangeError ? "too large" : "broken";
  }
}
