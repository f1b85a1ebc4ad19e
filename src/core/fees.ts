import { addUp, type Exact, exact, highestWithin, millionths, times } from './exact-money.ts';
import { type ImportRules, landedCost, type Shipment } from './import-charges.ts';
import { type MinorUnits, minor } from './units.ts';

/** One slice of a buyer's premium: this rate on the part of the hammer price above the slice before, up to `upTo`. */
export interface PremiumTier {
  /** Top of the slice in whole minor units; null for a last one without end. */
  readonly upTo: number | null;
  readonly rate: number;
}

/**
 * What VAT falls on. `fees`: premium and platform charge only, as under an auctioneers' margin scheme.
 * `everything`: the hammer price as well. `nothing`: there is none, or it is inside the rates.
 * Source: UK guidance on the auctioneers' scheme; saleroom terms.
 */
export const VAT_BASES = ['fees', 'everything', 'nothing'] as const;
export type VatBase = (typeof VAT_BASES)[number];

/** A cost that does not depend on the price: post, packing, a share of the journey. Taken as it is, tax included. */
export interface FixedCost {
  readonly what: string;
  readonly amount: number;
}

/** What a country takes when the lot comes from abroad. Amounts are in the sale's currency; nothing is converted. */
export interface Customs {
  readonly rules: ImportRules;
  readonly shipment: Shipment;
}

/** What decides the cost of a lot; a stored sale's terms fit. Money in whole minor units, rates as shares (0.24 is 24 %). */
export interface SaleTerms {
  /** Rising slices; empty when there is no premium. */
  readonly premium: readonly PremiumTier[];
  /** Least premium a lot is charged, before VAT; 0 for none. */
  readonly minimumPremium: number;
  /** Online platform's charge on the hammer price; 0 in the room. */
  readonly platformRate: number;
  readonly vatRate: number;
  readonly vatOn: VatBase;
  readonly fixedCosts: readonly FixedCost[];
  /** Charged on the sale's whole bill, premium and tax included. Absent or null where nothing crosses a border. */
  readonly customs?: Customs | null | undefined;
}

/** From this hammer price on, bids go up in this step. */
export interface BidStep {
  readonly from: number;
  readonly step: number;
}

/** A stall or a ticket: what is asked is what is paid. */
export const TICKET_TERMS: SaleTerms = {
  premium: [],
  minimumPremium: 0,
  platformRate: 0,
  vatRate: 0,
  vatOn: 'nothing',
  fixedCosts: [],
};

/** Everything a lot costs. The lines add up to the total exactly. */
export interface AllIn {
  readonly hammer: MinorUnits;
  readonly premium: MinorUnits;
  readonly platform: MinorUnits;
  readonly vat: MinorUnits;
  /** Carriage, duty, import VAT and clearing together; see `landedCost` for its lines. */
  readonly customs: MinorUnits;
  readonly fixed: MinorUnits;
  readonly total: MinorUnits;
}

/** Whether premium slices are in order: each ends above the one before, and only the last may have no end. */
export const premiumTiersRise = (tiers: readonly PremiumTier[]): boolean =>
  tiers.every(({ upTo }, index) => {
    const before = index === 0 ? 0 : (tiers[index - 1]?.upTo ?? Infinity);
    return before < (upTo ?? Infinity);
  });

/** Premium(H) = Σ rate·(min(H, upTo) − below)⁺, but no less than the minimum. Above the last end: nothing more. */
function exactPremium(hammer: MinorUnits, { premium, minimumPremium }: SaleTerms): Exact {
  if (!premiumTiersRise(premium))
    throw new Error(`Premium slices came up to ${premium.map(({ upTo }) => upTo).join(', ')}, expected rising ends.`);
  let below = 0;
  let sum = 0n;
  for (const { upTo, rate } of premium) {
    const slice = Math.max(0, Math.min(hammer, upTo ?? hammer) - below);
    sum += times(exact(minor(slice)), rate);
    below = upTo ?? below;
  }
  const least = exact(minor(minimumPremium));
  return sum > least ? sum : least;
}

/** The sale's own bill: hammer, premium, platform, VAT. Rounded once, halves up, as `addUp` says. */
function billOf(hammer: MinorUnits, terms: SaleTerms) {
  if (hammer < 0) throw new Error(`Hammer price came as ${hammer}, expected 0 or more.`);
  const premium = exactPremium(hammer, terms);
  const platform = times(exact(hammer), terms.platformRate);
  const taxed = { fees: premium + platform, everything: exact(hammer) + premium + platform, nothing: 0n }[terms.vatOn];
  return addUp([hammer], { premium, platform, vat: times(taxed, terms.vatRate) });
}

