import { useMemo, useState } from 'preact/hooks';
import { outlineOf, type Spot } from '../../core/mark-geometry.ts';
import type { Measured } from '../../core/records.ts';
import { pathBeyond, type StainShare, shareBeyond } from '../../pixels/index.ts';
import { refusal } from '../../text/measured.ts';
import { Button } from '../../ui/button.tsx';
import { RangeField } from '../../ui/range-field.tsx';
import { METHOD_VERSION } from '../../workers/pixel-jobs.ts';
import { answersFrom } from './answers-from.ts';
import { type Desk, type Drawn, useWork } from './desk.ts';
import css from './measure.module.css';
import { Busy, Figure, Nudge } from './panel-parts.tsx';
import { savedMarks } from './saved-marks.ts';
import { SpotChoice } from './spots.tsx';
import { TakeInto } from './take-into.tsx';
import { usePixels } from './use-pixels.ts';

type Named = 'clean' | 'stained';
type Step = 'outline' | Named;

/** From where on the way from the clean to the stained spot wood counts as stained. */
const LIMIT = { min: 0.2, max: 0.8, step: 0.05, usual: 0.5 } as const;
/** How far a person might draw the line to either side. */
const LEEWAY = 0.15;

const limitWords = (limit: number): string => {
  const name = limit < 0.4 ? 'faint too' : limit > 0.6 ? 'clear only' : 'half-way';
  return `${Math.round(limit * 100)} %, ${name}`;
};

/** Radius of the ring round a tapped patch, as a share of the width: about the patch that is looked at. */
const PATCH = 12 / 1600;

