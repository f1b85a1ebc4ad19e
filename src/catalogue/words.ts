import type { Catalogue, Term } from '../core/catalogue.ts';
import { memory, published } from './source.ts';

export const gradeWords = [
  { term: 'None', text: 'Looked for and not found.' },
  { term: 'Trace', text: 'There, but the next hat will not show or feel it. No work before use.' },
  { term: 'Minor', text: 'Would mark a hat or slow the work. Routine bench job, result near certain.' },
  {
    term: 'Major',
    text: 'Shape, hold or assembly suffers. Skilled repair and waiting time; result likely, not sure.',
  },
  {
    term: 'Critical',
    text: 'Cannot be used, or would get worse or harm other stock. Rebuild, copy or refuse.',
  },
] as const satisfies Catalogue['gradeWords'];

export const mechanisms = {
  structure: 'Cracks, splits, glue, breaks',
  loss: 'Loss of substance',
  surface: 'Surface',
  biology: 'Living things and what they ate',
  geometry: 'Size and shape',
  assembly: 'Parts and joints',
  repair: 'Earlier repair and alteration',
  contamination: 'Smell and poison',
  provenance: 'Evidence at risk',
  sparterie: 'Sparterie',
  shell: 'Papier-mâché, plaster, foam, cork',
  metal: 'Metal',
} as const satisfies Catalogue['mechanisms'];

export const verdicts = {
  sound: { term: 'Sound', text: 'Use after cleaning; nothing over grade 1 that matters.' },
  repairable: { term: 'Repairable', text: 'Routine work brings it back; odds of success 75 % or more.' },
  risky: {
    term: 'Risky',
    text: 'Could work, may not; the price must carry the risk, or something must be checked first.',
  },
  copyOnly: { term: 'Copy only', text: 'Not worth saving as a tool, worth keeping as a shape.' },
  leave: { term: 'Leave', text: 'Walk away, or take only as a free ornament.' },
} as const satisfies Catalogue['verdicts'];

export const shapeValues = {
  common: { term: 'Common', text: 'Can be bought new from any maker’s list.' },
  uncommon: { term: 'Uncommon', text: 'Weeks of waiting or looking.' },
  rare: { term: 'Rare', text: 'Known from a few examples.' },
  unique: { term: 'Unique', text: 'One-off carving or studio shape.' },
} as const satisfies Catalogue['shapeValues'];

export const channels = {
  stall: { term: 'Dealer’s stall', text: 'On a market or fair, from a dealer.' },
  shopClosing: { term: 'Shop closing', text: 'A shop sells up its fittings and tools.' },
  auctionRoom: { term: 'Auction in the room', text: 'Bid in person; premium and tax on top of the hammer.' },
  auctionOnline: { term: 'Auction online', text: 'Bid from photographs; premium, online charge, post on top.' },
  privateSale: { term: 'Private sale', text: 'From a private person.' },
  gift: { term: 'Gift', text: 'Given, nothing paid.' },
  workshopClearance: { term: 'Workshop clearance', text: 'A workshop is cleared, often in lots.' },
} as const satisfies Record<string, Term>;

export const anatomy = [
  { term: 'tip', text: 'Top surface of a crown block.' },
  { term: 'side', text: 'Wall between tip and head line.' },
  { term: 'head line', text: 'Level at which hat meets head; all head sizes are taken here.' },
  {
    term: 'rope line',
    text: 'Groove at the head line (or brim edge) in which a cord holds the material; about 3–5 mm wide and 2–4 mm deep (from memory).',
  },
  { term: 'edge groove', text: 'Same idea at the outer brim edge; without it the brim can only be pinned.' },
  {
    term: 'collar',
    text: 'Short upstand around the head opening of a brim block; sets head size and the turn-up.',
  },
  { term: 'head opening', text: 'Hole or recess of a brim block matching the crown’s head size.' },
  { term: 'base', text: 'Underside; carries stamps, stem hole, tack holes, screw plate.' },
  {
    term: 'stem hole',
    text: 'Hole for the stand’s dowel; common nominal diameters 20–32 mm (from memory); measure, never assume.',
  },
  { term: 'key', text: 'Core piece of a puzzle block that is withdrawn first.' },
  { term: 'shell part', text: 'Outer piece of a puzzle block.' },
  { term: 'joint face', text: 'Meeting face of two parts.' },
  {
    term: 'grain direction',
    text: 'Along the block front to back in most crowns; short grain at ridges and at the front and back of the rope line is where chips start.',
  },
  {
    term: 'lamination',
    text: 'Board layer; glue lines are usually horizontal or vertical and should be hairlines.',
  },
  {
    term: 'undercut',
    text: 'Any place wider above than below along the pull-off direction; needs a puzzle, stretch or a split.',
  },
] as const satisfies readonly Term[];

