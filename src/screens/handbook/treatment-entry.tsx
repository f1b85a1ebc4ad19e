import { type Catalogue, entry, type ThreePoint, type Treatment } from '../../core/catalogue.ts';
import { SourceLine } from '../../parts/source-line.tsx';
import { conditionWords, small } from '../../text/conditions.ts';
import { days, hours, list, money } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { Section } from '../../ui/page.tsx';
import css from './handbook.module.css';
import { Cautions, Facts, Links } from './handbook-parts.tsx';

const perWords: Record<NonNullable<Treatment['per']>['unit'], (size: number) => string> = {
  areaPct: (size) => `each ${size} % of the surface`,
  lengthMm: (size) => `each ${size} mm`,
  areaCm2: (size) => `each ${size} cm²`,
  count: (size) => (size === 1 ? 'each one' : `each ${size}`),
  coats: (size) => (size === 1 ? 'each coat' : `each ${size} coats`),
};

const spread = ({ o, m, p }: ThreePoint, say: (value: number) => string): string =>
  o === p ? say(m) : `${say(m)} (${say(o)} to ${say(p)})`;
const wait = (value: number): string => (value < 36 ? hours(value) : days(Math.round(value / 24)));

/** Damages that call for a treatment. */
const calledBy = (id: string, { damage }: Catalogue) =>
  Object.entries(damage).flatMap(([kindId, kind]) =>
    kind.treatments.some(({ treatment }) => treatment === id) ? [{ id: kindId, term: kind.term }] : [],
  );

/** A treatment: cautions first, then how, how long, and what must go before. */
export function TreatmentEntry({ id }: { readonly id: string }) {
  const { catalogue } = useApp();
  const treatment = entry(catalogue.treatments, id);
  if (!treatment) return null;
  const termOf = (other: string): string => entry(catalogue.treatments, other)?.term ?? other;
  const resource = (other: string): string => small(entry(catalogue.resources, other)?.term ?? other);
  const { per, waitHours, waitResource } = treatment;
  const kinds = calledBy(id, catalogue);
  return (
    <>
      <Cautions lines={treatment.cautions} />
      <Section>
        <p class={css.lead}>{treatment.how}</p>
        <Facts
          rows={[
            ['Why', treatment.why],
            ['Done when', treatment.doneWhen],
            ['Leave it out when', treatment.skipWhen],
            [
              'Part of every plan',
              (treatment.always && 'yes') || (treatment.forMarks && 'of every block with marks to keep'),
            ],
            ['Marks', treatment.touchesMarks && 'Protect those worth keeping first.'],
          ]}
        />
      </Section>
      <Section title="Time and means">
        <Facts
          rows={[
            ['To set up', spread(treatment.setUpHours, hours)],
            ['Then', per && `${spread(per.hours, hours)} for ${perWords[per.unit](per.size)}`],
            [
              'Waits',
              waitHours.m > 0 && `${spread(waitHours, wait)}${waitResource ? `: ${resource(waitResource)}` : ''}`,
            ],
            ['Tools', list(treatment.tools)],
            ['Keeps busy', list(treatment.handsResources.map(resource))],
            ['Consumables', treatment.consumables > 0 && `about ${money(treatment.consumables, 'GBP')}`],
          ]}
        />
        <p class={css.hint}>Hours are trade estimates: likely, and from least to most.</p>
      </Section>
      {(treatment.after.length > 0 || treatment.brings.length > 0) && (
        <Section title="Order">
          {treatment.after.length > 0 && <p>Only after these, where the plan has them:</p>}
          <Links section="treatments" entries={treatment.after.map((other) => ({ id: other, term: termOf(other) }))} />
          {treatment.brings.length > 0 && <p>Brings with it:</p>}
          <Links
            section="treatments"
            entries={treatment.brings.map(({ treatment: other, when, why }) => {
              const words = when ? conditionWords(when, [], catalogue) : '';
              return { id: other, term: termOf(other), why: `${words && `When ${words}. `}${why}` };
            })}
          />
        </Section>
      )}
      {kinds.length > 0 && (
        <Section title="Called for by">
          <Links section="damage" entries={kinds} />
        </Section>
      )}
      <SourceLine source={treatment.source} />
    </>
  );
}
