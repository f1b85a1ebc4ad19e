/** What a lot takes from purse and bench, and the most it can add. Whole minor units and whole minutes. */
export interface Weighed {
  readonly gain: number;
  readonly money: number;
  readonly minutes: number;
}

/** What one more unit of money and one more minute are worth at the margin, in minor units. */
export interface Margin {
  readonly money: number;
  readonly minutes: number;
}

/** What is left after paying for a lot's money and minutes at these margins. */
export const reduced = ({ gain, money, minutes }: Weighed, margin: Margin): number =>
  gain - margin.money * money - margin.minutes * minutes;

/** Most a purse with these margins can bring: an upper bound on every choice, whatever the margins. Lagrange, textbook. */
const boundAt = (lots: readonly Weighed[], margin: Margin, money: number, minutes: number): number =>
  lots.reduce((sum, lot) => sum + Math.max(0, reduced(lot, margin)), 0) +
  margin.money * money +
  margin.minutes * minutes;

/**
 * Margin of one scarce thing by itself: that of the lot at which it runs out when the best for it go first.
 * 0 when there is enough for all. Textbook (continuous knapsack).
 */
function lastRatio(lots: readonly { readonly gain: number; readonly weight: number }[], enough: number): number {
  const wanted = lots.filter(({ gain, weight }) => gain > 0 && weight > 0);
  let left = enough;
  for (const { gain, weight } of wanted.sort((a, b) => b.gain * a.weight - a.gain * b.weight)) {
    left -= weight;
    if (left < 0) return gain / weight;
  }
  return 0;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const STEPS = 40;

/** Margin of minutes that goes best with a margin of money. */
const minutesAt = (lots: readonly Weighed[], perMoney: number, minutes: number): number =>
  Number.isFinite(minutes)
    ? lastRatio(
        lots.map(({ gain, money, minutes: weight }) => ({ gain: gain - perMoney * money, weight })),
        minutes,
      )
    : 0;

/**
 * Margins under which the bound is lowest, or nearly: for each margin of money the best of minutes is exact, and the margin
 * of money is narrowed by golden section, as the bound is convex in it. Any margins give a valid bound; good ones a close one.
 */
function tightest(lots: readonly Weighed[], money: number, minutes: number): Margin {
  if (!Number.isFinite(money)) return { money: 0, minutes: minutesAt(lots, 0, minutes) };
  const at = (perMoney: number): Margin => ({ money: perMoney, minutes: minutesAt(lots, perMoney, minutes) });
  const bound = (perMoney: number): number => {
    const margin = at(perMoney);
    return boundAt(lots, margin, money, Number.isFinite(minutes) ? minutes : 0);
  };
  let low = 0;
  let high = Math.max(0, ...lots.map(({ gain, money: weight }) => (weight > 0 ? gain / weight : 0)));
  for (let step = 0; step < STEPS; step += 1) {
    const third = (high - low) * GOLDEN;
    const [a, b] = [high - third, low + third];
    if (bound(a) <= bound(b)) high = b;
    else low = a;
  }
  // The ends as well: a purse with enough in it has the margin 0, which the section only comes near.
  return [0, (low + high) / 2].map(at).reduce((a, b) => (bound(b.money) < bound(a.money) ? b : a));
}

/** Margins to bound a search by: both things scarce, money alone, minutes alone. What is endless has no margin. */
export function marginsFor(lots: readonly Weighed[], money: number, minutes: number): readonly Margin[] {
  const both = tightest(lots, money, minutes);
  const alone = [
    {
      money: Number.isFinite(money)
        ? lastRatio(
            lots.map((lot) => ({ gain: lot.gain, weight: lot.money })),
            money,
          )
        : 0,
      minutes: 0,
    },
    { money: 0, minutes: minutesAt(lots, 0, minutes) },
  ];
  return [both, ...alone];
}
