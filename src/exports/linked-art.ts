import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Finding, HatBlock, Job, Mark, Photo, Statement, Survey } from '../core/records.ts';
import { readEdtf } from '../text/edtf-words.ts';
import { chainOf } from '../text/provenance.ts';

/*
 * A hat block as a Linked Art HumanMadeObject (JSON-LD over CIDOC CRM), API 1.0: object, condition assessments, treatments.
 * Names of the properties and what each must have are the Linked Art schema's; see the model pages on objects and on
 * conservation. Terms of the trade are in no public vocabulary, so they are named by URNs of our own; those of the Art
 * and Architecture Thesaurus are used where it has them.
 */

type Json = { readonly [key: string]: unknown };

const aat = (number: string, label: string, type = 'Type'): Json => ({
  id: `http://vocab.getty.edu/aat/${number}`,
  type,
  _label: label,
});
const AAT = {
  primaryName: aat('300404670', 'Primary Name'),
  ownerNumber: aat('300404621', 'Owner-Assigned Number'),
  description: aat('300435416', 'Description'),
  mm: aat('300379097', 'millimeters', 'MeasurementUnit'),
  g: aat('300379225', 'grams', 'MeasurementUnit'),
} as const;

/** A term of this catalogue; ids are letters and digits, so they stand in a URN as they are. */
const own = (table: string, id: string, label: string, type = 'Type'): Json => ({
  id: `urn:x-blockworth:${table}:${id}`,
  type,
  _label: label,
});

const statement = (content: string, label: string): Json => ({
  type: 'LinguisticObject',
  _label: label,
  classified_as: [AAT.description],
  content,
});
const statements = (of: readonly (readonly [content: string, label: string])[]): Json[] =>
  of.filter(([content]) => content.trim() !== '').map(([content, label]) => statement(content, label));
/** A list only where there is something in it: an empty one says nothing and some readers refuse it. */
const listed = (name: string, items: readonly unknown[]): Json => (items.length > 0 ? { [name]: items } : {});

/** Bounds of a date as typed; left out where it is open, unknown or not understood. */
function timespan({ words, edtf }: HatBlock['made']): Json | null {
  const read = edtf ? readEdtf(edtf) : null;
  // Of a year that nobody knows (`XXXX`) the bounds are those of the format.
  const isAnyYear = read?.ok && read.earliest?.startsWith('0000') && read.latest?.startsWith('9999');
  const bounds = read?.ok && !isAnyYear ? read : null;
  if (words.trim() === '' && !bounds) return null;
  return {
    type: 'TimeSpan',
    identified_by: [{ type: 'Name', content: words || (edtf ?? '') }],
    ...(bounds?.earliest ? { begin_of_the_begin: `${bounds.earliest}T00:00:00Z` } : {}),
    ...(bounds?.latest ? { end_of_the_end: `${bounds.latest}T23:59:59Z` } : {}),
  };
}
/** A moment the app wrote itself. */
const moment = (at: string): Json => ({ type: 'TimeSpan', begin_of_the_begin: at, end_of_the_end: at });

export interface ObjectCase {
  readonly block: HatBlock;
  readonly surveys: readonly Survey[];
  readonly findings: readonly Finding[];
  readonly marks: readonly Mark[];
  readonly statements: readonly Statement[];
  readonly jobs: readonly Job[];
  /** With where the bytes lie, relative to the file this is written to. */
  readonly photos: readonly { readonly photo: Photo; readonly path: string }[];
  readonly showPrivate: boolean;
}

function production({ made, maker }: HatBlock): Json {
  const span = timespan(made);
  if (!span && maker.trim() === '') return {};
  return {
    produced_by: {
      type: 'Production',
      ...(span ? { timespan: span } : {}),
      // The maker as written: whom a name means is not known here, so it is no Person of ours.
      ...listed('referred_to_by', statements([[maker, 'Maker']])),
    },
  };
}

function dimensions(surveys: readonly Survey[], catalogue: Catalogue): Json[] {
  return surveys.flatMap(({ measures }) =>
    Object.entries(measures).map(([id, value]): Json => {
      const kind = entry(catalogue.measures, id);
      const unit = kind?.unit ?? 'mm';
      return {
        type: 'Dimension',
        _label: kind?.term ?? id,
        classified_as: [own('measure', id, kind?.term ?? id)],
        value,
        unit: unit === 'mm' || unit === 'g' ? AAT[unit] : own('unit', unit, unit, 'MeasurementUnit'),
      };
    }),
  );
}

