import { useState } from 'preact/hooks';
import { entry } from '../../core/catalogue.ts';
import type { Statement } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { lastPosition, moved } from '../../parts/chain-order.ts';
import { purchaseStep } from '../../parts/purchase.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import { opening } from '../../text/format.ts';
import { inOrder, stepOf } from '../../text/provenance.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { StatementSheet } from './statement-sheet.tsx';
import css from './story.module.css';

/** The steps of the chain, oldest first, with the gaps between them; each opens to be written on. */
export function Steps({ of }: { readonly of: BlockCase }) {
  const actions = useActions();
  const [open, setOpen] = useState<string>();
  const chain = inOrder(of.statements);
  const add = (fields: Parameters<typeof actions.addStatement>[1]): void =>
    setOpen(actions.addStatement(of.block, { position: lastPosition(chain), ...fields }));
  return (
    <>
      <ol class={css.steps}>
        {chain.map((statement, index) => (
          <Step
            key={statement.id}
            of={of}
            statement={statement}
            isFirst={index === 0}
            isLast={index === chain.length - 1}
            onOpen={() => setOpen(statement.id)}
          />
        ))}
      </ol>
      <div class={css.add}>
        <Button onPress={() => add({})}>Add a step</Button>
        <Button onPress={() => add(purchaseStep(of.sale, of.photos))}>Add your purchase</Button>
      </div>
      {open !== undefined && <StatementSheet of={of} statementId={open} onClose={() => setOpen(undefined)} />}
    </>
  );
}

function Step({
  of,
  statement,
  isFirst,
  isLast,
  onOpen,
}: {
  readonly of: BlockCase;
  readonly statement: Statement;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly onOpen: () => void;
}) {
  const { catalogue } = useApp();
  const actions = useActions();
  const said = opening(stepOf(statement, catalogue, { showPrivate: true }));
  const certainty = entry(catalogue.certainties, statement.certainty)?.term ?? statement.certainty;
  const move = (by: -1 | 1): void => actions.moveStatement(moved(of.statements, statement.id, by));
  return (
    <li>
      <button type="button" class={css.step} onClick={onOpen}>
        <span>{said}</span>
        <small>
          {certainty}
          {statement.evidence.length === 0 && ', nothing to rest it on yet'}
          {statement.partyIsPrivate && ', name private'}
        </small>
      </button>
      {!(isFirst && isLast) && (
        <div class={css.move}>
          <Button label={`Earlier: ${said}`} disabled={isFirst} onPress={() => move(-1)}>
            ↑
          </Button>
          <Button label={`Later: ${said}`} disabled={isLast} onPress={() => move(1)}>
            ↓
          </Button>
        </div>
      )}
      {!isLast && !statement.direct && <p class={css.gap}>Gap: what came between is not known.</p>}
    </li>
  );
}
