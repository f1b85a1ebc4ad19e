import type { ReportDocument, ReportPair, ReportPart } from '../../core/report.ts';
import { BlockFigure, MAP_PX } from '../../drawings/block-figure.tsx';
import { figureShapes, keyShapes } from '../../drawings/figure-shapes.ts';
import { drawings } from '../../drawings/index.ts';
import { reportMarks } from '../../drawings/report-marks.ts';
import type { BlockDrawing } from '../../drawings/shape.ts';
import { AfterLayer, AlignedFrame, BeforeLayer } from '../../parts/aligned-frame.tsx';
import { StoredPicture } from '../../parts/stored-picture.tsx';
import { mapCaption } from '../../text/map-caption.ts';
import { PhotoOverlay } from './photo-overlay.tsx';
import css from './report.module.css';

/** The report as it will be written, on screen: the same tree the file is made from. */
export function ReportView({ report }: { readonly report: ReportDocument }) {
  return (
    <article class={css.report} aria-label="Preview">
      <p class={css.title}>{report.title}</p>
      <p class={css.small}>{report.subtitle}</p>
      {report.parts.map((part, index) => (
        // The parts of a document have no identity but their place.
        <Part key={index} part={part} />
      ))}
    </article>
  );
}

function Part({ part }: { readonly part: ReportPart }) {
  switch (part.kind) {
    case 'heading':
      return part.level === 2 ? <h2>{part.text}</h2> : <h3>{part.text}</h3>;
    case 'paragraph':
      return <p class={part.tone && css[part.tone]}>{part.text}</p>;
    case 'facts':
      return (
        <dl>
          {part.rows.map(([term, value]) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      );
    case 'list': {
      const items = part.items.map((text) => <li key={text}>{text}</li>);
      const look = part.tone && css[part.tone];
      return part.ordered ? <ol class={look}>{items}</ol> : <ul class={look}>{items}</ul>;
    }
    case 'table':
      return <Table part={part} />;
    case 'damageMap': {
      const known: Readonly<Record<string, BlockDrawing>> = drawings;
      const drawing = known[part.drawing] ?? drawings.domeCrown;
      const marks = reportMarks(part.marks);
      return (
        <figure>
          <BlockFigure drawing={drawing} marks={marks} zoneName={(id) => id} label={part.alt} />
          <figcaption>
            {mapCaption(part.caption, figureShapes(drawing, marks, { width: MAP_PX }).left)}
            <ul class={css.key}>
              {part.key.map(({ mechanism, term }) => (
                <li key={mechanism}>
                  <svg viewBox="-1.4 -1.4 2.8 2.8" aria-hidden="true" stroke-linejoin="round">
                    {keyShapes(mechanism).map(
                      (shape, index) =>
                        shape.kind === 'path' && (
                          <path
                            key={String(index)}
                            d={shape.d}
                            fill={shape.fill ?? 'none'}
                            stroke={shape.line?.colour ?? 'none'}
                            stroke-width={shape.line?.width}
                          />
                        ),
                    )}
                  </svg>
                  {term}
                </li>
              ))}
            </ul>
          </figcaption>
        </figure>
      );
    }
    case 'photographs':
      return (
        <div class={css.photographs}>
          {part.items.map((item) => (
            <figure key={item.sha256}>
              <div class={css.shot}>
                <StoredPicture sha256={item.sha256} alt={item.alt} />
                <PhotoOverlay photo={item} />
              </div>
              <figcaption>
                {item.caption}
                {item.notes.map((note) => (
                  <span key={note} class={css.note}>
                    {note}
                  </span>
                ))}
                <span class={css.hash}>SHA-256 {item.sha256}</span>
              </figcaption>
            </figure>
          ))}
        </div>
      );
    case 'pair':
      return <Pair part={part} />;
  }
}

/** Before and after beside each other; the browser lays the one over the other as the file will have it. */
function Pair({ part: { before, after, h, crop, caption } }: { readonly part: ReportPair }) {
  const framed = { width: before.width * crop.width, height: before.height * crop.height };
  return (
    <figure data-part="pair">
      <div class={css.pair}>
        <div>
          <div class={css.shot}>
            <AlignedFrame before={before} crop={crop}>
              <BeforeLayer before={before} crop={crop} alt={before.alt} />
            </AlignedFrame>
            <PhotoOverlay photo={{ ...before, ...framed }} />
          </div>
          <p class={css.small}>{before.caption}</p>
        </div>
        <div>
          <div class={css.shot}>
            <AlignedFrame before={h ? before : after} crop={crop}>
              {h ? (
                <AfterLayer after={after} crop={crop} h={h} alt={after.alt} />
              ) : (
                <BeforeLayer before={after} crop={crop} alt={after.alt} />
              )}
            </AlignedFrame>
            <PhotoOverlay photo={h ? { ...after, ...framed } : after} />
          </div>
          <p class={css.small}>{after.caption}</p>
        </div>
      </div>
      <figcaption>{caption}</figcaption>
    </figure>
  );
}

function Table({ part }: { readonly part: ReportPart & { kind: 'table' } }) {
  const line = (row: readonly string[]) => (
    <tr key={row.join('|')}>
      {row.map((text, column) =>
        column === 0 ? (
          <th key={part.head[column]} scope="row">
            {text}
          </th>
        ) : (
          <td
            key={part.head[column] ?? text}
            data-n={part.numeric.includes(column) || undefined}
            data-head={part.head[column]}
          >
            {text}
          </td>
        ),
      )}
    </tr>
  );
  return (
    <table>
      <caption>{part.caption}</caption>
      <thead>
        <tr>
          {part.head.map((text, column) => (
            <th key={text} scope="col" data-n={part.numeric.includes(column) || undefined}>
              {text}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>{part.rows.map(line)}</tbody>
      {part.foot && <tfoot>{part.foot.map(line)}</tfoot>}
    </table>
  );
}
