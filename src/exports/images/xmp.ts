/*
 * An XMP packet that says of a picture who made it, when, of what, and on which terms. Property names: XMP specification
 * part 1 and 2 (ISO 16684-1), IPTC Photo Metadata Standard 2023.1 with its XMP mapping.
 */

/** Every field may be empty and is then left out. */
export interface PictureWords {
  readonly creator: string;
  /** Local time of the camera, `2026-10-17T11:42:09`, and its offset where it is known, `+01:00`. */
  readonly taken: { readonly local: string; readonly offset: string | null } | null;
  /** Name of the object shown. */
  readonly title: string;
  readonly description: string;
  /** One line for who cannot see the picture. */
  readonly altText: string;
  /** The longer one. */
  readonly longDescription: string;
  /** The owner's number of the object shown. */
  readonly objectNumber: string;
  readonly rights: string;
  /** An id for good, such as `urn:uuid:…`. */
  readonly identifier: string;
}

/** Longest alt text IPTC asks for, in characters. From memory. */
const LONGEST_ALT = 250;

/** Text as XML: what it cannot say at all (control signs, lone surrogates) is left out. */
const xml = (text: string): string =>
  Array.from(text)
    .filter((sign) => /[\t\n\r\u0020-\ud7ff\ue000-\ufffd]|[\u{10000}-\u{10ffff}]/u.test(sign))
    .join('')
    .replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

const simple = (name: string, text: string): string => (text ? `<${name}>${xml(text)}</${name}>` : '');
const inLanguage = (name: string, text: string): string =>
  text ? `<${name}><rdf:Alt><rdf:li xml:lang="x-default">${xml(text)}</rdf:li></rdf:Alt></${name}>` : '';
const ordered = (name: string, text: string): string =>
  text ? `<${name}><rdf:Seq><rdf:li>${xml(text)}</rdf:li></rdf:Seq></${name}>` : '';

const shortened = (text: string): string =>
  text.length <= LONGEST_ALT ? text : `${text.slice(0, LONGEST_ALT - 1).replace(/\s+\S*$/, '')}…`;

const NAMESPACES = {
  rdf: 'http://www.w3.org/1999/02/22-rdf-syntax-ns#',
  dc: 'http://purl.org/dc/elements/1.1/',
  exif: 'http://ns.adobe.com/exif/1.0/',
  photoshop: 'http://ns.adobe.com/photoshop/1.0/',
  xmp: 'http://ns.adobe.com/xap/1.0/',
  xmpMM: 'http://ns.adobe.com/xap/1.0/mm/',
  xmpRights: 'http://ns.adobe.com/xap/1.0/rights/',
  Iptc4xmpCore: 'http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/',
  Iptc4xmpExt: 'http://iptc.org/std/Iptc4xmpExt/2008-02-29/',
} as const;

/** Where a picture comes from, by the IPTC's own list of digital source types. */
const CAPTURED = 'http://cv.iptc.org/newscodes/digitalsourcetype/digitalCapture';

/** The object's number where IPTC has a place for it: an artwork or object in the image. */
const objectShown = (title: string, number: string): string =>
  number
    ? '<Iptc4xmpExt:ArtworkOrObject><rdf:Bag><rdf:li rdf:parseType="Resource">' +
      inLanguage('Iptc4xmpExt:AOTitle', title) +
      simple('Iptc4xmpExt:AOSourceInvNo', number) +
      '</rdf:li></rdf:Bag></Iptc4xmpExt:ArtworkOrObject>'
    : '';

/** The packet as text, UTF-8, without the padding of a packet meant to be edited in place. */
export function xmpPacket(words: PictureWords): string {
  const date = words.taken ? `${words.taken.local}${words.taken.offset ?? ''}` : '';
  const spaces = Object.entries(NAMESPACES)
    .filter(([prefix]) => prefix !== 'rdf')
    .map(([prefix, uri]) => ` xmlns:${prefix}="${uri}"`)
    .join('');
  const properties = [
    ordered('dc:creator', words.creator),
    inLanguage('dc:title', words.title),
    inLanguage('dc:description', words.description),
    inLanguage('dc:rights', words.rights),
    simple('dc:identifier', words.objectNumber),
    simple('photoshop:DateCreated', date),
    simple('exif:DateTimeOriginal', date),
    simple('xmpMM:DocumentID', words.identifier),
    words.rights ? '<xmpRights:Marked>True</xmpRights:Marked>' : '',
    simple('xmp:CreatorTool', 'Blockworth'),
    inLanguage('Iptc4xmpCore:AltTextAccessibility', shortened(words.altText)),
    inLanguage('Iptc4xmpCore:ExtDescrAccessibility', words.longDescription),
    simple('Iptc4xmpExt:DigitalSourceType', CAPTURED),
    objectShown(words.title, words.objectNumber),
  ];
  return (
    '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>' +
    `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="${NAMESPACES.rdf}">` +
    `<rdf:Description rdf:about=""${spaces}>${properties.join('')}</rdf:Description>` +
    '</rdf:RDF></x:xmpmeta><?xpacket end="r"?>'
  );
}
