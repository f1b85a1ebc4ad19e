import type { CautionId } from './cautions.ts';
import {
  type Closing,
  closingForceN,
  closingPoint,
  closingStrainPct,
  FORCE_DOUBT_FACTOR,
  rimStressMpa,
} from './crack-geometry.ts';
import { equilibriumMoisturePct } from './equilibrium-moisture.ts';
import { HUMIDIFYING } from './humidifying.ts';
import { requirePositive } from './range.ts';
import type { Span } from './sourced.ts';
import { figureFor, STIFFNESS_ACROSS_GRAIN_MPA, TENSION_ACROSS_GRAIN_MPA } from './wood-strength.ts';
import { WOODS, type WoodId } from './woods.ts';

/** Gentlest first. */
export const CRACK_ACTIONS = ['glueAndClamp', 'humidifyFirst', 'insertSliver'] as const;
export type CrackAction = (typeof CRACK_ACTIONS)[number];

/**
 * Bounds between the actions: strain in percent, humidity in percent.
 * SOURCE: own engineering rule from the two strain limits and the mould ceiling; not published.
 */
export const CRACK_RULE = {
  clampBelowStrainPct: 0.15,
  forceUpToStrainPct: 0.4,
  ceilingHumidityPct: HUMIDIFYING.ceilingPct,
} as const;

/** What each action asks for, and how it is to be priced. */
export const CRACK_ACTION_DETAILS = {
  glueAndClamp: {
    priceAs: 'clamp',
    how: 'Clean, glue, close with clamps or a strap.',
    cautions: ['hiddenPins', 'edgedToolsAndClamps'],
  },
  humidifyFirst: {
    priceAs: 'clamp',
    how: 'Damp the block loose, close by hand pressure, glue, dry slowly. Expect every winter to test the joint.',
    cautions: ['looseWhileDamp', 'dampSlowly', 'hiddenPins', 'edgedToolsAndClamps'],
  },
  insertSliver: {
    priceAs: 'fill',
    how: 'Leave the gap and fit a sliver of the same wood with its grain along the crack, or a soft filler.',
    cautions: ['doNotForce', 'hiddenPins', 'edgedToolsAndClamps'],
  },
} as const satisfies Record<CrackAction, { priceAs: 'clamp' | 'fill'; how: string; cautions: readonly CautionId[] }>;

export interface Crack {
  readonly wood: WoodId;
  readonly gapMm: number;
  /** Of the block, through the crack. */
  readonly diameterMm: number;
  readonly lengthMm: number;
  readonly temperatureC: number;
  /** Humidity the block has lived in; with a meter reading, give that in `moistureNowPct` instead. */
  readonly relativeHumidityPct: number;
  readonly moistureNowPct?: number;
  /** Does the block hold the middle of the tree? Laminated and quarter-log blocks do not. */
  readonly holdsPith: boolean;
}

export type CrackReason =
  | { readonly code: 'strain-small'; readonly strainPct: number; readonly limitPct: number }
  | { readonly code: 'strain-bearable'; readonly strainPct: number; readonly limitPct: number }
  | { readonly code: 'strain-too-large'; readonly strainPct: number; readonly limitPct: number }
  | { readonly code: 'humidity-reachable'; readonly relativeHumidityPct: number; readonly ceilingPct: number }
  | { readonly code: 'humidity-too-high'; readonly relativeHumidityPct: number; readonly ceilingPct: number }
  | { readonly code: 'no-air-is-damp-enough'; readonly moisturePct: number; readonly saturationMoisturePct: number }
  | {
      readonly code: 'joint-starts-loaded';
      readonly stressMpa: number;
      readonly strengthMpa: number;
      readonly share: number;
    }
  | { readonly code: 'no-pith-moves-less' }
  | { readonly code: 'wood-varies'; readonly share: number; readonly humidityPct: Span };

export interface CrackAdvice {
  readonly action: CrackAction;
  readonly figures: {
    readonly strainPct: number;
    readonly moistureNowPct: number;
    readonly closing: Closing;
    /** Least to most, from the factor of doubt in the model. */
    readonly forceN: Span & { readonly likely: number };
    readonly rimStressMpa: number;
    /** True where the wood itself has no stiffness figure and the planning figure stood in. */
    readonly stiffnessPlanned: boolean;
  };
  readonly reasons: readonly CrackReason[];
  readonly cautions: readonly CautionId[];
}

const humidityPct = ({ humidity }: Closing): number => (humidity.kind === 'found' ? humidity.relativeHumidityPct : 100);

function actionFor(strainPct: number, closing: Closing): CrackAction {
  if (strainPct < CRACK_RULE.clampBelowStrainPct) return 'glueAndClamp';
  if (strainPct > CRACK_RULE.forceUpToStrainPct) return 'insertSliver';
  return humidityPct(closing) <= CRACK_RULE.ceilingHumidityPct ? 'humidifyFirst' : 'insertSliver';
}

