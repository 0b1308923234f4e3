interface Spell {
  readonly start: number;
  readonly end: number;
}

/** Half-open range of positions in a sorted list. */
export interface PlaceRange {
  readonly from: number;
  readonly to: number;
}

/** Positions of the spells that touch [startAt, endAt), by binary search; spells are sorted and never overlap. */
export function spellsInSight(spells: readonly Spell[], startAt: number, endAt: number): PlaceRange {
  const from = firstWhere(spells, (spell) => spell.end > startAt);
  const to = firstWhere(spells, (spell) => spell.start >= endAt);
  return { from, to: Math.max(from, to) };
}

/** Parts of [startAt, endAt) that no spell covers. */
export function gapsBetween(spells: readonly Spell[], startAt: number, endAt: number): readonly Spell[] {
  const gaps: Spell[] = [];
  const { from, to } = spellsInSight(spells, startAt, endAt);
  let free = startAt;
  for (let place = from; place < to; place += 1) {
    const spell = spells[place];
    if (spell === undefined) continue;
    if (spell.start > free) gaps.push({ start: free, end: spell.start });
    free = Math.max(free, spell.end);
  }
  if (free < endAt) gaps.push({ start: free, end: endAt });
  return gaps;
}

function firstWhere(spells: readonly Spell[], holds: (spell: Spell) => boolean): number {
  let low = 0;
  let high = spells.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const spell = spells[middle];
    if (spell !== undefined && holds(spell)) high = middle;
    else low = middle + 1;
  }
  return low;
}
