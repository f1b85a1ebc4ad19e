import type { PictureSize } from '../../core/mark-geometry.ts';
import { toPixel } from '../../core/mark-geometry.ts';
import { layOutMark, ring } from '../../drawings/photo-marks.ts';
import type { Drawn } from './desk.ts';
import css from './stage.module.css';

/** One drawn thing: a broad dark line under a narrow pale one, and its number on a disc. */
export function Lines({ drawn, size, unit }: { drawn: Drawn; size: PictureSize; unit: number }) {
  const { shape, points, look = 'plain', label } = drawn;
  if (shape === 'shade') return <path class={css.shade} d={drawn.path} />;
  const first = points[0];
  if (!first) return null;
  const [x, y] = toPixel(first, size);
  const laid =
    shape === 'ring'
      ? {
          d: ring([x, y], (drawn.radius ?? 0) * size.width + 4 * unit),
          badge: [x + 14 * unit, y - 14 * unit] as const,
        }
      : layOutMark(shape, points, size, unit);
  return (
    <g class={css.lines} data-look={look}>
      {laid.d && <path class={css.under} d={laid.d} />}
      {laid.d && <path class={css.over} d={laid.d} />}
      {look === 'struck' && (
        <path
          class={css.over}
          d={`M${x - 7 * unit} ${y - 7 * unit}l${14 * unit} ${14 * unit}m0 ${-14 * unit}l${-14 * unit} ${14 * unit}`}
        />
      )}
      {label && <Badge at={laid.badge} label={label} unit={unit} />}
    </g>
  );
}

function Badge({ at: [x, y], label, unit }: { at: readonly [number, number]; label: string; unit: number }) {
  const width = Math.max(22, 14 + 8 * label.length) * unit;
  return (
    <g class={css.badge}>
      <rect x={x - width / 2} y={y - 11 * unit} width={width} height={22 * unit} rx={11 * unit} />
      <text x={x} y={y + 4.6 * unit} font-size={13 * unit} text-anchor="middle">
        {label}
      </text>
    </g>
  );
}
