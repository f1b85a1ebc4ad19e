import type { TargetedKeyboardEvent, TargetedMouseEvent } from 'preact';
import { useRef, useState } from 'preact/hooks';
import css from './block-figure.module.css';
import { FigureView } from './figure-view.tsx';
import { type FigureMark, homesOf, placeMarks, viewsToShow, zoneKey } from './placing.ts';
import { reachAt } from './reach.ts';
import type { BlockDrawing, DrawnZoneId, ViewId } from './shape.ts';

/** What is already known of a zone: `clear` looked at and sound, `found` has findings, `off` cannot be picked. */
export type ZoneState = 'clear' | 'found' | 'off';

export interface BlockFigureProps {
  readonly drawing: BlockDrawing;
  /** One view only; all of them without it. */
  readonly view?: ViewId;
  readonly zoneName: (zone: DrawnZoneId) => string;
  readonly marks?: readonly FigureMark[];
  /** By `zoneKey`. */
  readonly zoneStates?: Readonly<Record<string, ZoneState>>;
  /** The zones that may be picked; all of them without it. */
  readonly allowed?: readonly DrawnZoneId[];
  readonly selected?: { readonly zone: string; readonly part?: number | null } | null;
  /** Makes the drawing a picker. */
  readonly onPick?: (picked: { zone: DrawnZoneId; part?: number }) => void;
  /** What the drawing is, for those who do not see it. Without it, a drawing that is no picker is decoration. */
  readonly label?: string;
  /** For about 160 px: heavier lines, larger marks, no small words. */
  readonly thumbnail?: boolean;
}

/** Width of a view of a map, CSS px: two stand in a row on a small phone. */
export const MAP_PX = 170;

const steps: Record<string, number> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/**
 * The drawing of a block: picker of a zone, map of the damage, picture in a list. As a picker it is a radio group: the
 * arrow keys move, Enter and Space choose. A zone that several views show is one radio, in the view where it is largest;
 * in the others it can be tapped and shows the same state, but is not read out twice.
 */
export function BlockFigure({
  drawing,
  view,
  zoneName,
  marks = [],
  zoneStates = {},
  allowed,
  selected,
  onPick,
  label,
  thumbnail = false,
}: BlockFigureProps) {
  const root = useRef<HTMLDivElement>(null);
  const [visited, setVisited] = useState<string | null>(null);
  const views = viewsToShow(drawing, view);
  // As wide as a view comes out on a small phone, where a picker has the width to itself.
  const width = thumbnail ? 160 : onPick ? 320 : MAP_PX;
  const reach = reachAt(width);
  const { placed, left } = marks.length > 0 ? placeMarks(views, marks, reach) : { placed: [], left: [] };
  const homes = onPick ? homesOf(views) : new Map();
  const canPick = (zone: DrawnZoneId, key: string): boolean =>
    onPick !== undefined && zoneStates[key] !== 'off' && (allowed === undefined || allowed.includes(zone));

  const chosen = selected
    ? zoneKey({
        zone: selected.zone as DrawnZoneId,
        ...(typeof selected.part === 'number' &&
          homes.has(`${selected.zone}:${selected.part}`) && { part: selected.part }),
      })
    : undefined;
  const keys = views.flatMap(({ id, zones }) =>
    zones.filter((zone) => canPick(zone.zone, zoneKey(zone)) && homes.get(zoneKey(zone))?.view.id === id).map(zoneKey),
  );
  // One stop for the Tab key: where the arrows were last, else the choice, else the first.
  const stop = [visited, chosen].find((key) => key != null && keys.includes(key)) ?? keys[0];

  const pick = (key: string): void => {
    const home = homes.get(key);
    if (!home || !canPick(home.zone.zone, key)) return;
    onPick?.({ zone: home.zone.zone, ...(home.zone.part !== undefined && { part: home.zone.part }) });
  };
  const keyOf = (target: EventTarget | null): string | undefined =>
    (target as Element | null)?.closest?.('[data-zone]')?.getAttribute('data-zone') ?? undefined;
  const focusOn = (key: string): void => {
    setVisited(key);
    for (const radio of root.current?.querySelectorAll('[role="radio"]') ?? []) {
      if (radio.getAttribute('data-zone') === key) (radio as SVGElement).focus();
    }
  };

  const onClick = (event: TargetedMouseEvent<HTMLDivElement>): void => {
    const key = keyOf(event.target);
    if (key === undefined) return;
    focusOn(key);
    pick(key);
  };
  const onKeyDown = (event: TargetedKeyboardEvent<HTMLDivElement>): void => {
    const key = keyOf(event.target);
    if (key === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    const step = steps[event.key];
    const at = keys.indexOf(key);
    if (step !== undefined) focusOn(keys[(at + step + keys.length) % keys.length] as string);
    else if (event.key === 'Home') focusOn(keys[0] as string);
    else if (event.key === 'End') focusOn(keys[keys.length - 1] as string);
    else if (event.key === 'Enter' || event.key === ' ') pick(key);
    else return;
    event.preventDefault();
  };

  const figure = views.map((each) => (
    <FigureView
      key={each.id}
      view={each}
      placed={placed.filter((mark) => mark.view === each.id)}
      reach={reach}
      thumbnail={thumbnail}
      left={each === views[0] ? left.length : 0}
      states={zoneStates}
      picker={
        onPick
          ? {
              chosen,
              stop,
              canPick,
              isHome: (key) => homes.get(key)?.view === each,
              name: (zone, part) => (part === undefined ? zoneName(zone) : `${zoneName(zone)}, part ${part}`),
            }
          : undefined
      }
    />
  ));
  const size = thumbnail ? 'thumbnail' : 'full';
  if (onPick) {
    return (
      <div
        ref={root}
        class={css.figure}
        data-size={size}
        role="radiogroup"
        aria-label={label}
        onClick={onClick}
        onKeyDown={onKeyDown}
      >
        {figure}
      </div>
    );
  }
  return label === undefined ? (
    <div class={css.figure} data-size={size} aria-hidden="true">
      {figure}
    </div>
  ) : (
    <div class={css.figure} data-size={size} role="img" aria-label={label}>
      {figure}
    </div>
  );
}
