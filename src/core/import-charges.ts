import { addUp, exact, highestWithin, times } from './exact-money.ts';
import { type MinorUnits, minor } from './units.ts';

/** The rules for consignments up to one value. Money in whole minor units, rates as shares: 0.2 for 20 %. A stored set fits. */
export interface ImportBand {
  /** Highest value of the goods alone (no carriage) that falls in this band, inclusive; null for the last band. */
  readonly goodsUpTo: number | null;
  readonly dutyRate: number;
  /** What duty is a share of: the goods alone, or goods with carriage and insurance. */
  readonly dutyOn: 'goods' | 'goods-and-carriage';
  /** Duty of so much for each tariff heading in the parcel; 0 for none. */
  readonly dutyPerHeading: number;
  readonly vatRate: number;
  /** False where tax is taken at the sale and the carrier collects nothing. */
  readonly handlingCharged: boolean;
}

/**
 * How a country taxes a parcel from abroad. Data, editable by the owner and never hard-coded: such rates change, so
 * each set wears its date and its source.
 */
export interface ImportRules {
  readonly code: string;
  readonly currency: string;
  /** ISO date on which the rates were checked. */
  readonly asOf: string;
  readonly source: string;
  /** Share of the value that VAT is taken on when the piece is proved over 100 years old; 1 for no relief. */
  readonly antiqueVatShare: number;
  /** By rising goods value, the last with no end. */
  readonly bands: readonly ImportBand[];
}

/** What travels with the price. Money in whole minor units. */
export interface Shipment {
  readonly freight: number;
  readonly insurance: number;
  /** Delivery from the border, if billed apart: taxed with the rest, free of duty. */
  readonly inland: number;
  /** Carrier's or broker's fee for clearing the parcel. */
  readonly handling: number;
  /** Number of different tariff headings in the parcel. */
  readonly headings: number;
  readonly provedAntique: boolean;
}

/** What a parcel costs once it is on the bench. The lines add up to the total exactly. */
export interface Landed {
  readonly price: MinorUnits;
  readonly carriage: MinorUnits;
  readonly duty: MinorUnits;
  readonly vat: MinorUnits;
  readonly handling: MinorUnits;
  readonly total: MinorUnits;
}

function bandFor(price: MinorUnits, { bands, code }: ImportRules): ImportBand {
  const band = bands.find(({ goodsUpTo }) => goodsUpTo === null || price <= goodsUpTo);
  if (!band) throw new Error(`Import rules ${code} came with no band for ${price}, expected a last band without end.`);
  return band;
}

/**
 * Price plus carriage, duty, VAT and handling. Customs value = price + freight + insurance; duty on it (or on the
 * goods alone); VAT on customs value + duty + inland. Rounded once, halves up, as `addUp` says.
 * Source: customs guidance as read for the handbook; the rates come in as `rules`.
 * @throws when an amount is negative or the rules have no band for the price
 */
export function landedCost(price: MinorUnits, shipment: Shipment, rules: ImportRules): Landed {
  const { freight, insurance, inland, headings, provedAntique } = shipment;
  if (Math.min(price, freight, insurance, inland, shipment.handling) < 0 || !Number.isInteger(headings) || headings < 1)
    throw new Error(`Shipment came with a negative amount or ${headings} headings, expected 0 or more and at least 1.`);
  const band = bandFor(price, rules);
  const customsValue = exact(minor(price + freight + insurance));
  const duty =
    times(band.dutyOn === 'goods' ? exact(price) : customsValue, band.dutyRate) +
    exact(minor(band.dutyPerHeading * headings));
  const vatRate = band.vatRate * (provedAntique ? rules.antiqueVatShare : 1);
  const handling = minor(band.handlingCharged ? shipment.handling : 0);
  const carriage = minor(freight + insurance + inland);
  const vat = times(customsValue + duty + exact(minor(inland)), vatRate);
  const { lines, total } = addUp([price, carriage, handling], { duty, vat });
  return { price, carriage, ...lines, handling, total };
}

/**
 * The highest price, to the minor unit, that lands within the limit. Cost may fall where a band ends (a flat duty
 * stops, say), so every band is tried, the dearest first.
 * @returns null when even a free block lands above the limit
 */
export function highestLandedPrice(limit: MinorUnits, shipment: Shipment, rules: ImportRules): MinorUnits | null {
  const cost = (price: MinorUnits) => landedCost(price, shipment, rules).total;
  const floors = rules.bands.map((_, index) => (rules.bands[index - 1]?.goodsUpTo ?? -1) + 1);
  for (let index = rules.bands.length - 1; index >= 0; index--) {
    const [from, to] = [floors[index] ?? 0, Math.min(rules.bands[index]?.goodsUpTo ?? limit, limit)];
    const price = highestWithin(limit, cost, minor(from), minor(to));
    if (price !== null) return price;
  }
  return null;
}
