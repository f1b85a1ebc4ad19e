import type { Catalogue } from '../core/catalogue.ts';

/** Views of a complete record, in the order they are taken. After S17 and common practice. */
export const views = {
  threeQuarter: { term: 'Three-quarter', text: 'Three-quarter from front right' },
  top: { term: 'Top', text: 'From above, wearer’s front down in the frame' },
  front: { term: 'Front', text: 'Wearer’s front, lens at rope-line height' },
  right: { term: 'Right', text: 'Wearer’s right' },
  back: { term: 'Back', text: 'Back' },
  left: { term: 'Left', text: 'Wearer’s left' },
  under: { term: 'Underneath', text: 'Underside' },
  marks: { term: 'Marks', text: 'Every mark, square on, with scale', proves: true },
  damageContext: { term: 'Damage, where it lies', text: 'Each damage with a hand’s breadth around' },
  damageClose: { term: 'Damage, close', text: 'Each damage close, scale in its plane, at least 10 px per mm' },
  rake1: { term: 'Low lamp from the left', text: 'Lamp low from the left, 5–15° to the surface' },
  rake2: { term: 'Low lamp from the top', text: 'Lamp low from the top' },
  uv: { term: 'UV', text: 'UV torch, dark room, white balance locked (hint only)' },
  partsLaid: { term: 'Parts laid out', text: 'Puzzle parts in order on one sheet' },
  assembled: { term: 'Assembled', text: 'Puzzle assembled, joints visible' },
  paper: { term: 'Paper', text: 'Receipt, ticket, inventory page', proves: true },
} as const satisfies Catalogue['views'];

export const photoRules = [
  'Same phone, same lens, no zoom, no portrait or HDR mode.',
  'Distance at least 1.5 m or 50 times the height difference between scale and feature for 2 %.',
  'Lens square to the surface; a coin that looks oval by more than 2 % means tilt over about 11°.',
  'Scale and grey patch in the plane of the thing measured.',
  'Lock focus, exposure and white balance; note the lamp.',
  'Same background and turntable mark before and after.',
  'Ghost the before picture while framing the after picture.',
  'Never retouch; crops keep the original.',
  'File name or metadata carries object number, view, date and time with zone.',
] as const;