/** How much of an outlined area looks like a stained spot rather than a clean one. */
export function AreaTool({ desk }: { readonly desk: Desk }) {
  const { stage } = desk;
  const pixels = usePixels(desk);
  const [step, setStep] = useState<Step>('outline');
  const [taps, setTaps] = useState<readonly Spot[]>([]);
  const [named, setNamed] = useState<Partial<Record<Named, Spot>>>({});
  const [found, setFound] = useState<StainShare | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const [limit, setLimit] = useState<number>(LIMIT.usual);
  const shade = useMemo(() => found && pathBeyond(found.cells, limit), [found, limit]);
  const outline = outlineOf(taps);
  const { clean, stained } = named;

  async function look(around: readonly Spot[], at: Partial<Record<Named, Spot>>): Promise<void> {
    const whole = outlineOf(around);
    if (whole.length === 0 || !at.clean || !at.stained) {
      setFound(null);
      return;
    }
    const answer = await pixels.ask('stainShare', { outline: whole, clean: at.clean, stained: at.stained });
    if (!answer) return;
    setFound(answer.ok ? answer : null);
    setWhy(answer.ok ? null : answer.why === 'too-weak' ? 'The two spots look too much alike.' : refusal(answer.why));
    stage.said.value = answer.ok ? `${Math.round(answer.share * 100)} per cent of the area.` : 'Nothing to tell apart.';
  }

  function place(id: Named, spot: Spot): void {
    const next = { ...named, [id]: spot };
    setNamed(next);
    if (id === 'clean' && !next.stained) setStep('stained');
    void look(taps, next);
  }

  const ids = (['clean', 'stained'] as const).filter((id) => named[id]);
  const spots = ids.map((id) => named[id] as Spot);
  useWork(stage, {
    drawn: [
      ...savedMarks(desk),
      ...(shade ? [{ key: 'shade', shape: 'shade' as const, points: [], path: shade }] : []),
      ...(outline.length > 0 ? [{ key: 'outline', shape: 'region' as const, points: outline }] : []),
      ...ids.map(
        (id): Drawn => ({
          ...{ key: id, shape: 'ring', radius: PATCH, look: 'chosen' },
          ...{ points: [named[id] as Spot], label: id },
        }),
      ),
    ],
    handles: [...taps, ...spots],
    onTap(spot) {
      if (step !== 'outline') place(step, spot);
      else {
        setTaps([...taps, spot]);
        void look([...taps, spot], named);
        stage.said.value = `Corner ${taps.length + 1}.`;
      }
    },
    onMove(index, spot, done) {
      const id = ids[index - taps.length];
      if (id) {
        if (done) place(id, spot);
        else setNamed({ ...named, [id]: spot });
        return;
      }
      const next = taps.map((tap, i) => (i === index ? spot : tap));
      setTaps(next);
      if (done) void look(next, named);
    },
    onRemove(index) {
      const id = ids[index - taps.length];
      if (id) {
        const { [id]: _, ...rest } = named;
        setNamed(rest);
        setFound(null);
      } else setTaps(taps.filter((_, i) => i !== index));
    },
  });

  const say: Record<Step, string> = {
    outline: 'Tap two opposite corners of the face, or go round it. Then a clean and a stained spot.',
    clean: 'Tap a spot of clean wood.',
    stained: 'Tap a spot that is plainly stained.',
  };
  return (
    <div class={css.tool}>
      <SpotChoice
        label="What the next tap places"
        names={{ outline: 'Outline', clean: 'Clean spot', stained: 'Stained spot' }}
        placed={{ ...named, ...(outline[0] ? { outline: outline[0] } : {}) }}
        value={step}
        onChange={setStep}
      />
      <p class={css.say}>{say[step]}</p>
      <div class={css.row}>
        <Nudge desk={desk} />
        {taps.length + spots.length > 0 && (
          <Button
            look="quiet"
            onPress={() => {
              setTaps([]);
              setNamed({});
              setFound(null);
              setWhy(null);
              setStep('outline');
            }}
          >
            Start again
          </Button>
        )}
      </div>
      <Busy pixels={pixels} />
      {why && clean && stained && (
        <p class={css.refused} role="alert">
          {why} Tap plainer spots, or judge it by eye.
        </p>
      )}
      {found && (
        <>
          <RangeField
            label="What counts as stained"
            said={limitWords(limit)}
            min={LIMIT.min}
            max={LIMIT.max}
            step={LIMIT.step}
            value={limit}
            onChange={setLimit}
          />
          <p class={css.say}>The shading shows what is counted: slide until it covers what you call stained.</p>
          <Share desk={desk} found={found} limit={limit} outline={outline} taps={[clean, stained]} />
        </>
      )}
    </div>
  );
}

const percent = (share: number): string => `${Math.round(share * 100)}`;

function Share({
  desk,
  found,
  limit,
  outline,
  taps,
}: {
  readonly desk: Desk;
  readonly found: StainShare;
  readonly limit: number;
  readonly outline: readonly Spot[];
  readonly taps: readonly (Spot | undefined)[];
}) {
  const share = shareBeyond(found.cells, limit);
  const least = shareBeyond(found.cells, limit + LEEWAY);
  const most = shareBeyond(found.cells, limit - LEEWAY);
  // The lines to either side bracket what a person might call stained: their spread is taken for four standard errors.
  const sigmaPct = Math.max(1, ((most - least) * 100) / 4);
  const measured: Measured = {
    values: [{ what: 'areaPct', value: share * 100, sigma: sigmaPct, unit: 'pct' }],
    method: 'stainShare',
    version: METHOD_VERSION,
    inputs: {
      outline: outline.map(([x, y]) => [x, y]),
      taps: taps.flatMap((spot) => (spot ? [[spot[0], spot[1]]] : [])),
      limit,
    },
  };
  return (
    <>
      <dl class={css.figures}>
        <Figure
          label="Stained"
          value={`about ${percent(share)} %`}
          by={`of the area you outlined; ${percent(least)} to ${percent(most)} % by what one counts`}
        />
      </dl>
      <TakeInto
        desk={desk}
        answersFor={answersFrom(measured, 'areaPct')}
        mark={{ shape: 'region', points: outline.map(([x, y]) => [x, y]), measured }}
      />
    </>
  );
}
