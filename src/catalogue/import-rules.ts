import type { Catalogue } from '../core/catalogue.ts';

/**
 * How three borders tax a hat block from abroad, to start from: each set is copied into a sale and edited there. Heading
 * 8449 names “blocks for making hats”. Rates change; each set wears the day it was read for.
 */
export const importRules = {
  uk: {
    term: 'Into the United Kingdom',
    text: 'Up to £135 no duty and VAT at the sale; above that VAT on price and carriage, and the carrier’s fee. Duty on heading 8449 believed 0. Proved over 100 years old: VAT on a quarter of the value.',
    rules: {
      code: 'uk',
      currency: 'GBP',
      asOf: '2026-07-01',
      source: 'UK £135 rule and tax manual on antiques, as read; duty on heading 8449 from memory',
      antiqueVatShare: 0.25,
      bands: [
        {
          goodsUpTo: 13_500,
          dutyRate: 0,
          dutyOn: 'goods-and-carriage',
          dutyPerHeading: 0,
          vatRate: 0.2,
          handlingCharged: false,
        },
        {
          goodsUpTo: null,
          dutyRate: 0,
          dutyOn: 'goods-and-carriage',
          dutyPerHeading: 0,
          vatRate: 0.2,
          handlingCharged: true,
        },
      ],
    },
  },
  eu: {
    term: 'Into the European Union',
    text: 'Up to €150 a flat €3 for each tariff heading, from 1 July 2026; above that duty by heading, here 1.7 % assumed. VAT is your country’s: 21 % stands here.',
    rules: {
      code: 'eu',
      currency: 'EUR',
      asOf: '2026-07-01',
      source: 'Council Regulation (EU) 2026/382 as read on law-firm pages; duty rate assumed',
      antiqueVatShare: 1,
      bands: [
        {
          goodsUpTo: 15_000,
          dutyRate: 0,
          dutyOn: 'goods-and-carriage',
          dutyPerHeading: 300,
          vatRate: 0.21,
          handlingCharged: false,
        },
        {
          goodsUpTo: null,
          dutyRate: 0.017,
          dutyOn: 'goods-and-carriage',
          dutyPerHeading: 0,
          vatRate: 0.21,
          handlingCharged: true,
        },
      ],
    },
  },
  us: {
    term: 'Into the United States',
    text: 'No relief for small parcels since 29 August 2025; duty and surcharges on the price alone, 10 % assumed; no VAT at the border.',
    rules: {
      code: 'us',
      currency: 'USD',
      asOf: '2026-07-01',
      source: 'Orders of 2025 and 2026 as summarised by law firms; general rate of 8449.00.50 free, surcharge assumed',
      antiqueVatShare: 1,
      bands: [
        {
          goodsUpTo: null,
          dutyRate: 0.1,
          dutyOn: 'goods',
          dutyPerHeading: 0,
          vatRate: 0,
          handlingCharged: true,
        },
      ],
    },
  },
} as const satisfies Catalogue['importRules'];
