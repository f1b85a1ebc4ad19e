import css from './block-figure.module.css';
import { layOut } from './mark-shapes.ts';
import type { PlacedMark } from './placing.ts';

/** A numbered mark: a light halo, the shape of its mechanism, the number. */
export function FigureMarkShape({ mark, at, reach }: PlacedMark & { readonly reach: number }) {
  const { d, counter, scale, solid, outline, ringed, body, textSize, textY } = layOut(mark, reach);
  return (
    <g class={css.mark} data-solid={solid} transform={`translate(${at[0]} ${at[1]})`}>
      <g transform={`scale(${scale})`}>
        <path class={css.halo} d={d} />
        {ringed && <path class={css.ring} d={d} transform="scale(1.06)" />}
        <path class={css.shape} d={d} stroke-width={outline} transform={`scale(${body})`} />
        {counter && <path class={css.counter} d={counter} transform={`scale(${body})`} />}
      </g>
      <text y={textY} font-size={textSize}>
        {mark.number}
      </text>
    </g>
  );
}