function strainReason(strainPct: number): CrackReason {
  const { clampBelowStrainPct, forceUpToStrainPct } = CRACK_RULE;
  if (strainPct < clampBelowStrainPct) return { code: 'strain-small', strainPct, limitPct: clampBelowStrainPct };
  if (strainPct <= forceUpToStrainPct) return { code: 'strain-bearable', strainPct, limitPct: forceUpToStrainPct };
  return { code: 'strain-too-large', strainPct, limitPct: forceUpToStrainPct };
}

function humidityReason({ moisturePct, humidity }: Closing): CrackReason {
  const ceilingPct = CRACK_RULE.ceilingHumidityPct;
  if (humidity.kind === 'beyond-saturation')
    return { code: 'no-air-is-damp-enough', moisturePct, saturationMoisturePct: humidity.saturationMoisturePct };
  const { relativeHumidityPct } = humidity;
  return {
    code: relativeHumidityPct <= ceilingPct ? 'humidity-reachable' : 'humidity-too-high',
    relativeHumidityPct,
    ceilingPct,
  };
}

/**
 * Glue and clamp, humidify first, or leave the gap and insert a sliver: the decision with its figures and reasons as data.
 * @param crack gap 0 to 1000 mm, diameter and length above 0, temperature −30 to 132.2 °C, humidity 0 to 100 %, moisture 0 to 100 %
 * @returns never throws for a hopeless crack: that is the answer `insertSliver`
 * @throws RangeError for input outside those spans
 * SOURCE: {@link CRACK_RULE}; geometry and forces in crack-geometry.ts
 */
export function crackAdvice(crack: Crack): CrackAdvice {
  const { gapMm, diameterMm, lengthMm, temperatureC } = crack;
  const wood = WOODS[crack.wood];
  requirePositive('lengthMm', lengthMm);
  const moistureNowPct = crack.moistureNowPct ?? equilibriumMoisturePct(temperatureC, crack.relativeHumidityPct);
  const strainPct = closingStrainPct(gapMm, diameterMm);
  const closing = closingPoint(gapMm, diameterMm, wood.perPoint, moistureNowPct, temperatureC);
  const action = actionFor(strainPct, closing);

  const stiffness = figureFor(STIFFNESS_ACROSS_GRAIN_MPA, crack.wood);
  const force = closingForceN(stiffness ?? STIFFNESS_ACROSS_GRAIN_MPA.planning, gapMm, lengthMm);
  const stressMpa = rimStressMpa(stiffness ?? STIFFNESS_ACROSS_GRAIN_MPA.planning, gapMm, diameterMm);
  const strengthMpa = figureFor(TENSION_ACROSS_GRAIN_MPA, crack.wood);

  const reasons: CrackReason[] = [strainReason(strainPct), humidityReason(closing)];
  if (strengthMpa !== null && gapMm > 0)
    reasons.push({ code: 'joint-starts-loaded', stressMpa, strengthMpa, share: stressMpa / strengthMpa });
  if (!crack.holdsPith) reasons.push({ code: 'no-pith-moves-less' });
  const at = (share: number) => {
    const { radial, tangential } = wood.perPoint;
    return humidityPct(
      closingPoint(
        gapMm,
        diameterMm,
        { radial: radial * share, tangential: tangential * share },
        moistureNowPct,
        temperatureC,
      ),
    );
  };
  reasons.push({
    code: 'wood-varies',
    share: wood.uncertainty,
    humidityPct: { low: at(1 + wood.uncertainty), high: at(1 - wood.uncertainty) },
  });
  return {
    action,
    figures: {
      strainPct,
      moistureNowPct,
      closing,
      forceN: { low: force / FORCE_DOUBT_FACTOR, likely: force, high: force * FORCE_DOUBT_FACTOR },
      rimStressMpa: stressMpa,
      stiffnessPlanned: stiffness === null,
    },
    reasons,
    cautions: CRACK_ACTION_DETAILS[action].cautions,
  };
}

/**
 * Advice where the survey knows the material but not which of its woods: every candidate's, the most careful first.
 * @param woods at least one, as in WOODS_OF_MATERIAL
 * @throws RangeError for an empty list or input outside the spans of {@link crackAdvice}
 */
export function crackAdviceForAny(
  woods: readonly WoodId[],
  crack: Omit<Crack, 'wood'>,
): readonly { readonly wood: WoodId; readonly advice: CrackAdvice }[] {
  if (woods.length === 0) throw new RangeError('woods: got an empty list, expected at least one wood.');
  const care = (advice: CrackAdvice) =>
    CRACK_ACTIONS.indexOf(advice.action) * 1000 + humidityPct(advice.figures.closing);
  return woods
    .map((wood) => ({ wood, advice: crackAdvice({ ...crack, wood }) }))
    .sort((a, b) => care(b.advice) - care(a.advice));
}
