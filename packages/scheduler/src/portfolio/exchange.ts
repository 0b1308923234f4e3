/** Share of money by which a neighbour's plan must be better to be worth taking over; less is rounding. */
const LEAST_GAIN = 1e-9;

/**
 * Who takes over whose best plan at the end of a round: in a ring, a member takes its neighbour's plan where that is better
 * than its own. A good plan so needs a round for every member it comes to, and meanwhile the others go on with their own.
 * `money` by member; the answer by member, null where it keeps its own.
 */
export function exchange(money: readonly number[]): readonly (number | null)[] {
  return money.map((own, member) => {
    const neighbour = (member + money.length - 1) % money.length;
    const gain = own - money[neighbour]!;
    return gain > LEAST_GAIN * Math.max(1, own) ? neighbour : null;
  });
}
