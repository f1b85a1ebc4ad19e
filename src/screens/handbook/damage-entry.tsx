import { type DamageKind, entry, GRADES, SENSES, type Sense } from '../../core/catalogue.ts';
import { GradeBadge } from '../../parts/grade-badge.tsx';
import { SourceLine } from '../../parts/source-line.tsx';
import { conditionWords, inUnitOf, zoneClassWords } from '../../text/conditions.ts';
import { list, opening, percent, timesInTen } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { Section } from '../../ui/page.tsx';
import css from './handbook.module.css';
import { Cautions, Facts, Links } from './handbook-parts.tsx';

const senseWords: Record<Sense, string> = {
  sight: 'Look',
  raking: 'Low light',
  touch: 'Touch',
  knock: 'Knock',
  smell: 'Smell',
  uv: 'UV torch',
  weight: 'Weight',
  other: 'Also',
};

/** A damage kind: cautions, what it is, how to tell, how bad, what is done about it, and on what that rests. */
export function DamageEntry({ id }: { readonly id: string }) {
  const { catalogue } = useApp();
  const kind = entry(catalogue.damage, id);
  if (!kind) return null;
  const { appliesTo } = kind;
  const materials =
    appliesTo.materials === 'all'
      ? 'any'
      : list(appliesTo.materials.map((material) => entry(catalogue.materials, material)?.term ?? material));
  return (
    <>
      <Cautions
        lines={kind.gates.map((gate) => {
          const when = conditionWords(gate.when, kind.asks, catalogue);
          return (
            <>
              {when && <b>{opening(when)}: </b>}
              {gate.advice}
            </>
          );
        })}
      />
      <Section>
        <p class={css.lead}>{kind.definition}</p>
        {kind.notes && <p>{kind.notes}</p>}
      </Section>
      <Section title="How to tell">
        <Facts rows={SENSES.map((sense) => [senseWords[sense], kind.detect[sense]] as const)} />
      </Section>
      <Section title="How bad it is">
        <Grades kind={kind} />
      </Section>
      <Section title="What is done about it">
        <Treatments kind={kind} />
      </Section>
      <Section title="Where it comes">
        <Facts
          rows={[
            ['Materials', materials],
            ['Places', list(appliesTo.zoneClasses.map((zone) => zoneClassWords[zone]))],
            ['Blocks', appliesTo.onlySeveralParts && 'only of several parts'],
            ['Seen at', list(kind.stations.map((station) => entry(catalogue.stations, station)?.term ?? station))],
          ]}
        />
        <SourceLine source={kind.source} />
      </Section>
    </>
  );
}

function Grades({ kind }: { readonly kind: DamageKind }) {
  const { catalogue } = useApp();
  const measured = kind.asks.filter((ask) => kind.grading.by.some((threshold) => threshold.ask === ask.id));
  return (
    <>
      <ul class={css.grades}>
        {GRADES.slice(1).map((grade) => (
          <li key={grade}>
            <GradeBadge grade={grade} />
            <span>
              {kind.grading.words[(grade - 1) as 0 | 1 | 2 | 3]}
              {kind.grading.by.length > 0 && (
                <small>
                  {measured
                    .map((ask) => {
                      const from = kind.grading.by.find((threshold) => threshold.ask === ask.id)?.from[grade - 1] ?? 0;
                      return `${ask.label.toLocaleLowerCase('en-GB')} from ${inUnitOf(ask, from)}`;
                    })
                    .join(kind.grading.combine === 'max' ? ', or ' : ', and ')}
                </small>
              )}
            </span>
          </li>
        ))}
      </ul>
      {kind.grading.raises.map(({ when, why }) => {
        const words = conditionWords(when, kind.asks, catalogue);
        return (
          <p key={why}>
            {words && `${opening(words)}: `}
            {why}
          </p>
        );
      })}
      <Asked kind={kind} />
    </>
  );
}

/** What its sheet asks, where that says more than the thresholds do. */
function Asked({ kind }: { readonly kind: DamageKind }) {
  const hinted = kind.asks.filter((ask) => ask.hint);
  if (hinted.length === 0) return null;
  return <Facts rows={hinted.map((ask) => [ask.label, ask.hint] as const)} />;
}

function Treatments({ kind }: { readonly kind: DamageKind }) {
  const { catalogue } = useApp();
  if (kind.treatments.length === 0) return <p>Nothing: it is recorded and lived with.</p>;
  return (
    <>
      <Links
        section="treatments"
        entries={kind.treatments.map(({ treatment, fromGrade, when, why }) => {
          const words = when ? conditionWords(when, kind.asks, catalogue) : '';
          return {
            id: treatment,
            term: entry(catalogue.treatments, treatment)?.term ?? treatment,
            why: `From grade ${fromGrade}${words && `, when ${words}`}. ${why}`,
          };
        })}
      />
      <p class={css.hint}>
        Of a middling case, the repair holds {timesInTen(kind.baseSuccess)}; one that holds takes away{' '}
        {percent(kind.treatability)} of the loss.
      </p>
    </>
  );
}
