import {
  type BlockType,
  type Catalogue,
  type DamageKind,
  entry,
  type ShapeValue,
  type TypeGroup,
  type ZoneClass,
} from './catalogue.ts';
import type { HatBlock } from './records.ts';

/** What the rules need to know of a block, with what was not said filled by the commonest case and named as assumed. */
export interface Setting {
  readonly type: BlockType | undefined;
  readonly group: TypeGroup;
  readonly materials: readonly string[];
  readonly parts: 'one' | 'several';
  readonly shapeValue: ShapeValue;
  readonly assumed: readonly ('type' | 'material' | 'shapeValue')[];
}

type Described = Pick<HatBlock, 'blockType' | 'materials' | 'partsFound' | 'partsExpected' | 'shapeValue'>;

/** Type, materials and parts of a block as the rules see them. An unnamed block counts as a crown, an unnamed wood as any wood. */
export function settingOf(block: Described, catalogue: Catalogue): Setting {
  const type = entry(catalogue.types, block.blockType);
  const known = block.materials.filter((id) => entry(catalogue.materials, id));
  const woods = Object.keys(catalogue.materials).filter((id) => catalogue.materials[id]?.group === 'wood');
  const counted = Math.max(block.partsExpected ?? 0, block.partsFound ?? 0);
  const several = counted > 0 ? counted > 1 : (type?.parts.several ?? false);
  return {
    type,
    group: type?.group ?? 'crown',
    materials: known.length > 0 ? known : woods,
    parts: several ? 'several' : 'one',
    shapeValue: block.shapeValue ?? 'common',
    assumed: [
      ...(type ? [] : (['type'] as const)),
      ...(known.length > 0 ? [] : (['material'] as const)),
      ...(block.shapeValue ? [] : (['shapeValue'] as const)),
    ],
  };
}

/** Zones of the block: its type's, or all when the type is not known. */
export function zonesOf(setting: Setting, catalogue: Catalogue): readonly string[] {
  return setting.type?.zones ?? Object.keys(catalogue.zones);
}

/** Class of a zone; one the catalogue does not know counts as the whole object. */
export const zoneClassOf = (zone: string, catalogue: Catalogue): ZoneClass =>
  entry(catalogue.zones, zone)?.zoneClass ?? 'whole';

/** Whether a damage kind can occur on this block at all: by material, parts, group and zones. */
export function applies(kind: DamageKind, setting: Setting, catalogue: Catalogue): boolean {
  const { materials, zoneClasses, onlySeveralParts, groups } = kind.appliesTo;
  if (kind.retired) return false;
  if (materials !== 'all' && !materials.some((id) => setting.materials.includes(id))) return false;
  if (onlySeveralParts && setting.parts === 'one') return false;
  if (groups && !groups.includes(setting.group)) return false;
  if (zoneClasses.includes('whole')) return true;
  return zonesOf(setting, catalogue).some((zone) => zoneClasses.includes(zoneClassOf(zone, catalogue)));
}

/** Zones of this block where a kind may be recorded. */
export const zonesFor = (kind: DamageKind, setting: Setting, catalogue: Catalogue): readonly string[] =>
  zonesOf(setting, catalogue).filter((zone) => kind.appliesTo.zoneClasses.includes(zoneClassOf(zone, catalogue)));

/** Ids of the damage kinds that apply to this block, in catalogue order. */
export const applicableKinds = (setting: Setting, catalogue: Catalogue): readonly string[] =>
  Object.keys(catalogue.damage).filter((id) => {
    const kind = catalogue.damage[id];
    return kind !== undefined && applies(kind, setting, catalogue);
  });
