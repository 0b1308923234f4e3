import { NEVER } from "../problem/calendar.ts";

/** When a copy may be mounted and when the run may be made with it; s, [from, by) each. */
export interface MouldSpells {
  readonly mountFrom: number;
  readonly mountedBy: number;
  readonly runFrom: number;
  readonly runBy: number;
}

/** Spell before the out-of-service spell of a number, from 0; the last lies after all of them. */
function spellBefore(
  outOfService: readonly (readonly [number, number])[],
  number: number,
): readonly [from: number, by: number] {
  return [
    number === 0 ? 0 : outOfService[number - 1]![1],
    number < outOfService.length ? outOfService[number]![0] : NEVER,
  ];
}

/**
 * Spells to try for a copy, those with the earliest runs first, the latest mounting first among them. Neither mounting nor
 * running may touch a spell out of service; hanging may: so a copy may be mounted before one and run after it. One that hangs
 * there already needs no mounting; one that swaps in without a change is mounted as its run begins.
 */
export function mouldSpells(
  outOfService: readonly (readonly [number, number])[],
  isHeld: boolean,
  hasChange: boolean,
): readonly MouldSpells[] {
  const spells: MouldSpells[] = [];
  for (let running = 0; running <= outOfService.length; running++) {
    const [runFrom, runBy] = spellBefore(outOfService, running);
    if (isHeld) {
      spells.push({ mountFrom: 0, mountedBy: NEVER, runFrom, runBy });
      continue;
    }
    for (let mounting = running; mounting >= (hasChange ? 0 : running); mounting--) {
      const [mountFrom, mountedBy] = spellBefore(outOfService, mounting);
      spells.push({ mountFrom, mountedBy, runFrom, runBy });
    }
  }
  return spells;
}
