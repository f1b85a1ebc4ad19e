import { useState } from 'preact/hooks';
import { lengthPx, type Spot, withTap } from '../../core/mark-geometry.ts';
import type { Measured } from '../../core/records.ts';
import { pixelWork } from '../../parts/pixel-work.ts';
import type { CrackSize } from '../../pixels/index.ts';
import { HAIRLINE_MM, lengthWithDoubt, refusal, shareInWords } from '../../text/measured.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { TickField } from '../../ui/field.tsx';
import { type Crack, METHOD_VERSION } from '../../workers/pixel-jobs.ts';
import { answersFrom } from './answers-from.ts';
import { SuggestionsView, useSuggestions } from './crack-suggestions.tsx';
import { type Desk, type Drawn, useWork } from './desk.ts';
import { CURVE_REACH_MM, FarFromReference, fromReferenceMm, isTooFar, shortOnCurve } from './doubts.tsx';
import css from './measure.module.css';
import { Busy, Figure, Nudge } from './panel-parts.tsx';
import { referenceWords } from './references.ts';
import { savedMarks } from './saved-marks.ts';
import { TakeInto } from './take-into.tsx';
import { usePixels } from './use-pixels.ts';

/** How far, on screen, a finger may miss the crack; and the bounds of that in pixels of the working image. */
const FINGER_PX = 12;
const SNAP_PX = { least: 5, most: 16 } as const;

/** A crack followed between taps, its length and opening. */
export function CrackTool({ desk }: { readonly desk: Desk }) {
  const { facts, stage, size } = desk;
  const pixels = usePixels(desk);
  const [taps, setTaps] = useState<readonly Spot[]>([]);
  const [crack, setCrack] = useState<Crack | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const suggestions = useSuggestions(desk, pixels);

  async function follow(next: readonly Spot[]): Promise<void> {
    setTaps(next);
    if (next.length < 2) {
      setCrack(null);
      // Decoding and the lines round the first tap are ready when the second comes; if it fails, that one says why.
      if (next[0]) pixelWork.ask('prepareCrack', [desk.picture], next[0], { topic: 'ahead' }).catch(() => undefined);
      return;
    }
    // A magnified tap is a careful one.
    const snapPx = Math.min(SNAP_PX.most, Math.max(SNAP_PX.least, FINGER_PX / (stage.view.value?.zoom ?? 1)));
    const answer = await pixels.ask('traceCrack', { taps: next, snapPx, facts });
    if (!answer) return;
    setCrack(answer.ok ? answer : null);
    setWhy(answer.ok ? null : refusal(answer.why));
    stage.said.value = answer.ok ? saidOf(answer, desk) : refusal(answer.why);
  }

  useWork(stage, {
    drawn: [...savedMarks(desk), ...(taps.length > 0 ? crackDrawn(crack, taps) : suggestions.drawn)],
    handles: taps,
    onTap: (spot) => void follow((taps.length === 0 && suggestions.takenBy(spot)) || withTap(taps, spot, size)),
    onMove(index, spot, done) {
      const next = taps.map((tap, i) => (i === index ? spot : tap));
      if (done) void follow(next);
      else setTaps(next);
    },
    onRemove: (index) => void follow(taps.filter((_, i) => i !== index)),
  });

  return (
    <div class={css.tool}>
      <p class={css.say}>
        {taps.length < 2
          ? 'Tap both ends of the crack.'
          : 'Does the line follow the crack? Drag a point, or tap where it went astray.'}
      </p>
      <div class={css.row}>
        <Nudge desk={desk} />
        {taps.length > 0 && (
          <Button look="quiet" onPress={() => void follow([])}>
            Start again
          </Button>
        )}
      </div>
      {taps.length === 0 && <SuggestionsView suggestions={suggestions} />}
      <Busy pixels={pixels} />
      {why && taps.length > 1 && (
        <p class={css.refused} role="alert">
          {why} Put a point between, or mark it by hand with a path.
        </p>
      )}
      {crack && crack.weakLegs.length > 0 && (
        <p class={css.warn} role="note">
          Check the dashed part: hardly a line is seen there. Tap on the crack to lead it.
        </p>
      )}
      {crack && <Size desk={desk} crack={crack} taps={taps} />}
    </div>
  );
}

const saidOf = ({ size, weakLegs }: Crack, desk: Desk): string =>
  [
    'The crack is followed.',
    size?.ok && `${lengthWithDoubt(size.lengthMm, size.sigmaMm, desk.of.settings.units)} long.`,
    weakLegs.length > 0 && 'Check the dashed part.',
  ]
    .filter(Boolean)
    .join(' ');

