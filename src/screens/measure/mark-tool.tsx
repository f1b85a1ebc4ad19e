import { useState } from 'preact/hooks';
import { awayFromLine, outlineOf, type Spot } from '../../core/mark-geometry.ts';
import type { MarkShape, PhotoMark } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { OtherWords } from '../../parts/other-words.tsx';
import { useNames } from '../../parts/use-names.ts';
import { lengthWithDoubt, shareInWords } from '../../text/measured.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { SelectField, TextField } from '../../ui/field.tsx';
import { type Desk, type Drawn, straightLength, useWork } from './desk.ts';
import { FarFromReference } from './doubts.tsx';
import css from './measure.module.css';
import { Figure, Nudge } from './panel-parts.tsx';
import { referenceWords } from './references.ts';
import { labelOf, savedMarks } from './saved-marks.ts';

interface ShapeWords {
  readonly name: string;
  readonly say: string;
  /** Points after which it is whole; null until the person says so. */
  readonly whole: number | null;
  readonly least: number;
}

const SHAPES: Readonly<Record<MarkShape, ShapeWords>> = {
  point: { name: 'Point', say: 'Tap the place.', whole: 1, least: 1 },
  line: { name: 'Line', say: 'Tap both ends.', whole: 2, least: 2 },
  polyline: { name: 'Path', say: 'Tap along it, then finish.', whole: null, least: 2 },
  ellipse: { name: 'Oval', say: 'Tap two opposite corners of the box round it.', whole: 2, least: 2 },
  rectangle: { name: 'Box', say: 'Tap two opposite corners.', whole: 2, least: 2 },
  region: { name: 'Area', say: 'Tap round it, then finish.', whole: null, least: 3 },
  text: { name: 'Words', say: 'Tap where the words stand, then write them.', whole: 1, least: 1 },
};

/** How near a tap must come to a mark to choose it, in screen px. */
const CHOOSE_PX = 18;

const near = (mark: PhotoMark, spot: Spot, desk: Desk): number => {
  const outline = mark.shape === 'rectangle' || mark.shape === 'ellipse' ? outlineOf(mark.points) : mark.points;
  const first = outline[0];
  const closed = first && ['rectangle', 'ellipse', 'region'].includes(mark.shape) ? [...outline, first] : outline;
  return awayFromLine(spot, closed, desk.size);
};

