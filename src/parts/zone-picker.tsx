import { BlockFigure } from '../drawings/block-figure.tsx';
import type { DrawnZoneId } from '../drawings/shape.ts';
import { useApp } from '../ui/app.ts';
import { ChoiceField, SelectField } from '../ui/field.tsx';
import { drawingOf } from './drawing-of.ts';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';

/** Where on the block: tap the drawing, or pick from the list what the drawing does not show. */
export function ZonePicker({
  of,
  zones,
  zone,
  part,
  onPick,
}: {
  readonly of: BlockCase;
  readonly zones: readonly string[];
  readonly zone: string;
  readonly part: number | null;
  readonly onPick: (zone: string, part: number | null) => void;
}) {
  const { catalogue } = useApp();
  const { zoneTerm } = useNames(of);
  const drawing = drawingOf(of.block, catalogue);
  const parts = Math.max(
    of.block.partsExpected ?? 0,
    of.block.partsFound ?? 0,
    of.assessment.setting.type?.parts.usual ?? 1,
  );
  return (
    <>
      <BlockFigure
        drawing={drawing}
        allowed={zones as readonly DrawnZoneId[]}
        selected={{ zone, part }}
        zoneName={zoneTerm}
        onPick={(picked) =>
          onPick(picked.zone, picked.part ?? (of.assessment.setting.parts === 'several' ? part : null))
        }
        label="Where on the block"
      />
      <SelectField
        label="Where"
        value={zone}
        options={[...new Set([zone, ...zones])].map((id) => ({ id, label: zoneTerm(id) }))}
        onChange={(picked) => onPick(picked, part)}
      />
      {of.assessment.setting.parts === 'several' && (
        <ChoiceField
          label="Which part"
          none
          value={part === null ? null : String(part)}
          options={Array.from({ length: Math.min(parts, 12) }, (_, index) => ({
            id: String(index + 1),
            label: String(index + 1),
          }))}
          onChange={(picked) => onPick(zone, picked === null ? null : Number(picked))}
        />
      )}
    </>
  );
}