function crackDrawn(crack: Crack | null, taps: readonly Spot[]): Drawn[] {
  if (!crack) return taps.length > 1 ? [{ key: 'taps', shape: 'polyline', points: taps, look: 'struck' }] : [];
  return crack.legs.map((points, leg) => {
    const isWeak = crack.weakLegs.includes(leg);
    return {
      ...{ key: `leg ${leg}`, shape: 'polyline' as const, points },
      ...(isWeak ? { look: 'unsure' as const, label: 'check this part' } : { look: 'chosen' as const }),
    };
  });
}

function Size({ desk, crack, taps }: { readonly desk: Desk; readonly crack: Crack; readonly taps: readonly Spot[] }) {
  const { catalogue } = useApp();
  const { photo, of } = desk;
  const units = of.settings.units;
  const [isCurved, setIsCurved] = useState(false);
  const { size } = crack;
  if (!size || !photo.scale) return <NoScale desk={desk} crack={crack} taps={taps} />;
  if (!size.ok) return <p class={css.refused}>{refusal(size.why)}</p>;
  const awayMm = fromReferenceMm(desk, crack.path) ?? 0;
  if (isTooFar(desk, crack.path)) return <FarFromReference desk={desk} spots={crack.path} />;
  const curve = isCurved ? shortOnCurve(awayMm) / 2 : 0;
  const sigmaMm = Math.hypot(size.sigmaMm, curve * size.lengthMm);
  const isBeyond = isCurved && awayMm > CURVE_REACH_MM;
  const by = `by ${referenceWords(photo.scale, catalogue)}${photo.scale.featureAboveMm === 0 ? '' : `, ${photo.scale.featureAboveMm} mm above it`}`;
  const curved = (
    <TickField
      label="The face is curved"
      hint="A flat reference on a dome: 20 mm from where it touches, a length down the slope reads up to 5 % short, at 40 mm 17 %."
      value={isCurved}
      onChange={setIsCurved}
    />
  );
  const measured = measuredOf(size, sigmaMm, taps, desk);
  return (
    <>
      {isBeyond ? (
        <>
          <p class={css.refused} role="note">
            Too far round the curve for millimetres. Use two points along the surface as the scale, or a tape.
          </p>
          {curved}
        </>
      ) : (
        <>
          <dl class={css.figures}>
            <Figure label="Length" value={lengthWithDoubt(size.lengthMm, sigmaMm, units)} by={by} />
            <Figure
              label="Mean width"
              value={
                size.widthClass === 'hairline'
                  ? `hairline, under ${HAIRLINE_MM} mm`
                  : lengthWithDoubt(size.meanWidthMm, size.widthSigmaMm, units)
              }
            />
            {size.widthClass !== 'hairline' && (
              <Figure label="Widest" value={lengthWithDoubt(size.maxWidthMm, widestSigma(size), units)} />
            )}
          </dl>
          {curved}
          <TakeInto
            desk={desk}
            answersFor={answersFrom(measured, 'lengthMm')}
            mark={{ shape: 'polyline', points: crack.path.map(([x, y]) => [x, y]), measured }}
          />
        </>
      )}
    </>
  );
}

/** The widest place is one profile of many: its error is about twice that of the mean. Trade estimate. */
const widestSigma = ({ widthSigmaMm }: CrackSize): number => 2 * widthSigmaMm;

function measuredOf(size: CrackSize, sigmaMm: number, taps: readonly Spot[], { photo }: Desk): Measured {
  const widths =
    size.widthClass === 'hairline'
      ? []
      : [
          { what: 'meanWidthMm', value: size.meanWidthMm, sigma: size.widthSigmaMm, unit: 'mm' as const },
          { what: 'widthMm', value: size.maxWidthMm, sigma: widestSigma(size), unit: 'mm' as const },
        ];
  return {
    values: [{ what: 'lengthMm', value: size.lengthMm, sigma: sigmaMm, unit: 'mm' }, ...widths],
    method: 'crackPath',
    version: METHOD_VERSION,
    inputs: {
      taps: taps.map(([x, y]) => [x, y]),
      reference: photo.scale?.reference ?? 'twoPoints',
      featureAboveMm: photo.scale?.featureAboveMm ?? 0,
      hairline: size.widthClass === 'hairline',
    },
  };
}

/** Without a scale nothing is turned into millimetres; a line across the block still says how much of it is cracked. */
function NoScale({ desk, crack }: { readonly desk: Desk; readonly crack: Crack; readonly taps: readonly Spot[] }) {
  const across = desk.marks
    .filter(({ shape }) => shape === 'line')
    .map(({ points }) => lengthPx(points, desk.size))
    .reduce((most, px) => Math.max(most, px), 0);
  return (
    <p class={css.warn} role="note">
      No scale, so no millimetres: set one with <b>Scale</b>.{' '}
      {across > 0
        ? `The crack’s length: ${shareInWords(lengthPx(crack.path, desk.size) / across)} the longest line marked.`
        : 'Or mark a line across the whole block, and the crack is given as a share of it.'}
    </p>
  );
}
