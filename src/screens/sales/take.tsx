import { useMemo } from 'preact/hooks';
import type { TakenSet } from '../../core/choice.ts';
import { carrierOf } from '../../core/lot-price.ts';
import type { LotRow } from '../../core/lots.ts';
import { choiceLotsOf, type More, purseOf } from '../../core/lots-choice.ts';
import type { Sale } from '../../core/records.ts';
import { lotName } from '../../parts/lot-name.ts';
import { useSaleActions } from '../../parts/sale-actions.ts';
import { useAdvice } from '../../parts/use-advice.ts';
import { useShelfHeld } from '../../parts/use-shelf-held.ts';
import { dayHere } from '../../text/days.ts';
import { hours, list, minorDigits, money, moneyAbout } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import css from './take.module.css';

/** What one more try adds: fifty of the currency's units, five hours. */
const MORE_UNITS = 50;
const MORE_MINUTES = 300;

/** What to take together, the runners-up, and what a little more would buy. */
export function Take({ sale, rows }: { readonly sale: Sale; readonly rows: readonly LotRow[] }) {
  const { store, now, catalogue } = useApp();
  const { copies } = useShelfHeld(sale.example);
  const settings = store.settings.value;
  const today = dayHere(now());
  const purse = purseOf(sale, rows, copies, settings, today);
  const lots = useMemo(() => choiceLotsOf(rows, purse.held, settings), [rows, JSON.stringify(purse.held), settings]);
  const unit = 10 ** minorDigits(sale.currency);
  const { advice, stale } = useAdvice(lots, purse, { money: MORE_UNITS * unit, minutes: MORE_MINUTES });
  const nameOf = (id: string): string => {
    const row = rows.find((one) => one.id === id);
    return row ? lotName(row.lot, catalogue) : 'a lot';
  };
  const [best, ...others] = advice?.sets ?? [];
  const unpriced = rows.filter(({ standing, allIn }) => standing === 'open' && allIn === null);
  const title = [
    purse.money === null ? '' : money(purse.money, sale.currency),
    purse.minutes === null ? '' : hours(purse.minutes / 60),
  ]
    .filter(Boolean)
    .join(' and ');
  return (
    <Section title={title ? `With ${title}` : 'What to take'}>
      <div class={css.take} data-stale={stale || undefined} aria-busy={stale}>
        {purse.money === null && (
          <p class={css.hint}>
            <a href={to('/sale/:id/record', { id: sale.id })}>Say what money and hours you have</a>; until then
            everything worth its price counts.
          </p>
        )}
        {advice?.short && (
          <p class={css.short}>
            What you pinned in goes over:{' '}
            {list(
              [
                advice.short.money > 0 ? `${money(advice.short.money, sale.currency)} too much` : '',
                advice.short.minutes > 0 ? `${hours(advice.short.minutes / 60)} too long` : '',
              ].filter(Boolean),
            )}
            .
          </p>
        )}
        {best && <Best set={best} rows={rows} sale={sale} />}
        {advice && !advice.proven && <p class={css.hint}>Searched long; there may be a slightly better set.</p>}
        {others.length > 0 && best && (
          <details>
            <summary>{others.length === 1 ? 'The runner-up' : 'Two runners-up'}</summary>
            <ol class={css.others}>
              {others.map((set) => (
                <li key={set.ids.join()}>
                  {list(set.ids.map(nameOf))}. {sums(set, sale.currency)},{' '}
                  {money(best.surplus - set.surplus, sale.currency)} less.
                </li>
              ))}
            </ol>
          </details>
        )}
        {advice?.moreMoney && (
          <MoreLine
            more={advice.moreMoney}
            by={money(advice.moreMoney.added, sale.currency)}
            sale={sale}
            nameOf={nameOf}
          />
        )}
        {advice?.moreHours && (
          <MoreLine more={advice.moreHours} by={hours(advice.moreHours.added / 60)} sale={sale} nameOf={nameOf} />
        )}
        <PinnedOut rows={rows} />
        {unpriced.length > 0 && (
          <p class={css.hint}>
            Not counted, no price yet: {list(unpriced.slice(0, 5).map(({ id }) => nameOf(id)))}
            {unpriced.length > 5 && ` and ${unpriced.length - 5} more`}.
          </p>
        )}
      </div>
    </Section>
  );
}

const sums = ({ price, minutes, surplus }: TakenSet, currency: string): string =>
  `${money(price, currency)} in all, ${hours(minutes / 60)}, surplus ${moneyAbout(surplus, currency)}`;

function Best({ set, rows, sale }: { readonly set: TakenSet; readonly rows: readonly LotRow[]; readonly sale: Sale }) {
  const { catalogue } = useApp();
  const actions = useSaleActions();
  const taken = rows.filter(({ id }) => set.ids.includes(id)).sort((a, b) => (b.surplus ?? 0) - (a.surplus ?? 0));
  if (taken.length === 0) return <p>Nothing here is worth its price within that. Offer less, or look further.</p>;
  return (
    <>
      <p class={css.sums} role="status">
        Take {taken.length === 1 ? 'one' : taken.length}: {sums(set, sale.currency)}.
      </p>
      <ul class={css.set}>
        {taken.map((row) => {
          const carrier = carrierOf(row.lot);
          const name = lotName(row.lot, catalogue);
          return (
            <li key={row.id}>
              <span>
                <b>{name}</b> <span class="figures">{row.allIn !== null && money(row.allIn, sale.currency)}</span>
                {carrier?.pinned === 'in' && <small> pinned in</small>}
              </span>
              {carrier && (
                <Button
                  look="quiet"
                  label={carrier.pinned === 'in' ? `Unpin: ${name}` : `Leave out: ${name}`}
                  onPress={() =>
                    actions.setFigures(
                      carrier,
                      { pinned: carrier.pinned === 'in' ? null : 'out' },
                      carrier.pinned === 'in' ? 'unpinning' : 'leaving it out',
                    )
                  }
                >
                  {carrier.pinned === 'in' ? 'Unpin' : 'Leave out'}
                </Button>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** What was left out by hand, so that it can come back. */
function PinnedOut({ rows }: { readonly rows: readonly LotRow[] }) {
  const { catalogue } = useApp();
  const actions = useSaleActions();
  const out = rows.filter(({ lot, standing }) => standing === 'open' && carrierOf(lot)?.pinned === 'out');
  if (out.length === 0) return null;
  return (
    <p class={css.out}>
      Left out by hand:{' '}
      {out.map(({ id, lot }) => {
        const carrier = carrierOf(lot);
        return (
          carrier && (
            <Button
              key={id}
              look="quiet"
              label={`Let it back in: ${lotName(lot, catalogue)}`}
              onPress={() => actions.setFigures(carrier, { pinned: null }, 'letting it back in')}
            >
              {lotName(lot, catalogue)}
            </Button>
          )
        );
      })}
    </p>
  );
}

function MoreLine({
  more,
  by,
  sale,
  nameOf,
}: {
  readonly more: More;
  readonly by: string;
  readonly sale: Sale;
  readonly nameOf: (id: string) => string;
}) {
  if (more.gain <= 0) return <p class={css.hint}>{by} more would buy nothing better.</p>;
  const instead = more.goes.length > 0 ? ` instead of ${list(more.goes.map(nameOf))}` : '';
  return (
    <p class={css.hint}>
      {by} more would add {moneyAbout(more.gain, sale.currency)} of surplus: {list(more.comes.map(nameOf))}
      {instead}.
    </p>
  );
}