export const safety = [
  'Felt makers used mercury from the 17th century into the 1940s, and hats of 1820–1930 have tested positive (S24). Residue on blocks is our inference: no dry sanding, scraping or heat on unknown crust.',
  'Old paint may hold lead (from memory): gloves, wet wiping, test before sanding. Lead swabs say nothing about mercury or arsenic.',
  'Mould: FFP3 mask, gloves, outdoors; not for anybody with asthma, allergy or a weak immune system.',
  'Solvents: good air, no flame, gloves; oily rags soaked in a closed tin or spread outdoors.',
  'Insecticides: only a product allowed for the purpose where you live, by its label; prefer freezing. Fumigation is for licensed people.',
  'Asbestos lagging near old steam pipes: do not touch, leave it to licensed people.',
  'Blades: work clamped, both hands behind the edge. Old tacks and wire ends: look before you feel.',
  'Product labels, local rules and a doctor always outrank this text.',
] as const;

/** What was true when it was read; none of it is legal advice. Rates and rules change: check before relying on one. */
export const law = [
  {
    topic: 'Endangered timber',
    text: 'Most block woods (lime, alder, poplar, beech) are free. Ask when wood is dark, oily, very heavy or called rosewood. Neotropical Swietenia macrophylla is controlled as logs, sawn wood, veneer and plywood, S. mahagoni as logs, sawn wood and veneer: a finished block is outside those wordings. African Afzelia is listed as logs, sawn wood, veneer, plywood, transformed wood. Dalbergia, Pterocarpus and Khaya listings and sapele’s free status are from memory.',
    source: published('S35; rest from memory: check the current appendices before posting abroad.'),
  },
  {
    topic: 'Customs heading',
    text: '“Blocks for making hats” are named in HS heading 8449. US 8449.00.50: general rate free. EU and UK: believed free, from memory. Over 100 years old: heading 9706 may apply, UK import VAT then 5 % effective with proof of age.',
    source: published('S33, S28; EU and UK duty from memory.'),
  },
  {
    topic: 'Rules that change',
    text: 'US small-parcel relief ended 29 August 2025 and later orders tie postal duty to a surcharge of February 2026; EU €3 per heading from 1 July 2026; UK £135 rule. Every rate is dated and can be edited.',
    source: published('S30, S31, S32.'),
  },
  {
    topic: 'Cultural goods',
    text: 'EU import: general ban on unlawfully exported goods; importer statement only for listed categories older than 200 years and worth over 18 000 €; licences for archaeological pieces over 250 years. A hat block will hardly ever qualify. UK export licence thresholds: not looked up.',
    source: published('S34.'),
  },
  {
    topic: 'Due diligence',
    text: 'Look at who sells, at what price, whether a stolen-goods register was asked, which papers could reasonably be had, and what a reasonable person would have done. A price far too low, no name, cash only, no receipt: stop. Buying stolen goods gives no title in English law (from memory).',
    source: published('S37.'),
  },
  {
    topic: 'Design rights when copying',
    bearsOn: 'copying',
    text: 'UK unregistered design right covers shape for up to 10 years from first sale within 15 from creation, licences of right in the last five; EU unregistered 3 years; registered up to 25. So a pre-1990 anonymous shape is normally free; a living maker’s or studio’s recent carving is not. A one-off sculptural carving may also be a copyright work (from memory). Copies are marked as copies and never sold under the maker’s stamp.',
    source: published('S36; copyright note from memory.'),
  },
  {
    topic: 'Personal data',
    text: 'A milliner keeping sellers’ names for business is outside the household exemption. Keep name and contact only as long as title, warranty or tax need it; the default export shows “private seller, town”; strip position and device serial from shared photographs; faces and number plates out of shots; clients’ names on blocks are history if the person is dead, personal data if living.',
    source: published('S38; retention advice is common practice.'),
  },
  {
    topic: 'Consumer and auction terms',
    text: 'Read the terms for premium, platform charge, storage and collection limits before bidding; sold as seen leaves only misdescription.',
    source: published('S48; rest common practice.'),
  },
  {
    topic: 'Worm, mould and waste',
    text: 'Tell a buyer or seller what you saw alive. Treated wood, lead paint and solvents are hazardous waste in many places: ask the local council.',
    source: memory('Common practice and memory; local rules decide.'),
  },
] as const satisfies Catalogue['law'];
