import css from './block-figure.module.css';
import { FigureMarkShape } from './figure-mark.tsx';
import { type PlacedMark, zoneKey } from './placing.ts';
import type { DrawingView, DrawnZone, DrawnZoneId } from './shape.ts';

interface Picking {
  /** Key of the chosen zone, and of the one the Tab key stops at. */
  readonly chosen: string | undefined;
  readonly stop: string | undefined;
  readonly canPick: (zone: DrawnZoneId, key: string) => boolean;
  /** Whether this view is where the zone is read out. */
  readonly isHome: (key: string) => boolean;
  readonly name: (zone: DrawnZoneId, part: number | undefined) => string;
}

export interface FigureViewProps {
  readonly view: DrawingView;
  readonly placed: readonly PlacedMark[];
  readonly reach: number;
  readonly thumbnail: boolean;
  /** Marks that found no place, counted in the corner. */
  readonly left: number;
  readonly states: Readonly<Record<string, string>>;
  readonly picker: Picking | undefined;
}

/** Not for screen readers: what is drawn here is said elsewhere. */
const unread = { 'aria-hidden': 'true' } as const;

/**
 * A grip makes a zone 44 units broad where nothing else is. On top of its neighbours, which need their own room, it only
 * makes it 24: the least that can be hit with some care.
 */
const gripOnTop = (grip: number): number => Math.max(0, grip - 20);

function PickZone({ zone, picker, state }: { zone: DrawnZone; picker: Picking; state: string | undefined }) {
  const key = zoneKey(zone);
  const checked = key === picker.chosen;
  const shape = (
    <>
      <path class={css.area} d={zone.d} />
      {gripOnTop(zone.grip) > 0 && <path class={css.grip} d={zone.d} stroke-width={gripOnTop(zone.grip)} />}
    </>
  );
  if (!picker.isHome(key)) {
    return (
      <g class={css.zone} data-zone={key} data-checked={checked} data-state={state} {...unread}>
        {shape}
      </g>
    );
  }
  return (
    // biome-ignore lint/a11y/useSemanticElements: a shape of a drawing cannot be an input element
    <g
      class={css.zone}
      data-zone={key}
      data-checked={checked}
      data-state={state}
      role="radio"
      aria-checked={checked}
      aria-label={picker.name(zone.zone, zone.part)}
      tabindex={key === picker.stop ? 0 : -1}
    >
      {shape}
    </g>
  );
}

/** One view: the pen drawing, over it the zones of the picker, over those the marks. */
export function FigureView({ view, placed, reach, thumbnail, left, states, picker }: FigureViewProps) {
  const [width, height] = view.viewBox;
  const open = picker ? view.zones.filter((zone) => picker.canPick(zone.zone, zoneKey(zone))) : [];
  const closed = picker ? view.zones.filter((zone) => zone.zone !== 'whole' && !open.includes(zone)) : [];
  const tag = picker || placed.length > 0 ? view.zones.find(({ zone }) => zone === 'whole') : undefined;
  // A view's zones are only asked for when somebody needs them: working them out takes longer than drawing the block.
  const numbered = view.numbered ? view.zones : [];
  const ticked = Object.keys(states).length > 0 ? view.zones : [];
  const showsTag = tag && (open.includes(tag) || placed.some(({ mark }) => mark.zone === 'whole'));
  return (
    <div class={css.view}>
      <svg class={css.drawing} viewBox={`0 0 ${width} ${height}`} role="none" focusable="false" fill-rule="evenodd">
        {open.map(
          (zone) =>
            zone.grip > 0 && (
              <path
                key={zoneKey(zone)}
                class={css.grip}
                data-zone={zoneKey(zone)}
                d={zone.d}
                stroke-width={zone.grip}
              />
            ),
        )}
        <g class={css.pen} {...unread}>
          {view.outline.map(({ d, weight, fill }, index) => (
            <path key={String(index)} d={d} data-weight={weight} data-fill={fill} />
          ))}
          {showsTag && <path d={tag.d} data-weight="detail" data-fill="paper" />}
          {view.lettering
            .filter(({ role }) => !thumbnail || role !== 'front')
            .map(({ at, text }) => (
              <text key={text} x={at[0]} y={at[1] + 4} font-size={picker ? 11.5 : 20}>
                {text}
              </text>
            ))}
          {numbered.map(
            (zone) =>
              zone.part !== undefined && (
                <text key={zoneKey(zone)} font-size="17" x={zone.label[0]} y={zone.label[1] + 6}>
                  {zone.part}
                </text>
              ),
          )}
          {closed.map((zone) => (
            <path key={zoneKey(zone)} class={css.closed} d={zone.d} />
          ))}
        </g>
        {picker &&
          open.map((zone) => (
            <PickZone key={zoneKey(zone)} zone={zone} picker={picker} state={states[zoneKey(zone)]} />
          ))}
        <g class={css.marks} {...unread}>
          {showsTag && open.includes(tag) && placed.every(({ mark }) => mark.zone !== 'whole') && (
            <text x={tag.label[0]} y={tag.label[1] + 4} font-size="11.5">
              whole
            </text>
          )}
          {ticked.map(
            (zone) =>
              states[zoneKey(zone)] === 'clear' && (
                <path
                  key={zoneKey(zone)}
                  class={css.tick}
                  d="M-5 0L-1.5 4L5 -5"
                  transform={`translate(${zone.label[0]} ${zone.label[1]})`}
                />
              ),
          )}
          {placed.map((each) => (
            <FigureMarkShape key={String(each.mark.number)} {...each} reach={reach} />
          ))}
          {left > 0 && (
            <text class={css.left} x={width - 8} y={reach * 1.6} font-size={reach * 1.4}>
              +{left}
            </text>
          )}
        </g>
      </svg>
      {!thumbnail && (
        <span class={css.title} aria-hidden="true">
          {view.title}
        </span>
      )}
    </div>
  );
}
