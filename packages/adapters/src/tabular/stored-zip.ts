import { crc32 } from "node:zlib";
import type { UnzippedEntry } from "./unzip-within.ts";

/** A zip archive of exactly these entries, not compressed: nothing can hide between them (PKWARE APPNOTE 4.3; from memory). */
export function storedZip(entries: readonly UnzippedEntry[]): Buffer {
  const files: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let offset = 0;
  let directoryLength = 0;
  for (const { name, bytes } of entries) {
    const encoded = Buffer.from(name, "utf8");
    const common = commonHeader(encoded.length, bytes);
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    common.copy(local, 4);
    const central = Buffer.alloc(46);
    central.writeUInt32LE(0x02014b50, 0);
    central.writeUInt16LE(20, 4);
    common.copy(central, 6);
    central.writeUInt32LE(offset, 42);
    files.push(local, encoded, bytes);
    directory.push(central, encoded);
    offset += local.length + encoded.length + bytes.length;
    directoryLength += central.length + encoded.length;
  }
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(directoryLength, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...files, ...directory, end]);
}

/** The 26 bytes that an entry's own header and its line in the directory share: version, UTF-8 flag, no compression, sizes. */
function commonHeader(nameLength: number, bytes: Uint8Array): Buffer {
  const header = Buffer.alloc(26);
  header.writeUInt16LE(20, 0);
  header.writeUInt16LE(0x0800, 2);
  header.writeUInt32LE(crc32(bytes), 10);
  header.writeUInt32LE(bytes.length, 14);
  header.writeUInt32LE(bytes.length, 18);
  header.writeUInt16LE(nameLength, 22);
  return header;
}
