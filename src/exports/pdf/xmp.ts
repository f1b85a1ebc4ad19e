/** Text for XML; what XML 1.0 has no sign for is left out. */
const escaped = (text: string): string =>
  [...text]
    .filter((sign) => sign >= ' ' || sign === '\n' || sign === '\t')
    .filter((sign) => !/[\uD800-\uDFFF\uFFFE\uFFFF]/.test(sign) || sign.length === 2)
    .join('')
    .replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

const moment = (date: string | Date | undefined): string =>
  date instanceof Date ? date.toISOString().replace(/\.\d+Z$/, 'Z') : '';

/**
 * What the document says of itself, word for word as in its information dictionary: PDF/A asks for both.
 * Source: ISO 19005-3 §6.6.2.3 (from memory), XMP specification part 1.
 */
export function xmpOf(info: Readonly<Record<string, string | Date>>): string {
  const { Title = '', Author = '', Subject = '', Keywords = '', Creator = '', Producer = '' } = info;
  const said = (value: string | Date): string => escaped(String(value));
  const alternatives = (name: string, value: string | Date): string =>
    value ? `<dc:${name}><rdf:Alt><rdf:li xml:lang="x-default">${said(value)}</rdf:li></rdf:Alt></dc:${name}>` : '';
  return [
    '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">',
    alternatives('title', Title),
    Author ? `<dc:creator><rdf:Seq><rdf:li>${said(Author)}</rdf:li></rdf:Seq></dc:creator>` : '',
    alternatives('description', Subject),
    '</rdf:Description>',
    '<rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">',
    `<xmp:CreatorTool>${said(Creator)}</xmp:CreatorTool>`,
    `<xmp:CreateDate>${moment(info.CreationDate)}</xmp:CreateDate>`,
    `<xmp:ModifyDate>${moment(info.ModDate)}</xmp:ModifyDate>`,
    '</rdf:Description>',
    '<rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">',
    `<pdf:Producer>${said(Producer)}</pdf:Producer><pdf:Keywords>${said(Keywords)}</pdf:Keywords>`,
    '</rdf:Description>',
  ].join('\n');
}