/** Points, lines, areas and words over the photograph, numbered like their finding. */
export function MarkTool({ desk }: { readonly desk: Desk }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const { of, photo, stage, marks } = desk;
  const { findingName } = useNames(of);
  const [shape, setShape] = useState<MarkShape>('line');
  const [taps, setTaps] = useState<readonly Spot[]>([]);
  const [chosenId, setChosenId] = useState<string | null>(null);
  const [findingId, setFindingId] = useState(photo.findingId);
  /** Points of the chosen mark while one is dragged, not yet stored. */
  const [moving, setMoving] = useState<readonly Spot[] | null>(null);
  const chosen = marks.find(({ id }) => id === chosenId);
  const { say, whole, least } = SHAPES[shape];
  // A traced or counted mark stands for what was measured: it is moved by measuring again.
  const canMove = chosen && !chosen.measured;
  const points = moving ?? chosen?.points ?? [];

  function finish(all: readonly Spot[]): void {
    const id = actions.addPhotoMark(photo, { shape, findingId, points: all.map(([x, y]) => [x, y]) });
    setTaps([]);
    setChosenId(id);
    stage.said.value = `${SHAPES[shape].name} placed.`;
  }

  function tap(spot: Spot): void {
    const hit = taps.length === 0 ? nearestMark(spot) : undefined;
    if (hit) {
      setChosenId(hit.id);
      stage.said.value = `Chosen: ${SHAPES[hit.shape].name} ${labelOf(desk, hit, of.settings.units)}`;
      return;
    }
    setChosenId(null);
    const next = [...taps, spot];
    if (whole === next.length) finish(next);
    else {
      setTaps(next);
      stage.said.value = `Point ${next.length}.`;
    }
  }

  function nearestMark(spot: Spot): PhotoMark | undefined {
    const zoom = stage.view.value?.zoom ?? 1;
    return marks
      .map((mark) => ({ mark, px: near(mark, spot, desk) * zoom }))
      .filter(({ px }) => px < CHOOSE_PX)
      .sort((a, b) => a.px - b.px)[0]?.mark;
  }

  function store(next: readonly Spot[]): void {
    if (!chosen) return;
    setMoving(null);
    actions.setPhotoMark(chosen, { points: next.map(([x, y]) => [x, y]) });
  }

  const own: Drawn[] = [
    ...(taps.length > 1
      ? [{ key: 'taps', shape: shape === 'region' ? ('polyline' as const) : shape, points: taps }]
      : []),
    ...(chosen
      ? [
          {
            ...{ key: 'chosen', shape: chosen.shape, look: 'chosen' as const },
            ...{
              points,
              label: labelOf(desk, { ...chosen, points: points.map(([x, y]) => [x, y]) }, of.settings.units),
            },
          },
        ]
      : []),
  ];
  useWork(stage, {
    drawn: [...savedMarks(desk, chosenId), ...own],
    handles: taps.length > 0 ? taps : canMove ? points : [],
    onTap: tap,
    onMove(index, spot, done) {
      if (taps.length > 0) {
        setTaps(taps.map((old, i) => (i === index ? spot : old)));
        return;
      }
      const next = points.map((old, i) => (i === index ? spot : old));
      if (done) store(next);
      else setMoving(next);
    },
    onRemove(index) {
      if (taps.length > 0) setTaps(taps.filter((_, i) => i !== index));
      else if (chosen && points.length > SHAPES[chosen.shape].least) store(points.filter((_, i) => i !== index));
      else stage.said.value = 'It needs the points it has. Remove the whole mark instead.';
    },
  });

  const isOn = (id: MarkShape): boolean => shape === id;
  return (
    <div class={css.tool}>
      <fieldset class={css.row} aria-label="Shape of a new mark">
        {(Object.keys(SHAPES) as MarkShape[]).map((id) => (
          <Button
            key={id}
            pressed={isOn(id)}
            onPress={() => {
              setShape(id);
              setTaps([]);
              setChosenId(null);
            }}
          >
            {SHAPES[id].name}
          </Button>
        ))}
      </fieldset>
      <p class={css.say}>{chosen ? 'Tap elsewhere for a new one.' : `${say} A tap on a mark chooses it.`}</p>
      {whole === null && taps.length >= least && (
        <Button look="main" wide onPress={() => finish(taps)}>
          Finish
        </Button>
      )}
      {taps.length > 0 && (
        <Button look="quiet" onPress={() => setTaps(taps.slice(0, -1))}>
          Take the last point back
        </Button>
      )}
      <Nudge desk={desk} />
      {chosen && <LineLength desk={desk} mark={chosen} points={points} />}
      <SelectField
        label="Belongs to"
        value={(chosen ? chosen.findingId : findingId) ?? ''}
        options={[{ id: '', label: 'No finding' }, ...of.findings.map(({ id }) => ({ id, label: findingName(id) }))]}
        onChange={(id) => (chosen ? actions.setPhotoMark(chosen, { findingId: id || null }) : setFindingId(id || null))}
      />
      {chosen && (
        <>
          <TextField
            label="Words beside it"
            value={chosen.text}
            onChange={(text) => actions.setPhotoMark(chosen, { text })}
          />
          <OtherWords record={chosen} path="text" />
          <Button
            look="quiet"
            onPress={() => {
              actions.removePhotoMark(chosen);
              setChosenId(null);
            }}
          >
            Remove this mark
          </Button>
        </>
      )}
      {photo.scale === null && <p class={css.small}>Without a scale a line has no millimetres.</p>}
      {photo.scale && <p class={css.small}>Millimetres by {referenceWords(photo.scale, catalogue)}.</p>}
    </div>
  );
}

/** Of a line: millimetres by the scale, or its share of the picture when there is none. */
function LineLength({
  desk,
  mark,
  points,
}: {
  readonly desk: Desk;
  readonly mark: PhotoMark;
  readonly points: readonly Spot[];
}) {
  const { catalogue } = useApp();
  const [a, b] = points;
  if (mark.shape !== 'line' || mark.measured || !a || !b) return null;
  const length = straightLength(desk, a, b);
  if (!length || !desk.photo.scale) {
    const longest = desk.marks
      .filter(({ shape, id }) => shape === 'line' && id !== mark.id)
      .map(({ points: [from, to] }) => (from && to ? lengthOf(desk, from, to) : 0))
      .reduce((most, px) => Math.max(most, px), 0);
    return longest > 0 ? (
      <p class={css.small}>Its length: {shareInWords(lengthOf(desk, a, b) / longest)} the longest line marked.</p>
    ) : null;
  }
  return (
    <>
      <dl class={css.figures}>
        <Figure
          label="Straight length"
          value={lengthWithDoubt(length.mm, length.sigmaMm, desk.of.settings.units)}
          by={`by ${referenceWords(desk.photo.scale, catalogue)}`}
        />
      </dl>
      <FarFromReference desk={desk} spots={[a, b]} />
    </>
  );
}

const lengthOf = ({ size }: Desk, a: Spot, b: Spot): number =>
  Math.hypot((a[0] - b[0]) * size.width, (a[1] - b[1]) * size.height);
