import css from './measure.module.css';

const BIN_MM = 0.5;
const HIGH = 56;
const BAR = 22;

/** How many holes of which size, in half millimetres. The table says the same to a screen reader. */
export function Histogram({ acrossMm }: { readonly acrossMm: readonly number[] }) {
  const bin = (mm: number): number => Math.floor(mm / BIN_MM);
  const first = bin(Math.min(...acrossMm));
  const last = bin(Math.max(...acrossMm));
  const bars = Array.from({ length: last - first + 1 }, (_, i) => ({
    from: (first + i) * BIN_MM,
    count: acrossMm.filter((mm) => bin(mm) === first + i).length,
  }));
  const most = Math.max(...bars.map(({ count }) => count));
  const said = bars
    .filter(({ count }) => count > 0)
    .map(({ from, count }) => `${count} from ${from} to ${from + BIN_MM} mm`)
    .join(', ');
  const width = bars.length * BAR + 30;
  return (
    <svg class={css.histogram} viewBox={`0 0 ${width} ${HIGH + 32}`} role="img" aria-label={`Sizes: ${said}`}>
      {bars.map(({ from, count }, i) => {
        const high = (count / most) * HIGH;
        return (
          <g key={from}>
            <rect x={i * BAR + 12} y={14 + HIGH - high} width={BAR - 4} height={high} />
            {count > 0 && (
              <text x={i * BAR + 12 + (BAR - 4) / 2} y={10 + HIGH - high} text-anchor="middle">
                {count}
              </text>
            )}
            {(i % 2 === 0 || bars.length < 6) && (
              <text x={i * BAR + 10} y={HIGH + 28} text-anchor="middle">
                {from}
              </text>
            )}
          </g>
        );
      })}
      <text x={bars.length * BAR + 12} y={HIGH + 28}>
        mm
      </text>
    </svg>
  );
}
