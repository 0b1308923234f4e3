/** A sequence with its money. */
export interface Member {
  readonly sequence: Int32Array;
  readonly money: number;
}

/** Money by which two sequences count as the same. */
const SAME_MONEY = 1e-6;

/** The best sequences so far, of different money each. Full populations give up their worst for a better newcomer. */
export class Population {
  private readonly members: Member[] = [];
  private readonly size: number;

  /** `size` >= 2 */
  constructor(size: number) {
    this.size = size;
  }

  get isFull(): boolean {
    return this.members.length >= this.size;
  }

  /** Takes a newcomer in; false when its money is there already, or when it is no better than the worst of a full population. */
  add(newcomer: Member): boolean {
    const { members } = this;
    if (members.some(({ money }) => Math.abs(money - newcomer.money) < SAME_MONEY)) return false;
    if (!this.isFull) {
      members.push(newcomer);
      return true;
    }
    const worst = members.reduce((w, { money }, i) => (money > members[w]!.money ? i : w), 0);
    if (newcomer.money >= members[worst]!.money) return false;
    members[worst] = newcomer;
    return true;
  }

  /** Two different members by two draws; needs two members at least. */
  pair(below: (bound: number) => number): readonly [Member, Member] {
    const count = this.members.length;
    const a = below(count);
    const b = (a + 1 + below(count - 1)) % count;
    return [this.members[a]!, this.members[b]!];
  }

  clear(): void {
    this.members.length = 0;
  }
}
