/**
 * Splits a whole total into whole parts in proportion to `weights`, by largest remainder: every part is
 * its exact share rounded down or up, and the parts add up to the total exactly.
 * @param total whole number of 0 or more (minor units, minutes)
 * @param weights 0 or more each; if all are 0 the total is split evenly, there being nothing to weigh by
 * @returns one whole part a weight, in the same order; equal remainders favour the earlier item
 * @throws when the total is not whole, a weight is negative, or there is nothing to split among
 */
export function apportion(total: number, weights: readonly number[]): number[] {
  if (!Number.isSafeInteger(total) || total < 0) throw new Error(`Total came as ${total}, expected a whole number.`);
  if (weights.length === 0) throw new Error('No weights came, expected at least one to split among.');
  for (const weight of weights)
    if (!Number.isFinite(weight) || weight < 0) throw new Error(`Weight came as ${weight}, expected 0 or more.`);

  const largest = Math.max(...weights);
  // Scaled by the largest first: a sum of huge weights may overflow, a sum of scaled ones cannot.
  const scaled = weights.map((weight) => (largest > 0 ? weight / largest : 1));
  const sum = scaled.reduce((a, b) => a + b, 0);
  const shares = scaled.map((weight) => (total * weight) / sum);
  const parts = shares.map(Math.floor);
  const left = total - parts.reduce((a, b) => a + b, 0);
  const byRemainder = shares
    .map((share, index) => ({ index, remainder: share - Math.floor(share) }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (const { index } of byRemainder.slice(0, left)) parts[index] = (parts[index] ?? 0) + 1;
  return parts;
}
