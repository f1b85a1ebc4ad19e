/*
 * What is wrong with a page of annotations by the Web Annotation Data Model (W3C Recommendation, 23 February 2017). Numbers
 * are sections of it; only what it says "must" is a fault.
 */

type Json = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isIri = (value: unknown): boolean => typeof value === 'string' && /^[^\s<>"{}|\\^`]+$/.test(value);
/** xsd:dateTime in UTC, as 3.3.1 asks. */
const isUtc = (value: unknown): boolean =>
  typeof value === 'string' &&
  /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/.test(value) &&
  !Number.isNaN(Date.parse(value));
const oneOf = (value: unknown): boolean => value !== undefined && !Array.isArray(value);
const MOTIVATIONS =
  'assessing bookmarking classifying commenting describing editing highlighting identifying linking moderating questioning replying tagging'.split(
    ' ',
  );

function selectorFaults(selector: Json, at: string): string[] {
  const faults: string[] = [];
  if (selector.type === 'FragmentSelector') {
    if (!oneOf(selector.value)) faults.push(`${at}: 4.2.1 exactly one value`);
    if (selector.conformsTo !== 'http://www.w3.org/TR/media-frags/') faults.push(`${at}: 4.2.1 conformsTo`);
    // Media Fragments URI 1.0, 4.2.2: integers or decimals after `percent:`, within the picture.
    const match = /^xywh=percent:(\d+(?:\.\d+)?),(\d+(?:\.\d+)?),(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/.exec(
      String(selector.value),
    );
    const [x = 0, y = 0, w = 0, h = 0] = (match?.slice(1) ?? []).map(Number);
    if (!match || w <= 0 || h <= 0 || x + w > 100.001 || y + h > 100.001) faults.push(`${at}: ${selector.value}`);
  } else if (selector.type === 'SvgSelector') {
    if (!oneOf(selector.value) || typeof selector.value !== 'string') faults.push(`${at}: 4.2.7 one value, as text`);
    else if (/style=|<script|href=|\bon\w+=/.test(selector.value)) faults.push(`${at}: 4.2.7 styling or script`);
  } else faults.push(`${at}: 4.2 unknown selector ${String(selector.type)}`);
  return faults;
}

function annotationFaults(annotation: Json, at: string): string[] {
  const faults: string[] = [];
  if (!isIri(annotation.id) || !oneOf(annotation.id)) faults.push(`${at}: 3.1 exactly one IRI as id`);
  if (![annotation.type].flat().includes('Annotation')) faults.push(`${at}: 3.1 type Annotation`);
  if (!MOTIVATIONS.includes(String(annotation.motivation))) faults.push(`${at}: 3.3.5 motivation`);
  for (const time of ['created', 'modified'])
    if (annotation[time] !== undefined && !isUtc(annotation[time])) faults.push(`${at}: 3.3.1 ${time}`);
  const body = annotation.body;
  if (body !== undefined) {
    if (!isObject(body) || body.type !== 'TextualBody') faults.push(`${at}: 3.2.4 body`);
    else if (typeof body.value !== 'string' || body.value === '') faults.push(`${at}: 3.2.4 exactly one value`);
  }
  const target = annotation.target;
  if (!isObject(target)) return [...faults, `${at}: 3.1 one or more targets`];
  if (!isObject(target.source) || !isIri(target.source.id)) faults.push(`${at}: 4 exactly one source`);
  if (!isObject(target.selector)) faults.push(`${at}: 4.2 selector`);
  else faults.push(...selectorFaults(target.selector, at));
  return faults;
}

/** Everything wrong with an AnnotationPage and its annotations; empty when all requirements are met. */
export function pageFaults(page: unknown): string[] {
  if (!isObject(page)) return ['not an object'];
  const faults: string[] = [];
  if (page['@context'] !== 'http://www.w3.org/ns/anno.jsonld') faults.push('5.2: @context');
  if (!isIri(page.id)) faults.push('5.2: exactly one IRI as id');
  if (page.type !== 'AnnotationPage') faults.push('5.2: type AnnotationPage');
  if (!Array.isArray(page.items)) return [...faults, '5.2: items'];
  const ids = page.items.map((item: Json) => item.id);
  if (new Set(ids).size < ids.length) faults.push('an id twice');
  return [
    ...faults,
    ...page.items.flatMap((item, i) => (isObject(item) ? annotationFaults(item, `item ${i}`) : ['item'])),
  ];
}