/** What was found at a survey, one assignment to a finding; a survey that found nothing is one with its note alone. */
function conditions({ surveys, findings }: ObjectCase, catalogue: Catalogue): Json[] {
  return surveys.flatMap((survey): Json[] => {
    const about = { timespan: moment(survey.begun) };
    const told: [string, string][] = [
      [survey.surveyor, 'Looked at by'],
      [survey.reason, 'Reason'],
      [survey.note, 'Note'],
    ];
    const found = findings.filter(({ surveyId }) => surveyId === survey.id);
    const whole: Json = {
      type: 'AttributeAssignment',
      _label: `Condition survey, ${survey.stage} the work`,
      ...about,
      ...listed('referred_to_by', statements(told)),
    };
    return [
      whole,
      ...found.map((finding): Json => {
        const term = entry(catalogue.damage, finding.kind)?.term ?? finding.kind;
        const where = entry(catalogue.zones, finding.zone)?.term ?? finding.zone;
        const answers = Object.entries(finding.answers).map(([ask, answer]) => `${ask} ${answer}`);
        return {
          type: 'AttributeAssignment',
          _label: `Finding ${finding.number}: ${term} at the ${where}`,
          assigned_property: 'classified_as',
          assigned: own('damage', finding.kind, term),
          ...about,
          ...listed(
            'referred_to_by',
            statements([
              [answers.join('; '), 'Answers'],
              [finding.gradeReason, 'Reason for the grade'],
              [finding.note, 'Note'],
            ]),
          ),
        };
      }),
    ];
  });
}

const treatments = (jobs: readonly Job[], catalogue: Catalogue): Json[] =>
  jobs.map(({ treatment, at, actualHours, note }) => {
    const term = entry(catalogue.treatments, treatment)?.term ?? treatment;
    return {
      type: 'Modification',
      _label: term,
      technique: [own('treatment', treatment, term)],
      timespan: moment(at),
      ...listed(
        'referred_to_by',
        statements([
          [`${actualHours} h`, 'Hours'],
          [note, 'Note'],
        ]),
      ),
    };
  });

/** The `ni` URI of a hash: a name for exactly these bytes, wherever they lie. Source: RFC 6920, section 3. */
export function hashUri(sha256: string): string {
  const bytes = sha256.match(/../g)?.map((pair) => Number.parseInt(pair, 16)) ?? [];
  const base64 = btoa(String.fromCharCode(...bytes));
  return `ni:///sha-256;${base64.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')}`;
}

const picture = ({ photo, path }: ObjectCase['photos'][number], catalogue: Catalogue): Json => ({
  type: 'VisualItem',
  _label: photo.caption || (entry(catalogue.views, photo.view)?.term ?? photo.view),
  digitally_shown_by: [
    {
      type: 'DigitalObject',
      format: photo.mime,
      identified_by: [{ type: 'Identifier', content: path }],
      access_point: [{ id: hashUri(photo.sha256), type: 'DigitalObject' }],
    },
  ],
});

/** The block with its condition, work, marks and story; what is told in words stays words. */
export function linkedArt(of: ObjectCase, catalogue: Catalogue): Json {
  const { block } = of;
  const type = entry(catalogue.types, block.blockType);
  const name = block.name.trim() || (type?.term ?? 'Hat block');
  const chain = chainOf(of.statements, catalogue, { showPrivate: of.showPrivate });
  const marks = of.marks.map(({ kind, text }): [string, string] => [
    text,
    `Mark: ${entry(catalogue.marks, kind)?.term ?? kind}`,
  ]);
  return {
    '@context': 'https://linked.art/ns/v1/linked-art.json',
    id: `urn:uuid:${block.id}`,
    type: 'HumanMadeObject',
    _label: name,
    identified_by: [
      { type: 'Name', classified_as: [AAT.primaryName], content: name },
      ...(block.objectNumber.trim()
        ? [{ type: 'Identifier', classified_as: [AAT.ownerNumber], content: block.objectNumber.trim() }]
        : []),
    ],
    classified_as: [
      own('class', 'hatBlock', 'Hat block'),
      ...(block.blockType ? [own('type', block.blockType, type?.term ?? block.blockType)] : []),
    ],
    ...listed(
      'made_of',
      block.materials.map((id) => own('material', id, entry(catalogue.materials, id)?.term ?? id, 'Material')),
    ),
    ...production(block),
    ...listed('dimension', dimensions(of.surveys, catalogue)),
    ...listed('referred_to_by', statements([[block.note, 'Note'], [chain, 'Story'], ...marks])),
    ...listed('attributed_by', conditions(of, catalogue)),
    ...listed('modified_by', treatments(of.jobs, catalogue)),
    ...listed(
      'representation',
      of.photos.map((one) => picture(one, catalogue)),
    ),
  };
}
