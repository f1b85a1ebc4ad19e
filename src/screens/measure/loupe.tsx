import { type PictureSize, type Spot, toPixel } from '../../core/mark-geometry.ts';
import type { Drawn } from './desk.ts';
import { Lines } from './lines.tsx';
import css from './stage.module.css';

/** Side of the loupe in screen px, and how much larger it shows than the stage. */
const SIDE_PX = 120;
const LARGER = 2.5;

/** What lies under the finger, shown beside it. */
export function Loupe({
  url,
  size,
  at,
  zoom,
  drawn,
}: {
  readonly url: string;
  readonly size: PictureSize;
  readonly at: Spot;
  readonly zoom: number;
  readonly drawn: readonly Drawn[];
}) {
  const [x, y] = toPixel(at, size);
  const unit = 1 / (zoom * LARGER);
  const seen = SIDE_PX * unit;
  const cross = `M${x - seen / 2} ${y}H${x + seen / 2}M${x} ${y - seen / 2}V${y + seen / 2}`;
  return (
    <svg
      class={css.loupe}
      data-right={at[0] < 0.5 || undefined}
      viewBox={`${x - seen / 2} ${y - seen / 2} ${seen} ${seen}`}
      aria-hidden="true"
    >
      <image href={url} width={size.width} height={size.height} preserveAspectRatio="none" />
      {drawn.map((item) => (
        <Lines key={item.key} drawn={item} size={size} unit={unit} />
      ))}
      <path class={css.hair} d={cross} />
    </svg>
  );
}
