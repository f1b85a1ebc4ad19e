import { pertMean } from '../core/estimate.ts';
import { days, hours, hoursRange, money, percent } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';
import css from './working.module.css';

const points = (value: number): string => value.toFixed(1).replace('-', '−');

/** Every figure opened: which finding, which rule, which source. The lines add up to the figure they explain. */
export function Working({ of }: { readonly of: BlockCase }) {
  return (
    <div class={css.working}>
      <ScoreWorking of={of} />
      <OddsWorking of={of} />
      <HoursWorking of={of} />
      <MoneyWorking of={of} />
    </div>
  );
}

function ScoreWorking({ of }: { readonly of: BlockCase }) {
  const { graded, found, after } = of.assessment;
  const { findingName } = useNames(of);
  return (
    <details>
      <summary>How the score comes about</summary>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">Finding</th>
            <th scope="col">Grade</th>
            <th scope="col">Points lost</th>
            <th scope="col">Still lost after repair</th>
          </tr>
        </thead>
        <tbody>
          {graded.map(({ finding, grade, byHand, loss }) => (
            <tr key={finding.id}>
              <th scope="row">{findingName(finding.id)}</th>
              <td>
                {grade}
                {byHand && ' (by hand)'}
              </td>
              <td>{points(loss.points)}</td>
              <td>{points(loss.pointsAfter)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">100 less these</th>
            <td />
            <td>{points(found)}</td>
            <td>{points(after)}</td>
          </tr>
        </tfoot>
      </table>
      <p class={css.source}>
        Severity of the grade times the weight of the zone; findings multiply, their shares add up. Own model, trade
        estimate.
      </p>
    </details>
  );
}

function OddsWorking({ of }: { readonly of: BlockCase }) {
  const { graded, odds } = of.assessment;
  const { findingName } = useNames(of);
  const repaired = graded.filter(({ loss }) => loss.chance !== null);
  return (
    <details>
      <summary>How likely the repairs hold: {percent(odds)}</summary>
      {repaired.length === 0 ? (
        <p>Nothing needs a repair that could fail.</p>
      ) : (
        <table class="figures">
          <tbody>
            {repaired.map(({ finding, loss }) => (
              <tr key={finding.id}>
                <th scope="row">{findingName(finding.id)}</th>
                <td>{percent(loss.chance ?? 1)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">All of them, multiplied</th>
              <td>{percent(odds)}</td>
            </tr>
          </tfoot>
        </table>
      )}
      <p class={css.source}>Chance of a middling case, adjusted to the grade. Trade estimate.</p>
    </details>
  );
}

function HoursWorking({ of }: { readonly of: BlockCase }) {
  const { plan, days: elapsed } = of.assessment;
  const { treatmentTerm } = useNames(of);
  return (
    <details>
      <summary>
        {hoursRange(plan.hours.o, plan.hours.p)} of work, {days(elapsed.total)} with the waits
      </summary>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Least</th>
            <th scope="col">Likely</th>
            <th scope="col">Most</th>
          </tr>
        </thead>
        <tbody>
          {plan.steps.map(({ treatment, hours: time }) => (
            <tr key={treatment}>
              <th scope="row">{treatmentTerm(treatment)}</th>
              <td>{hours(time.o)}</td>
              <td>{hours(time.m)}</td>
              <td>{hours(time.p)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Mean {hours(pertMean(plan.hours))}</th>
            <td>{hours(plan.hours.o)}</td>
            <td>{hours(plan.hours.m)}</td>
            <td>{hours(plan.hours.p)}</td>
          </tr>
        </tfoot>
      </table>
      <p class={css.source}>
        Mean = (least + 4 × likely + most) ÷ 6. Hours are trade estimates; a wait is counted in nights, work in your
        evenings of {of.settings.eveningHours} h.
      </p>
    </details>
  );
}

function MoneyWorking({ of }: { readonly of: BlockCase }) {
  const { worth, odds, after, plan } = of.assessment;
  const { settings, block } = of;
  const { catalogue } = useApp();
  const say = (minor: number): string => money(minor, block.currency);
  const whose = (from: 'owner' | 'estimate'): string => (from === 'owner' ? 'your figure' : 'trade estimate');
  return (
    <details>
      <summary>How the limit comes about</summary>
      <table class="figures">
        <tbody>
          <tr>
            <th scope="row">New, made to order ({whose(worth.newPrice.from)})</th>
            <td>{say(worth.newPrice.amount)}</td>
          </tr>
          <tr>
            <th scope="row">
              Worth restored: {Math.round(after)} of 100 of that
              {worth.valueInUse !== null && `, at most its use ${say(worth.valueInUse)}`}
            </th>
            <td>{say(worth.valueOk)}</td>
          </tr>
          <tr>
            <th scope="row">Worth if it fails ({whose(worth.fallback.from)})</th>
            <td>{say(worth.fallback.amount)}</td>
          </tr>
          <tr>
            <th scope="row">
              Weighed {percent(odds)} to {percent(1 - odds)}, less {percent(settings.gain)} gain
            </th>
            <td>{say(worth.weighed)}</td>
          </tr>
          <tr>
            <th scope="row">
              Less {hours(plan.meanHours)} at {say(settings.hourlyRate)}
            </th>
            <td>−{say(worth.labour)}</td>
          </tr>
          <tr>
            <th scope="row">Less consumables</th>
            <td>−{say(worth.consumables)}</td>
          </tr>
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">The most that leaves your gain</th>
            <td>{say(worth.ceiling)}</td>
          </tr>
          <tr>
            <th scope="row">As a shape to copy</th>
            <td>{say(worth.copyCeiling)}</td>
          </tr>
          <tr>
            <th scope="row">An equal used block ({whose(worth.equalUsed.from)})</th>
            <td>{say(worth.equalUsed.amount)}</td>
          </tr>
          <tr>
            <th scope="row">Walk away above, all costs in</th>
            <td>{say(worth.walkAway)}</td>
          </tr>
        </tfoot>
      </table>
      <p class={css.source}>
        {catalogue.model.source.text} Change your own figures on the block’s page and in settings.
      </p>
    </details>
  );
}
