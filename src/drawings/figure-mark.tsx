import css from './block-figure.module.css';
import { layOut } from './mark-shapes.ts';
import type { PlacedMark } from './placing.ts';

/** A numbered mark: a light halo, the shape of its mechanism, the number. */
export function FigureMarkShape({ mark, at, reach }: PlacedMark & { readonly reach: number }) {
  const { d, counter, scale, solid, outline, inner, textSize, textY } = layOut(mark, reach);
  return (
    <g class={css.mark} data-solid={solid} transform={`translate(${at[0]} ${at[1]})`}>
      <g transform={`scale(${scale})`}>
        <path class={css.halo} d={d} />
        <path class={css.shape} d={d} stroke-width={outline} />
        {counter && <path class={css.counter} d={counter} />}
        {inner && <path class={css.inner} d={d} transform="scale(0.8)" />}
      </g>
      <text y={textY} font-size={textSize}>
        {mark.number}
      </text>
    </g>
  );
}
