import { type DamageKind, entry, GRADES, SENSES, type Sense } from '../../core/catalogue.ts';
import { GradeBadge } from '../../parts/grade-badge.tsx';
import { SourceLine } from '../../parts/source-line.tsx';
import { conditionWords, inUnitOf, materialNames, zoneClassWords } from '../../text/conditions.ts';
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
    appliesTo.materials === 'all' ? 'any' : list(materialNames(appliesTo.materials, catalogue.materials));
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
            ['Materials', opening(materials)],
            ['Places', opening(list(appliesTo.zoneClasses.map((zone) => zoneClassWords[zone])))],
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
  return (
    <>
      <ul class={css.grades}>
        {GRADES.slice(1).map((grade) => (
          <li key={grade}>
            <GradeBadge grade={grade} />
            <span>{kind.grading.words[(grade - 1) as 0 | 1 | 2 | 3]}</span>
          </li>
        ))}
      </ul>
      {kind.grading.raises.map(({ why }) => (
        <p key={why}>{why}</p>
      ))}
      <Bounds kind={kind} />
      <Asked kind={kind} />
    </>
  );
}

/** From which figure each grade holds, measure by measure. */
function Bounds({ kind }: { readonly kind: DamageKind }) {
  const { by, combine } = kind.grading;
  if (by.length === 0) return null;
  return (
    <details class={css.bounds}>
      <summary>The bounds in figures</summary>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">Grade from</th>
            {GRADES.slice(1).map((grade) => (
              <th key={grade} scope="col">
                {grade}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {by.map(({ ask: id, from }) => {
            const ask = kind.asks.find((each) => each.id === id);
            return (
              <tr key={id}>
                <th scope="row">{ask?.label ?? id}</th>
                {from.map((bound, index) => (
                  <td key={index}>{inUnitOf(ask, bound)}</td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
      {by.length > 1 && <p>{combine === 'max' ? 'The worst measure decides.' : 'The mildest measure decides.'}</p>}
    </details>
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
