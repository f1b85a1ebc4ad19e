import { zonesFor } from '../core/block.ts';
import { type Ask, entry, type Grade, SENSES, type Sense } from '../core/catalogue.ts';
import type { Finding } from '../core/records.ts';
import { measuredBehind, plusMinus } from '../text/measured.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { ChoiceField, NumberField, TextField, TickField } from '../ui/field.tsx';
import { Sheet } from '../ui/sheet.tsx';
import { useActions } from './actions.ts';
import { FindingAdvice } from './advice.tsx';
import css from './finding-sheet.module.css';
import { GradeBadge } from './grade-badge.tsx';
import { Held } from './held.tsx';
import { OtherWords } from './other-words.tsx';
import { PhotoStrip } from './photo-strip.tsx';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';
import { ZonePicker } from './zone-picker.tsx';

const unitWords: Record<string, string> = {
  mm: 'mm',
  cm2: 'cm²',
  pct: '%',
  count: '',
  perCm2: 'per cm²',
  perDm2: 'per dm²',
  level: '',
};

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

/** One finding: where, how much, how bad and why. Everything is saved as it is entered; leaving loses nothing. */
export function FindingSheet({
  of,
  findingId,
  onClose,
}: {
  readonly of: BlockCase;
  readonly findingId: string;
  readonly onClose: () => void;
}) {
  const { catalogue } = useApp();
  const actions = useActions();
  const { kindTerm } = useNames(of);
  const finding = of.findings.find(({ id }) => id === findingId);
  if (!finding) return null;
  const kind = entry(catalogue.damage, finding.kind);
  const graded = of.assessment.graded.find((item) => item.finding.id === findingId);
  const gates = of.assessment.gates.filter((gate) => gate.findingId === findingId);
  return (
    <Sheet title={`${finding.number} · ${kindTerm(finding.kind)}`} onClose={onClose}>
      {kind && (
        <p class={css.definition}>
          {kind.definition} <HowToTell detect={kind.detect} />
        </p>
      )}
      {gates.map((gate) => (
        <p key={gate.advice} class={css.gate} role="note">
          {gate.advice}
        </p>
      ))}
      {kind && (
        <ZonePicker
          of={of}
          zones={zonesFor(kind, of.assessment.setting, catalogue)}
          zone={finding.zone}
          part={finding.part}
          onPick={(zone, part) => actions.setFinding(finding, { zone, part })}
        />
      )}
      {kind?.asks.map((ask) => (
        <AskField key={ask.id} ask={ask} finding={finding} photoMarks={of.photoMarks} />
      ))}
      {graded && kind && (
        <div class={css.grade} aria-live="polite">
          <GradeBadge grade={graded.grade} />
          <p>
            {graded.grade === 0 ? 'Too slight to grade.' : kind.grading.words[(graded.grade - 1) as 0 | 1 | 2 | 3]}
            <small>{gradeWhy(graded.working, graded.byHand, kind.asks)}</small>
          </p>
        </div>
      )}
      <ByHand finding={finding} proposed={graded?.working.grade ?? 1} />
      <FindingAdvice of={of} findingId={finding.id} />
      <PhotoStrip of={of} findingId={finding.id} />
      {graded && <Held of={of} graded={graded} />}
      <TextField
        label="Note"
        lines={2}
        value={finding.note}
        onChange={(note) => actions.setFinding(finding, { note })}
      />
      <OtherWords record={finding} path="note" />
      <Button
        look="quiet"
        onPress={() => {
          actions.removeFinding(finding);
          onClose();
        }}
      >
        Remove this finding
      </Button>
    </Sheet>
  );
}

function HowToTell({ detect }: { readonly detect: Partial<Record<Sense, string>> }) {
  return (
    <details class={css.tell}>
      <summary>How to tell</summary>
      <dl>
        {SENSES.flatMap((sense) => {
          const text = detect[sense];
          return text ? [<dt key={sense}>{senseWords[sense]}</dt>, <dd key={`${sense}-text`}>{text}</dd>] : [];
        })}
      </dl>
    </details>
  );
}

function AskField({
  ask,
  finding,
  photoMarks,
}: {
  readonly ask: Ask;
  readonly finding: Finding;
  readonly photoMarks: BlockCase['photoMarks'];
}) {
  const actions = useActions();
  const answer = Object.hasOwn(finding.answers, ask.id) ? finding.answers[ask.id] : undefined;
  const set = (value: number | boolean | string | null): void => actions.answer(finding, ask.id, value);
  if (ask.type === 'yesNo') {
    return (
      <TickField label={ask.label} hint={ask.hint} value={answer === true} onChange={(yes) => set(yes ? true : null)} />
    );
  }
  if (ask.type === 'choice') {
    return (
      <ChoiceField
        label={ask.label}
        hint={ask.hint}
        none
        value={typeof answer === 'string' ? answer : null}
        options={ask.options}
        onChange={set}
      />
    );
  }
  if (ask.unit === 'level' && ask.steps) {
    return (
      <ChoiceField
        label={ask.label}
        hint={ask.hint}
        none
        value={typeof answer === 'number' ? String(answer) : null}
        options={ask.steps.map((label, index) => ({ id: String(index + 1), label }))}
        onChange={(level) => set(level === null ? null : Number(level))}
      />
    );
  }
  const behind = measuredBehind(photoMarks, finding.id, ask.id, answer);
  const measured =
    behind && `Measured in a photograph: ${plusMinus(behind.value, behind.sigma, unitWords[ask.unit] ?? '')}.`;
  return (
    <NumberField
      label={ask.label}
      hint={[measured, ask.hint].filter(Boolean).join(' ') || undefined}
      unit={unitWords[ask.unit] ?? ''}
      step={ask.step}
      max={ask.max}
      chips={ask.chips}
      value={typeof answer === 'number' ? answer : null}
      onChange={set}
    />
  );
}

function gradeWhy(
  working: {
    measures: readonly { ask: string; grade: Grade }[];
    raised: readonly { why: string }[];
    unmeasured: boolean;
  },
  byHand: boolean,
  asks: readonly Ask[],
): string {
  if (byHand) return 'Set by hand.';
  if (working.unmeasured) return 'Seen, not measured: counts as a trace until it is.';
  const label = (id: string): string => asks.find((ask) => ask.id === id)?.label.toLocaleLowerCase('en-GB') ?? id;
  const by = working.measures.map(({ ask, grade }) => `${label(ask)} gives ${grade}`).join(', ');
  const raised = working.raised.map(({ why }) => why).join(' ');
  return [by && `By ${by}.`, raised].filter(Boolean).join(' ');
}

function ByHand({ finding, proposed }: { readonly finding: Finding; readonly proposed: Grade }) {
  const actions = useActions();
  return (
    <details open={finding.gradeByHand !== null}>
      <summary>Set the grade by hand</summary>
      <ChoiceField
        label="Grade by hand"
        hideLabel
        none
        value={finding.gradeByHand === null ? null : String(finding.gradeByHand)}
        options={['0', '1', '2', '3', '4'].map((id) => ({
          id,
          label: id,
          text: Number(id) === proposed ? 'measured' : '',
        }))}
        onChange={(grade) =>
          actions.setFinding(finding, { gradeByHand: grade === null ? null : (Number(grade) as Grade) })
        }
      />
      {finding.gradeByHand !== null && (
        <TextField
          label="Why"
          hint="Stands beside the grade in the report."
          value={finding.gradeReason}
          onChange={(gradeReason) => actions.setFinding(finding, { gradeReason })}
        />
      )}
      <OtherWords record={finding} path="gradeReason" />
    </details>
  );
}
