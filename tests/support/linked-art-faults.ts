import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';

/*
 * What the Linked Art API 1.0 asks of a HumanMadeObject and the structures in it, as schemas of our own from its published
 * ones: which properties there are, which are required, of which type; unknown ones are refused there and here.
 * Source: linked.art, api/1.0/schema core.json and object.json; model pages on objects and conservation for
 * `assigned_property` and `modified_by`.
 */

const uri = { type: 'string', format: 'uri' };
const text = { type: 'string', minLength: 1 };
const many = (items: object) => ({ type: 'array', items, minItems: 1 });
const ref = (name: string) => ({ $ref: `#/$defs/${name}` });
const anyOf = (...names: string[]) => ({ anyOf: names.map(ref) });
const structure = (type: string, properties: object, required: string[] = []) => ({
  type: 'object',
  properties: { type: { const: type }, _label: text, ...properties },
  required: ['type', ...required],
  additionalProperties: false,
});
const named = { identified_by: many(anyOf('Name', 'Identifier')), classified_as: many(ref('Type')) };
const told = { ...named, referred_to_by: many(ref('Statement')) };
const event = { ...told, timespan: ref('TimeSpan'), technique: many(ref('Type')) };

const schema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $defs: {
    Type: structure('Type', { id: uri, ...named }, ['id']),
    Material: structure('Material', { id: uri }, ['id']),
    MeasurementUnit: structure('MeasurementUnit', { id: uri }, ['id']),
    Name: structure('Name', { ...named, content: text }, ['content']),
    Identifier: structure('Identifier', { ...named, content: text }, ['content']),
    Statement: structure('LinguisticObject', { ...named, content: text, format: text }, ['content']),
    TimeSpan: structure('TimeSpan', {
      ...named,
      begin_of_the_begin: { type: 'string', format: 'date-time' },
      end_of_the_begin: { type: 'string', format: 'date-time' },
      begin_of_the_end: { type: 'string', format: 'date-time' },
      end_of_the_end: { type: 'string', format: 'date-time' },
    }),
    Dimension: structure('Dimension', { ...named, value: { type: 'number' }, unit: ref('MeasurementUnit') }, [
      'value',
      'unit',
    ]),
    Production: structure('Production', event),
    Modification: structure('Modification', event),
    AttributeAssignment: structure('AttributeAssignment', {
      ...event,
      assigned: ref('Type'),
      assigned_property: { const: 'classified_as' },
    }),
    DigitalObject: structure('DigitalObject', {
      id: uri,
      ...named,
      format: text,
      access_point: many(ref('DigitalObject')),
    }),
    VisualItem: structure('VisualItem', { ...told, digitally_shown_by: many(ref('DigitalObject')) }),
  },
  ...structure(
    'HumanMadeObject',
    {
      '@context': { const: 'https://linked.art/ns/v1/linked-art.json' },
      id: uri,
      ...told,
      made_of: many(ref('Material')),
      dimension: many(ref('Dimension')),
      produced_by: ref('Production'),
      attributed_by: many(ref('AttributeAssignment')),
      modified_by: many(ref('Modification')),
      representation: many(ref('VisualItem')),
    },
    ['@context', 'id', '_label'],
  ),
};

const ajv = new Ajv2020({ allErrors: true, strict: false });
addFormats.default(ajv);
const validate = ajv.compile(schema);

/** Everything wrong with an object; empty when it is as the API asks. */
export function objectFaults(object: unknown): string[] {
  if (validate(object)) return [];
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}
