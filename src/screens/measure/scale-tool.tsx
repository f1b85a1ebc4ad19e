import { useState } from 'preact/hooks';
import { apartPx, type Spot } from '../../core/mark-geometry.ts';
import type { PhotoScale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { refusal } from '../../text/measured.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { NumberField, SelectField } from '../../ui/field.tsx';
import { METHOD_VERSION, type ReferenceFit } from '../../workers/pixel-jobs.ts';
import { type Desk, useWork } from './desk.ts';
import css from './measure.module.css';
import { Busy, Nudge } from './panel-parts.tsx';
import { kindOf, referenceOptions, referenceWords, sizesOf, TAPS, TWO_POINTS } from './references.ts';
import { savedMarks } from './saved-marks.ts';
import { type Fit, fitDrawn, ScaleDoubt } from './scale-fit.tsx';
import { usePixels } from './use-pixels.ts';

type Outcome = { readonly fit: Fit | null; readonly why: string | null };

/** Standard error of corners taken as a finger put them, in working pixels and as a share of the long side. */
const BY_HAND = { px: 4, share: 0.011 } as const;

const WHAT: Readonly<Record<PhotoScale['kind'], string>> = {
  card: 'Tap the four corners of the card, going round.',
  paper: 'Tap the four corners of the sheet, going round.',
  coin: 'Tap three places on the rim of the coin.',
  twoPoints: 'Tap two places a known length apart: two lines of a ruler, say.',
};

/** Where a photograph gets its millimetres from. */
export function ScaleTool({ desk }: { readonly desk: Desk }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const pixels = usePixels(desk);
  const { photo, size, stage } = desk;
  const kept = photo.scale;
  const [reference, setReference] = useState<string>(kept ? (kept.reference ?? TWO_POINTS) : 'bankCard');
  const [taps, setTaps] = useState<readonly Spot[]>(kept?.taps ?? []);
  const [outcome, setOutcome] = useState<Outcome>({ fit: kept, why: null });
  const [aboveMm, setAboveMm] = useState(kept?.featureAboveMm ?? 0);
  const [lengthMm, setLengthMm] = useState<number | null>(kept?.kind === 'twoPoints' ? (kept.sizeMm[0] ?? null) : null);
  const kind = kindOf(reference, catalogue) ?? 'card';
  const wanted = TAPS[kind];

  async function fitTo(next: readonly Spot[]): Promise<void> {
    if (next.length < wanted) {
      setOutcome({ fit: null, why: null });
      return;
    }
    if (kind === 'twoPoints') {
      const corners = next.map(([x, y]): [number, number] => [x, y]);
      setOutcome({ fit: { corners, rim: null, sigmaOfWidth: 0.7 / size.width }, why: null });
      return;
    }
    const job = { card: 'refineCard', paper: 'refineSheet', coin: 'refineCoin' } as const;
    take(await pixels.ask(job[kind], next));
  }

  function take(answer: ReferenceFit | undefined): void {
    if (!answer) return;
    if (answer.ok) {
      const { corners, rim, sigmaOfWidth } = answer;
      setOutcome({ fit: { corners, rim, sigmaOfWidth }, why: null });
      stage.said.value = 'The edges were found.';
    } else {
      setOutcome({ fit: null, why: refusal(answer.why) });
      stage.said.value = refusal(answer.why);
    }
  }

  function set(next: readonly Spot[]): void {
    setTaps(next);
    void fitTo(next);
  }

  function byHand(): void {
    const longest = Math.max(...taps.map((tap, i) => apartPx(tap, taps[(i + 1) % taps.length] ?? tap, size)));
    const corners = taps.map(([x, y]): [number, number] => [x, y]);
    const sigmaPx = Math.max(BY_HAND.px, BY_HAND.share * longest);
    setOutcome({ fit: { corners, rim: null, sigmaOfWidth: sigmaPx / size.width }, why: null });
  }

  const sizeMm = kind === 'twoPoints' ? (lengthMm === null ? [] : [lengthMm]) : sizesOf(reference, catalogue);
  const draft: PhotoScale | null =
    outcome.fit && sizeMm.length > 0
      ? {
          ...{ kind, reference: kind === 'twoPoints' ? null : reference, sizeMm, featureAboveMm: aboveMm },
          ...{ taps: taps.map(([x, y]): [number, number] => [x, y]), version: METHOD_VERSION },
          ...{ corners: outcome.fit.corners, rim: outcome.fit.rim, sigmaOfWidth: outcome.fit.sigmaOfWidth },
        }
      : null;
  const isKept =
    kept !== null && draft !== null && JSON.stringify({ ...kept }) === JSON.stringify({ ...kept, ...draft });

  useWork(stage, {
    drawn: [...savedMarks(desk), ...fitDrawn(outcome.fit, taps, wanted, size.width / size.height)],
    handles: taps,
    onTap(spot) {
      if (taps.length >= wanted) {
        stage.said.value = 'All points are there: drag one to move it.';
        return;
      }
      set([...taps, spot]);
      stage.said.value = `Point ${taps.length + 1} of ${wanted}.`;
    },
    onMove(index, spot, done) {
      const next = taps.map((tap, i) => (i === index ? spot : tap));
      setTaps(next);
      if (done) void fitTo(next);
    },
    onRemove: (index) => set(taps.filter((_, i) => i !== index)),
  });

  return (
    <div class={css.tool}>
      <SelectField
        label="What lies in the picture"
        value={reference}
        options={referenceOptions(catalogue)}
        onChange={(id) => {
          setReference(id);
          setTaps([]);
          setOutcome({ fit: null, why: null });
        }}
      />
      <p class={css.say}>
        {taps.length < wanted && !outcome.fit
          ? `${WHAT[kind]} ${taps.length > 0 ? `${taps.length} of ${wanted}.` : ''}`
          : 'Drag a point if the line is off.'}
      </p>
      <div class={css.row}>
        {kind === 'card' && (
          <Button
            onPress={async () => {
              setTaps([]);
              take(await pixels.ask('findCard', null));
            }}
          >
            Find it for me
          </Button>
        )}
        {(taps.length > 0 || outcome.fit) && (
          <Button
            look="quiet"
            onPress={() => {
              setTaps([]);
              setOutcome({ fit: null, why: null });
            }}
          >
            Start again
          </Button>
        )}
      </div>
      <Nudge desk={desk} />
      <Busy pixels={pixels} />
      {outcome.why && (
        <div class={css.refused} role="alert">
          <p>{outcome.why} Move a point, or use another thing of known size.</p>
          {taps.length === wanted && (kind === 'card' || kind === 'paper') && (
            <Button onPress={byHand}>Use the points as they are</Button>
          )}
        </div>
      )}
      {draft && <ScaleDoubt desk={desk} draft={draft} />}
      {kind === 'twoPoints' && (
        <NumberField
          label="Length between them"
          unit="mm"
          step={1}
          max={2000}
          value={lengthMm}
          onChange={setLengthMm}
        />
      )}
      <NumberField
        label="How much higher is what you measure?"
        hint="Above the reference, towards the lens; below is a minus. Nearer looks larger: from 33 cm, 10 mm reads 3 % too long."
        unit="mm"
        step={1}
        min={-150}
        max={150}
        value={aboveMm}
        onChange={(mm) => setAboveMm(mm ?? 0)}
      />
      {kept && isKept && <p class={css.done}>The photograph is measured by {referenceWords(kept, catalogue)}.</p>}
      {kept && (
        <Button
          look="quiet"
          onPress={() => {
            actions.setScale(photo, null);
            setTaps([]);
            setOutcome({ fit: null, why: null });
          }}
        >
          Take the scale away
        </Button>
      )}
      {draft && !isKept && (
        <div class={css.sticky}>
          <Button
            look="main"
            wide
            onPress={() => {
              actions.setScale(photo, draft);
              stage.said.value = 'The photograph has its scale.';
            }}
          >
            Use this scale
          </Button>
        </div>
      )}
    </div>
  );
}
