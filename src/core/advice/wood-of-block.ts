import { entry } from '../catalogue.ts';
import type { WoodKind } from '../physics/insects.ts';
import type { Sourced, Span } from '../physics/sourced.ts';
import { WOODS, WOODS_OF_MATERIAL, type WoodId } from '../physics/woods.ts';
import type { Assumption } from './outcome.ts';
import type { Subject } from './subject.ts';
import { USUAL_WOODS } from './usual.ts';

type Described = Pick<Subject, 'setting' | 'catalogue'>;

const isWood = (id: string | undefined): id is WoodId => id !== undefined && Object.hasOwn(WOODS, id);

/** Materials named for the block that are wood; none when nobody named one. */
function namedWoods({ setting, catalogue }: Described) {
  if (setting.assumed.includes('material')) return [];
  return setting.materials.flatMap((id) => {
    const material = entry(catalogue.materials, id);
    return material?.group === 'wood' ? [{ id, material }] : [];
  });
}

/**
 * Woods the block may be of, for sums about movement: every wood its materials may stand for, or the usual ones when
 * nobody named a material. Empty where the named wood has no figures (sapele, plywood).
 */
export function woodsOf(block: Described): {
  readonly woods: readonly WoodId[];
  readonly assumed: readonly Assumption[];
} {
  if (block.setting.assumed.includes('material')) {
    return { woods: USUAL_WOODS, assumed: [{ code: 'wood', woods: USUAL_WOODS }] };
  }
  const candidates: Readonly<Record<string, readonly WoodId[]>> = WOODS_OF_MATERIAL;
  const woods = namedWoods(block).flatMap(
    ({ id, material }) => entry(candidates, id) ?? (isWood(material.wood) ? [material.wood] : []),
  );
  return { woods: [...new Set(woods)], assumed: [] };
}

/** What a borer would make of the wood; undefined when that is not known, or not the same for all of it. */
export function woodKindOf(block: Described): WoodKind | undefined {
  const [kind, ...others] = new Set(namedWoods(block).map(({ material }) => material.woodKind));
  return others.length === 0 ? kind : undefined;
}

/** Density the named woods may have, kg/m³, lightest to heaviest; of the usual wood when nobody named one. */
export function densityOf(block: Described): { readonly span: Span; readonly assumed: readonly Assumption[] } | null {
  const isNamed = !block.setting.assumed.includes('material');
  const materials = isNamed
    ? namedWoods(block).map(({ material }) => material)
    : Object.values(block.catalogue.materials).filter(({ wood }) => USUAL_WOODS.some((usual) => usual === wood));
  if (materials.length === 0) return null;
  return {
    span: {
      low: Math.min(...materials.map(({ densityKgM3 }) => densityKgM3[0])),
      high: Math.max(...materials.map(({ densityKgM3 }) => densityKgM3[1])),
    },
    assumed: isNamed ? [] : [{ code: 'wood', woods: USUAL_WOODS }],
  };
}

/** Where a wood's movement comes from, with its name. */
export function sourceOfWood(wood: WoodId): Sourced {
  const { name, perPoint, shrinkage } = WOODS[wood];
  const { source, confidence } = perPoint;
  return { source: `${name}: ${source}${shrinkage ? ` (shrinkage: ${shrinkage.source})` : ''}`, confidence };
}
