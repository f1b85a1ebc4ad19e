import { entry } from '../../core/catalogue.ts';
import { BlockFigure } from '../../drawings/block-figure.tsx';
import { drawingOf } from '../../parts/drawing-of.ts';
import { SourceLine } from '../../parts/source-line.tsx';
import { zoneClassWords } from '../../text/conditions.ts';
import { list, money, opening, percent } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { Section } from '../../ui/page.tsx';
import css from './handbook.module.css';
import { Facts } from './handbook-parts.tsx';

/** A type of block: purpose, parts, what it must have, what it costs new and used. */
export function TypeEntry({ id }: { readonly id: string }) {
  const { catalogue } = useApp();
  const type = entry(catalogue.types, id);
  if (!type) return null;
  const { newPrice, usedShare } = type;
  return (
    <>
      <Section>
        <p class={css.lead}>{type.purpose}</p>
        <BlockFigure
          drawing={drawingOf({ blockType: id, materials: [] }, catalogue)}
          zoneName={(zone) => entry(catalogue.zones, zone)?.term ?? zone}
          label={`Drawing: ${type.term}`}
        />
        <Facts
          rows={[
            ['Parts', type.parts.words],
            ['Undercut', type.undercut && 'yes: it comes out of the hat only in parts'],
            ['Must have', opening(list(type.mustHave))],
            ['What decides', opening(list(type.criticalZones.map((zone) => zoneClassWords[zone])))],
            [
              'Measures',
              type.measures.map((measure) => entry(catalogue.measures, measure)?.short ?? measure).join('; '),
            ],
          ]}
        />
        {type.notes && <p class={css.notes}>{type.notes}</p>}
        <SourceLine source={type.source} />
      </Section>
      <Section title="What it costs">
        <Facts
          rows={[
            ['New, made to order', `${money(newPrice.low, 'GBP')} to ${money(newPrice.high, 'GBP')}`],
            ['Used, of that', `${percent(usedShare.low)} to ${percent(usedShare.high)}, by its state`],
          ]}
        />
        <SourceLine source={newPrice.source} />
        <p class={css.hint}>Your own figures on the block’s page go before these.</p>
      </Section>
    </>
  );
}