const fixedOf = ({ fixedCosts }: SaleTerms): MinorUnits =>
  minor(fixedCosts.reduce((sum, { amount }) => sum + amount, 0));

/**
 * What a lot costs in all, from the hammer or ticket price: hammer + premium + platform + VAT + what customs adds to that
 * bill + fixed costs. Each bill is rounded once. Source: saleroom terms; tax guidance for what VAT falls on.
 * @throws when the hammer price or a rate is negative, money is not whole, or the premium slices do not rise
 */
export function allIn(hammer: MinorUnits, terms: SaleTerms): AllIn {
  const { lines, total: bill } = billOf(hammer, terms);
  const fixed = fixedOf(terms);
  const { customs: abroad } = terms;
  const customs = minor(abroad ? landedCost(bill, abroad.shipment, abroad.rules).total - bill : 0);
  return { hammer, ...lines, customs, fixed, total: minor(bill + customs + fixed) };
}

/**
 * k: what one more unit of hammer price adds to the bill, at this hammer price.
 * Margin scheme 1 + (p + o)(1 + v); with VAT on everything (1 + p + o)(1 + v). While the minimum premium holds, p is 0.
 */
export function feeMultiplier(terms: SaleTerms, hammer: MinorUnits): number {
  const tier = terms.premium.find(({ upTo }) => upTo === null || hammer < upTo);
  const atMinimum = terms.minimumPremium > 0 && exactPremium(hammer, terms) === exact(minor(terms.minimumPremium));
  const fees = (atMinimum ? 0 : (tier?.rate ?? 0)) + terms.platformRate;
  if (terms.vatOn === 'everything') return (1 + fees) * (1 + terms.vatRate);
  return 1 + fees * (terms.vatOn === 'fees' ? 1 + terms.vatRate : 1);
}

/**
 * The highest hammer price, to the minor unit, whose all-in cost stays within the limit.
 * Each minor unit of hammer adds at least one to the bill, so `highestHammer(allIn(h).total)` is `h` again; only where a
 * band of import rules ends may the cost fall, and a higher price fit as well. Every band is tried, the dearest first.
 * @returns null when even a hammer price of 0 costs more than the limit
 */
export function highestHammer(limit: MinorUnits, terms: SaleTerms): MinorUnits | null {
  const cost = (hammer: MinorUnits): MinorUnits => allIn(hammer, terms).total;
  const bill = (hammer: MinorUnits): MinorUnits => billOf(hammer, terms).total;
  const ends = terms.customs?.rules.bands.map(({ goodsUpTo }) => goodsUpTo) ?? [null];
  const tops = ends.map((end) => (end === null ? limit : highestWithin(minor(end), bill, minor(0), limit)));
  for (let band = ends.length - 1; band >= 0; band -= 1) {
    const from = band === 0 ? minor(0) : minor((tops[band - 1] ?? -1) + 1);
    const price = highestWithin(limit, cost, from, minor(Math.min(tops[band] ?? -1, limit)));
    if (price !== null) return price;
  }
  return null;
}

/** Whether bid steps are in order: rising, each step above 0. */
export const bidStepsRise = (steps: readonly BidStep[]): boolean =>
  steps.every(({ from, step }, index) => step > 0 && from > (steps[index - 1]?.from ?? -1));

/**
 * The bid at or below an amount. Bids start at each `from` and rise by its `step`; with no steps any amount is a bid.
 * @returns null when the amount is under the lowest bid
 * @throws when the steps do not rise
 */
export function floorToBid(amount: MinorUnits, steps: readonly BidStep[]): MinorUnits | null {
  if (!bidStepsRise(steps)) throw new Error(`Bid steps came as ${JSON.stringify(steps)}, expected a rising table.`);
  if (steps.length === 0) return amount;
  const row = steps.filter(({ from }) => from <= amount).at(-1);
  return row ? minor(row.from + Math.floor((amount - row.from) / row.step) * row.step) : null;
}

/** The highest bid one may make for an all-in limit, or null when no bid fits. */
export function highestBid(limit: MinorUnits, terms: SaleTerms, steps: readonly BidStep[]): MinorUnits | null {
  const hammer = highestHammer(limit, terms);
  return hammer === null ? null : floorToBid(hammer, steps);
}

/**
 * VAT a dealer owes inside a selling price under the second-hand margin scheme: margin · v/(1 + v), a sixth at 20 %.
 * No VAT on a loss. Halves up. Source: explanation of the UK scheme in saleroom terms.
 */
export function marginSchemeVat(bought: MinorUnits, sold: MinorUnits, vat: number): MinorUnits {
  const rate = millionths(vat);
  const margin = BigInt(Math.max(0, sold - bought));
  const whole = 1_000_000n + rate;
  return minor(Number((2n * margin * rate + whole) / (2n * whole)));
}
