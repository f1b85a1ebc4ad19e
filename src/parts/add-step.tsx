import { useState } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import { workingOrder } from '../core/plan.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { NumberField, SelectField, TextField } from '../ui/field.tsx';
import { Sheet } from '../ui/sheet.tsx';
import { stepName } from './step-name.ts';
import type { BlockCase } from './use-case.ts';
import { useWorkActions } from './work-actions.ts';

const OWN_WORDS = '-';
/** Likely hours make a three-point estimate at the spread the catalogue's own steps have on the whole. Trade estimate. */
const spread = (likely: number) => ({ o: likely * 0.6, m: likely, p: likely * 1.8 });

/** Puts in a step no finding calls for: one of the trade's, or one in the owner's own words. */
export function AddStep({
  of,
  items,
  onClose,
}: {
  readonly of: BlockCase;
  readonly items: readonly WorkItem[];
  readonly onClose: () => void;
}) {
  const { catalogue } = useApp();
  const actions = useWorkActions();
  const [treatment, setTreatment] = useState<string>(OWN_WORDS);
  const [words, setWords] = useState('');
  const [how, setHow] = useState('');
  const [minutes, setMinutes] = useState<number | null>(null);
  const [waitHours, setWaitHours] = useState<number | null>(null);
  const [after, setAfter] = useState('');
  const isOwn = treatment === OWN_WORDS;
  const open = items.filter(({ stand }) => stand === 'open');
  const ready = !isOwn || (words.trim() !== '' && minutes !== null && minutes > 0);

  /** Just after the step named, or before the last photographs. */
  const position = (): number => {
    const at = open.findIndex(({ key }) => key === after);
    const here = open[at]?.position;
    const next = open[at + 1]?.position;
    if (here !== undefined) return next !== undefined && next > here ? (here + next) / 2 : here + 0.5;
    return (workingOrder(catalogue).get('recordAfter') ?? 0) - 0.5;
  };
  const put = (): void => {
    if (!ready) return;
    actions.addStep(
      of.block,
      isOwn
        ? {
            ...{ words: words.trim(), note: how.trim(), hours: spread((minutes ?? 0) / 60) },
            ...{ waitHours: waitHours ?? 0, position: position() },
          }
        : { treatment },
    );
    onClose();
  };
  return (
    <Sheet
      title="Put a step in"
      onClose={onClose}
      closeLabel="Close"
      foot={
        <Button wide disabled={!ready} onPress={put}>
          Put it in
        </Button>
      }
    >
      <SelectField
        label="Which"
        value={treatment}
        options={[
          { id: OWN_WORDS, label: 'In my own words' },
          ...Object.entries(catalogue.treatments).map(([id, { term }]) => ({ id, label: term })),
        ]}
        onChange={setTreatment}
      />
      {isOwn ? (
        <>
          <TextField label="What" value={words} onChange={setWords} />
          <TextField label="How" lines={2} value={how} onChange={setHow} />
          <NumberField
            label="Likely time"
            unit="min"
            step={15}
            max={6000}
            chips={[15, 30, 60, 120]}
            value={minutes}
            onChange={setMinutes}
          />
          <NumberField
            label="Wait after it"
            unit="h"
            step={1}
            max={2000}
            chips={[4, 12, 24, 72]}
            value={waitHours}
            onChange={setWaitHours}
          />
          <SelectField
            label="Comes after"
            value={after}
            options={[
              { id: '', label: 'Everything but the last photographs' },
              ...open.map((item) => ({ id: item.key, label: stepName(item, catalogue) })),
            ]}
            onChange={setAfter}
          />
        </>
      ) : (
        <p>{entry(catalogue.treatments, treatment)?.how}</p>
      )}
    </Sheet>
  );
}
