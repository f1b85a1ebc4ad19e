import { type Advice, type AdviceCase, adviceAt, adviceOn, joinedAdvice } from '../core/advice.ts';
import { entry } from '../core/catalogue.ts';
import { climateOf } from '../core/climate.ts';
import type { PlanStep } from '../core/plan.ts';
import { runningOf } from '../core/quarantine.ts';
import { adviceWords, assumptionWords, calculatorOf, needsWords } from '../text/advice.ts';
import { dayHere } from '../text/days.ts';
import { list } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import { to } from '../ui/route.ts';
import { AdviceCard } from './advice-card.tsx';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';

/** A block as the wood science sees it today; a quarantine it is in is reckoned from its own looks. */
export function useAdviceCase(of: BlockCase): AdviceCase {
  const { store, now } = useApp();
  const { block, survey, assessment, settings } = of;
  const running = runningOf(store.quarantinesOf(block.id));
  const fresh = running ? store.quarantineChecksOf(running.id).filter(({ freshSigns }) => freshSigns) : [];
  return {
    ...{ block, survey, assessment, climate: climateOf(settings), today: dayHere(now()) },
    ...(running ? { apart: { begunOn: running.begunOn, freshOn: fresh.map(({ on }) => on) } } : {}),
  };
}

/** What the wood science says to one finding, under its grade. */
export function FindingAdvice({ of, findingId }: { readonly of: BlockCase; readonly findingId: string }) {
  const { catalogue } = useApp();
  const facts = useAdviceCase(of);
  return <Cards of={of} advice={adviceOn(findingId, facts, catalogue)} />;
}

/** The advice that bears on a step of the plan; of several findings it names the finding. */
export function StepAdvice({
  of,
  step,
}: {
  readonly of: BlockCase;
  readonly step: Pick<PlanStep, 'treatment' | 'because'>;
}) {
  const { catalogue } = useApp();
  const facts = useAdviceCase(of);
  return <Cards of={of} advice={adviceAt(step, facts, catalogue)} named />;
}

function Cards({
  of,
  advice,
  named = false,
}: {
  readonly of: BlockCase;
  readonly advice: readonly Advice[];
  readonly named?: boolean;
}) {
  const { catalogue } = useApp();
  const { findingName } = useNames(of);
  const { units } = of.settings;
  return (
    <>
      {joinedAdvice(advice).map(({ first, findings }) => {
        const kind = entry(catalogue.damage, of.findings.find(({ id }) => id === first.findingId)?.kind);
        return (
          <AdviceCard
            key={`${first.does} ${first.findingId}`}
            words={adviceWords(first, units)}
            cautions={first.cautions}
            assumed={first.assumed.map((assumed) => assumptionWords(assumed, units))}
            needs={kind ? needsWords(first.needs, kind, catalogue) : ''}
            sources={first.sources}
            {...(named ? { about: list(findings.map(findingName)) } : {})}
            more={
              <p>
                <a href={to('/handbook/calculators/:calculator', { calculator: calculatorOf[first.does] })}>
                  Try other figures
                </a>
              </p>
            }
          />
        );
      })}
    </>
  );
}
