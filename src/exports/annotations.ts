import { type Catalogue, entry } from '../core/catalogue.ts';
import { parseStamp } from '../core/clock.ts';
import { toPixel } from '../core/mark-geometry.ts';
import type { Finding, Photo, PhotoMark, Settings } from '../core/records.ts';
import { measuredWords } from '../text/measured.ts';

/*
 * What is drawn over a photograph as W3C Web Annotations, one page of them to a photograph. Section numbers are those of
 * the Web Annotation Data Model, W3C Recommendation of 23 February 2017.
 */

const CONTEXT = 'http://www.w3.org/ns/anno.jsonld';

type Json = { readonly [key: string]: unknown };

/** Six digits of a share keep a tenth of a pixel in any photograph. */
const digits = (value: number, places: number): string => String(Number(value.toFixed(places)));

/** A rectangle as a fragment that survives any resizing. (4.2.1; Media Fragments URI 1.0, 4.2.2) */
function fragment(points: PhotoMark['points']): Json {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  const box = [x, y, Math.max(...xs) - x, Math.max(...ys) - y].map((share) => digits(share * 100, 4));
  return {
    type: 'FragmentSelector',
    conformsTo: 'http://www.w3.org/TR/media-frags/',
    value: `xywh=percent:${box.join(',')}`,
  };
}

/** Radius of a point, as a share of the photograph's width. */
const POINT = 0.01;

/** Anything else as one drawn shape, in the photograph's own pixels and without any styling. (4.2.7) */
function svg({ shape, points }: PhotoMark, photo: Photo): Json {
  const px = points.map((spot) => toPixel(spot, photo).map((value) => digits(value, 1)));
  const line = px.map((pair) => pair.join(',')).join(' ');
  const [[x = '0', y = '0'] = []] = px;
  let drawn = `<circle cx="${x}" cy="${y}" r="${digits(photo.width * POINT, 1)}"/>`;
  if (shape === 'line' || shape === 'polyline') drawn = `<polyline points="${line}" fill="none"/>`;
  else if (shape === 'region') drawn = `<polygon points="${line}"/>`;
  else if (shape === 'ellipse' && points.length > 1) {
    const [[ax, ay], [bx, by]] = [points[0], points[1]] as [PhotoMark['points'][0], PhotoMark['points'][0]];
    const at = [((ax + bx) / 2) * photo.width, ((ay + by) / 2) * photo.height];
    const half = [(Math.abs(ax - bx) / 2) * photo.width, (Math.abs(ay - by) / 2) * photo.height];
    const [cx, cy, rx, ry] = [...at, ...half].map((value) => digits(value, 1));
    drawn = `<ellipse cx="${cx}" cy="${cy}" rx="${rx}" ry="${ry}"/>`;
  }
  return {
    type: 'SvgSelector',
    value: `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${photo.width} ${photo.height}">${drawn}</svg>`,
  };
}

/** When a record was first and last written, from its stamps, as UTC. (3.3.1) */
function writtenAt({ stamps }: PhotoMark): Json {
  const all = Object.values(stamps)
    .map((stamp) => parseStamp(stamp)?.ms ?? 0)
    .filter((ms) => ms > 0)
    .sort((a, b) => a - b);
  const instant = (ms: number): string => new Date(ms).toISOString();
  const [first, last] = [all[0], all.at(-1)];
  if (first === undefined || last === undefined) return {};
  return { created: instant(first), ...(last > first ? { modified: instant(last) } : {}) };
}

export interface AnnotationCase {
  readonly photo: Photo;
  /** Of this photograph. */
  readonly marks: readonly PhotoMark[];
  readonly findings: readonly Finding[];
  readonly units: Settings['units'];
  /** Where the photograph lies, relative to the file this is written to. */
  readonly source: string;
}

/** What is said of a mark: number and kind of its finding, the words beside it, what was measured. */
function words({ findingId, text, measured }: PhotoMark, { findings, units }: AnnotationCase, catalogue: Catalogue) {
  const finding = findings.find(({ id }) => id === findingId);
  const kind = finding && (entry(catalogue.damage, finding.kind)?.term ?? finding.kind);
  return [finding ? `Finding ${finding.number}: ${kind}` : '', text, measured ? measuredWords(measured, units) : '']
    .filter(Boolean)
    .join('. ');
}

/** All marks of one photograph as an AnnotationPage (5.2). */
export function annotationPage(of: AnnotationCase, catalogue: Catalogue): Json {
  const { photo, marks, source } = of;
  return {
    '@context': CONTEXT,
    id: `urn:uuid:${photo.id}#marks`,
    type: 'AnnotationPage',
    items: marks.map((mark) => {
      const value = words(mark, of, catalogue);
      return {
        id: `urn:uuid:${mark.id}`,
        type: 'Annotation',
        motivation: mark.findingId === null ? 'highlighting' : 'identifying',
        ...writtenAt(mark),
        ...(value
          ? { body: { type: 'TextualBody', value, format: 'text/plain', language: 'en', purpose: 'describing' } }
          : {}),
        target: {
          type: 'SpecificResource',
          source: { id: source, type: 'Image', format: photo.mime },
          selector: mark.shape === 'rectangle' && mark.points.length > 1 ? fragment(mark.points) : svg(mark, photo),
        },
      };
    }),
  };
}
