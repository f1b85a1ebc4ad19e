import { blank } from '../core/blank.ts';
import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Statement } from '../core/records.ts';
import { opening } from './format.ts';

type Words = Pick<Catalogue, 'transfers' | 'certainties' | 'evidence'>;

export interface ChainOptions {
  /** False for what leaves the workshop: names ticked as private become “a private owner”. */
  readonly showPrivate: boolean;
  /** Price as it is to be printed, by statement id. */
  readonly prices?: ReadonlyMap<string, string>;
}

/** Oldest first, as a chain is read; ids, which carry the time of their making, decide between equals. */
export const inOrder = (statements: readonly Statement[]): readonly Statement[] =>
  [...statements].sort((a, b) => a.position - b.position || (a.id < b.id ? -1 : 1));

/** Openings that already lead into a name: “made for”, “taken over with the workshop of”. The others take “from”. */
const LEADS_IN = /\b(?:for|by|from|with|of|to|at|in)$/;

function partyOf({ party, partyIsPrivate }: Statement, { showPrivate }: ChainOptions): string {
  if (partyIsPrivate && !showPrivate) return 'a private owner';
  return party.trim();
}

/** Transfer and party: “made for the Lanthorn Playhouse”. Where nothing is said of the transfer, the party alone, as typed. */
function handOver(statement: Statement, words: Words, options: ChainOptions): string {
  const party = partyOf(statement, options);
  const opens = entry(words.transfers, statement.transfer)?.text ?? statement.transfer;
  if (statement.transfer === blank.statement.transfer) return party || opens;
  return `${opens}${LEADS_IN.test(opens) ? '' : ' from'} ${party || 'an unknown owner'}`;
}

/** The kind of evidence that says there is none. */
const NO_EVIDENCE = 'none';

/** What the step rests on, then the note: “[inventory book p. 41; stamp]”. */
function sourcesOf({ evidence, note }: Statement, words: Words): string {
  const sources = evidence.map(({ kind, text }) => {
    const term = entry(words.evidence, kind)?.term.toLocaleLowerCase('en-GB') ?? kind;
    return text.trim() || (kind === NO_EVIDENCE ? 'no evidence' : term);
  });
  const all = [...sources, note.trim()].filter(Boolean);
  return all.length === 0 ? '' : ` [${all.join('; ')}]`;
}

/**
 * One step without its closing mark, small letter first: “probably made for …, before 1958 [stamp]”.
 * The date stands as it was typed, so that doubt in it is not lost.
 */
export function stepOf(statement: Statement, words: Words, options: ChainOptions): string {
  const saysNothing = statement.transfer === blank.statement.transfer && statement.party.trim() === '';
  // How sure one is of a step nothing is said about is no word to print.
  const doubt = saysNothing ? '' : (entry(words.certainties, statement.certainty)?.say ?? statement.certainty);
  const when = statement.when.words.trim() || (statement.when.edtf ?? '');
  const parts = [
    handOver(statement, words, options),
    statement.place.trim(),
    when,
    options.prices?.get(statement.id) ?? '',
  ];
  const said = parts.filter(Boolean).join(', ');
  return `${doubt ? `${doubt} ` : ''}${said}${sourcesOf(statement, words)}`;
}

/**
 * The chain of ownership in the museum's punctuation, oldest first: a semicolon where it passed straight to the next
 * owner, a full stop where there is a gap, sources in square brackets, doubt opening its step.
 * Source: museum pages on provenance punctuation (trade handbook §4.4).
 */
export function chainOf(statements: readonly Statement[], words: Words, options: ChainOptions): string {
  const chain = inOrder(statements);
  return chain
    .map((statement, index) => {
      const opens = index === 0 || !chain[index - 1]?.direct;
      const step = stepOf(statement, words, options);
      const closes = index === chain.length - 1 || !statement.direct ? '.' : ';';
      return `${opens ? opening(step) : step}${closes}`;
    })
    .join(' ');
}
