import { describe, expect, it } from 'vitest';
import { catalogue as words } from '../../src/catalogue/index.ts';
import { blank } from '../../src/core/blank.ts';
import type { Statement } from '../../src/core/records.ts';
import { chainOf, stepOf } from '../../src/text/provenance.ts';

const statement = (id: string, fields: Partial<Statement>): Statement => ({
  ...blank.statement,
  type: 'statement',
  id,
  schema: 1,
  device: 'abcdefgh',
  stamps: {},
  deleted: null,
  certainty: 'certain',
  ...fields,
});
const date = (typed: string) => ({ words: typed, edtf: null });
const open = { showPrivate: true };

/** The handbook's example, oldest first. Its second and third steps are no transfers of the list, so they stand as typed. */
const playhouse = [
  statement('a', {
    position: 1,
    transfer: 'madeFor',
    party: '[model house]',
    certainty: 'probable',
    when: date('before 1958'),
    evidence: [{ kind: 'stamp', text: 'style number B 207 matches the maker’s list' }],
    direct: true,
  }),
  statement('b', {
    position: 2,
    party: 'taken over by the Lanthorn Playhouse hat room',
    when: date('1958'),
    evidence: [{ kind: 'inventoryEntry', text: 'inventory book p. 41, seen 2026-10-17' }],
  }),
  statement('c', {
    position: 3,
    party: 'used for “Act II – Duchess”',
    certainty: 'possible',
    when: date('about 1962'),
    evidence: [{ kind: 'label', text: 'pencil note' }],
  }),
  statement('d', {
    position: 4,
    transfer: 'boughtFrom',
    party: 'the playhouse',
    place: 'Averley-on-Mere',
    when: date('17 October 2026'),
    evidence: [{ kind: 'receipt', text: 'receipt 7' }],
  }),
];

describe('a chain of ownership', () => {
  it('reads as the handbook’s example, doubt opening its step as the handbook’s own rule asks', () => {
    expect(chainOf(playhouse, words, { ...open, prices: new Map([['d', '£120']]) })).toBe(
      'Probably made for [model house], before 1958 [style number B 207 matches the maker’s list]; ' +
        'taken over by the Lanthorn Playhouse hat room, 1958 [inventory book p. 41, seen 2026-10-17]. ' +
        'Possibly used for “Act II – Duchess”, about 1962 [pencil note]. ' +
        'Bought from the playhouse, Averley-on-Mere, 17 October 2026, £120 [receipt 7].',
    );
  });

  it('goes by position, not by the order the statements were written down in', () => {
    expect(chainOf([...playhouse].reverse(), words, open)).toBe(chainOf(playhouse, words, open));
  });

  it('marks a break with a full stop and ends with one even where the last step was direct', () => {
    const [first, second] = playhouse as [Statement, Statement];
    const broken = chainOf(
      [
        { ...first, direct: false },
        { ...second, direct: true },
      ],
      words,
      open,
    );
    expect(broken).toContain('list]. Taken over');
    expect(broken.endsWith('2026-10-17].')).toBe(true);
  });

  it('keeps a disproved statement and says that it is one', () => {
    const step = stepOf(
      statement('x', { transfer: 'madeFor', party: 'the Crown', certainty: 'disproved' }),
      words,
      open,
    );
    expect(step).toBe('formerly thought made for the Crown');
  });

  it('hides a private name from others but keeps town and date', () => {
    const sold = statement('x', {
      transfer: 'boughtFrom',
      party: 'Odile Ferncastle',
      partyIsPrivate: true,
      place: 'Averley-on-Mere',
      when: date('2026'),
    });
    expect(stepOf(sold, words, { showPrivate: false })).toBe('bought from a private owner, Averley-on-Mere, 2026');
    expect(stepOf(sold, words, open)).toContain('Odile Ferncastle');
  });

  it('puts “from” before the name where the opening does not lead into it', () => {
    const step = stepOf(statement('x', { transfer: 'inheritedByDescent', party: 'her aunt' }), words, open);
    expect(step).toBe('by descent from her aunt');
  });

  it('has an opening for every transfer of the catalogue that reads on into a name', () => {
    const steps = Object.keys(words.transfers).map((transfer) =>
      stepOf(statement('x', { transfer, party: 'the Crown' }), words, open),
    );
    expect(steps).toEqual([
      'made for the Crown',
      'ordered by the Crown',
      'bought from the Crown',
      'bought at auction from the Crown',
      'given by the Crown',
      'by descent from the Crown',
      'found with the Crown',
      'lent by the Crown',
      'taken over with the workshop of the Crown',
      'the Crown',
    ]);
  });

  it('says in brackets that there is no evidence', () => {
    const told = statement('x', { transfer: 'givenBy', party: 'a neighbour', evidence: [{ kind: 'none', text: '' }] });
    expect(stepOf(told, words, open)).toBe('given by a neighbour [no evidence]');
  });

  it('says that the owner is unknown rather than leaving a hole', () => {
    expect(chainOf([statement('x', { when: date('1930s'), certainty: 'possible' })], words, open)).toBe(
      'By unknown steps, 1930s.',
    );
    expect(stepOf(statement('x', { transfer: 'madeFor' }), words, open)).toBe('made for an unknown owner');
  });

  it('names the kind of evidence where nothing more was written, and adds the note', () => {
    const step = stepOf(
      statement('x', { party: 'A farm sale', evidence: [{ kind: 'receipt', text: ' ' }], note: 'lost since' }),
      words,
      open,
    );
    expect(step).toBe('A farm sale [receipt; lost since]');
  });

  it('prints what it does not know under its own id, so that nothing of a newer record is lost', () => {
    const step = stepOf(
      statement('x', { transfer: 'raffledBy', party: 'the guild', certainty: 'rumoured' }),
      words,
      open,
    );
    expect(step).toBe('rumoured raffledBy from the guild');
  });
});
