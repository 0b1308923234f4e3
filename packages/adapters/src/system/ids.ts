import type { Ids } from "@formweek/application";
import { randomBytes } from "node:crypto";

/**
 * UUIDs of version 7 (RFC 9562, section 5.7): 48 bits of milliseconds, then a 12-bit counter that starts anew in each
 * millisecond (method 1 of section 6.2) so that ids of one process sort in the order of making, then 62 random bits.
 * When the clock stands or runs back, the last millisecond is kept and counted on.
 */
export function sortableIds(nowMs: () => number = Date.now): Ids {
  let lastMs = 0;
  let counter = 0;
  return {
    next: () => {
      const now = nowMs();
      if (now > lastMs) {
        lastMs = now;
        counter = 0;
      } else if (++counter === 4096) {
        lastMs += 1;
        counter = 0;
      }
      return uuid7(lastMs, counter);
    },
  };
}

function uuid7(ms: number, counter: number): string {
  const bytes = randomBytes(16);
  bytes.writeUIntBE(ms, 0, 6);
  bytes.writeUInt16BE(0x7000 | counter, 6);
  bytes.writeUInt8(0x80 | (bytes.readUInt8(8) & 0x3f), 8);
  const hex = bytes.toString("hex");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
