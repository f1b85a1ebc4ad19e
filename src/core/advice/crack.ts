import type { Physics } from '../catalogue.ts';
import type { Air } from '../physics/air.ts';
import { CLAMP_PRESSURE_MPA, clampsNeeded } from '../physics/clamps.ts';
import {
  CRACK_ACTION_DETAILS,
  CRACK_RULE,
  type CrackAction,
  type CrackReason,
  crackAdviceForAny,
} from '../physics/crack-advice.ts';
import { type Closing, closingStrainPct } from '../physics/crack-geometry.ts';
import { equilibriumMoisturePct, humidityHolding } from '../physics/equilibrium-moisture.ts';
import { type GluingReady, readyToGlue } from '../physics/glues.ts';
import { type HumidifyingPlan, humidifyingPlan } from '../physics/humidifying.ts';
import type { Sourced, Span } from '../physics/sourced.ts';
import { WOODS, type WoodId } from '../physics/woods.ts';
import { boardClosing, boardStrainPct } from './board-crack.ts';
import type { Assumption, Outcome } from './outcome.ts';
import { waitingFor } from './outcome.ts';
import { boardWidthOf, diameterOf } from './size-of-block.ts';
import { aboveZero, isYes, measured, onBlock, type Subject } from './subject.ts';
import { SOURCES, USUAL } from './usual.ts';
import { sourceOfWood, woodsOf } from './wood-of-block.ts';

export interface CrackQuestion {
  /** Towards the middle of a round block, or between boards. */
  readonly across: 'round' | 'board';
  readonly gapMm: number;
  /** Diameter of the round block, or width of the boards across their grain. */
  readonly spanMm: number;
  /** Woods it may be of; none where the wood has no movement figures. The most careful answer is given. */
  readonly woods: readonly WoodId[];
  readonly room: Air;
  /** By a meter; null takes what the room's air brings it to. */
  readonly moisturePct: number | null;
  readonly lengthMm: number | null;
  /** How far the faces reach into the wood; null: as far as `across` says, to the middle or through the board. */
  readonly depthMm: number | null;
  readonly holdsPith: boolean;
  readonly closesByHand: boolean;
}

export type ClosingReason =
  | CrackReason
  /** What a hand has done outranks what a sum expects. */
  | { readonly code: 'closes-by-hand' }
  | { readonly code: 'wood-without-figures' }
  | { readonly code: 'not-to-the-middle'; readonly depthMm: number }
  | { readonly code: 'not-ready-to-glue'; readonly ready: Extract<GluingReady, { kind: 'wait' }> };

export interface CrackAnswer {
  readonly action: CrackAction;
  readonly question: CrackQuestion;
  /** Whose figures decided; null where the wood has none. */
  readonly wood: WoodId | null;
  readonly strainPct: number;
  readonly moistureNowPct: number;
  readonly closing: Closing | null;
  /** Humidity that closes it, from the wood's own spread; 100 where no air is damp enough. */
  readonly humidityPct: Span | null;
  /** To close it dry, by hand or clamp; only known for a round block. */
  readonly forceN: Span | null;
  readonly humidifying: HumidifyingPlan | null;
  /** Clamps of so many newton, at the pressure an old crack wants; null where nothing is clamped or the length is not known. */
  readonly clamps: (Span & { readonly newton: number; readonly faceDepthMm: number }) | null;
  readonly reasons: readonly ClosingReason[];
}

interface Worked {
  readonly action: CrackAction;
  readonly wood: WoodId | null;
  readonly closing: Closing | null;
  readonly humidityPct: Span | null;
  readonly forceN: Span | null;
  readonly reasons: readonly ClosingReason[];
}

const percentOf = ({ humidity }: Closing): number => (humidity.kind === 'found' ? humidity.relativeHumidityPct : 100);

/** The physics' own rule, for cracks its round block does not cover. No humidity known counts as too much. */
function byRule(strainPct: number, closing: Closing | null): Pick<Worked, 'action' | 'reasons'> {
  const { clampBelowStrainPct, forceUpToStrainPct, ceilingHumidityPct } = CRACK_RULE;
  const humidity = closing && percentOf(closing);
  const reachable = humidity !== null && humidity <= ceilingHumidityPct;
  const action =
    strainPct < clampBelowStrainPct
      ? 'glueAndClamp'
      : strainPct <= forceUpToStrainPct && reachable
        ? 'humidifyFirst'
        : 'insertSliver';
  const strain: ClosingReason =
    strainPct < clampBelowStrainPct
      ? { code: 'strain-small', strainPct, limitPct: clampBelowStrainPct }
      : strainPct <= forceUpToStrainPct
        ? { code: 'strain-bearable', strainPct, limitPct: forceUpToStrainPct }
        : { code: 'strain-too-large', strainPct, limitPct: forceUpToStrainPct };
  if (humidity === null) return { action, reasons: [strain, { code: 'wood-without-figures' }] };
  return {
    action,
    reasons: [
      strain,
      {
        code: reachable ? 'humidity-reachable' : 'humidity-too-high',
        relativeHumidityPct: humidity,
        ceilingPct: ceilingHumidityPct,
      },
    ],
  };
}

function inRound(question: CrackQuestion, moistureNowPct: number): Worked {
  const { woods, gapMm, spanMm, lengthMm, room, holdsPith } = question;
  const [worst] = crackAdviceForAny(woods, {
    gapMm,
    diameterMm: spanMm,
    lengthMm: lengthMm ?? spanMm / 2,
    ...room,
    moistureNowPct,
    holdsPith,
  });
  if (!worst) throw new Error('No advice for a list of woods that is not empty.');
  const { action, figures, reasons } = worst.advice;
  const spread = reasons.find((reason) => reason.code === 'wood-varies');
  return {
    action,
    wood: worst.wood,
    closing: figures.closing,
    humidityPct: spread?.humidityPct ?? null,
    // The force grows with the length of the crack: without it there is none to give.
    forceN: lengthMm === null || gapMm === 0 ? null : figures.forceN,
    reasons,
  };
}

function inBoards({ gapMm, spanMm, woods, room }: CrackQuestion, moistureNowPct: number): Worked {
  const closings = woods.map((wood) => ({
    wood,
    ...boardClosing(gapMm, spanMm, wood, moistureNowPct, room.temperatureC),
  }));
  const worst = closings.sort((a, b) => percentOf(b.closing) - percentOf(a.closing))[0];
  const rule = byRule(boardStrainPct(gapMm, spanMm), worst?.closing ?? null);
  if (!worst) return { ...rule, wood: null, closing: null, humidityPct: null, forceN: null };
  const { wood, closing, humidityPct } = worst;
  const varies = { code: 'wood-varies', share: WOODS[wood].uncertainty, humidityPct } as const;
  return { ...rule, wood, closing, humidityPct, forceN: null, reasons: [...rule.reasons, varies] };
}

function withoutFigures({ across, gapMm, spanMm }: CrackQuestion): Worked {
  const strainPct = across === 'round' ? closingStrainPct(gapMm, spanMm) : boardStrainPct(gapMm, spanMm);
  return { ...byRule(strainPct, null), wood: null, closing: null, humidityPct: null, forceN: null };
}

function worked(question: CrackQuestion, moistureNowPct: number): Worked {
  if (question.woods.length === 0) return withoutFigures(question);
  return question.across === 'round' ? inRound(question, moistureNowPct) : inBoards(question, moistureNowPct);
}

/** How far the faces of a crack reach when nobody has felt it: to the middle, or through a usual board. */
export const usualFaceMm = ({ across, spanMm }: Pick<CrackQuestion, 'across' | 'spanMm'>): number =>
  across === 'round' ? spanMm / 2 : USUAL.boardThicknessMm;

function clampsFor(question: CrackQuestion): CrackAnswer['clamps'] {
  const { lengthMm } = question;
  const faceDepthMm = question.depthMm ?? usualFaceMm(question);
  if (!lengthMm || !faceDepthMm) return null;
  const at = (pressureMpa: number): number =>
    clampsNeeded({ pressureMpa, lengthMm, depthMm: faceDepthMm, clampN: USUAL.clampN });
  const { low, high } = CLAMP_PRESSURE_MPA.oldCrack;
  return { low: at(low), high: at(high), newton: USUAL.clampN, faceDepthMm };
}

function remarks(question: CrackQuestion): readonly ClosingReason[] {
  const { across, spanMm, depthMm, closesByHand, moisturePct, room } = question;
  const home = equilibriumMoisturePct(room.temperatureC, room.relativeHumidityPct);
  const ready: GluingReady = moisturePct === null ? { kind: 'ready' } : readyToGlue(moisturePct, home);
  return [
    ...(closesByHand ? [{ code: 'closes-by-hand' } as const] : []),
    ...(across === 'round' && depthMm !== null && depthMm < spanMm / 4
      ? [{ code: 'not-to-the-middle', depthMm } as const]
      : []),
    ...(ready.kind === 'wait' ? [{ code: 'not-ready-to-glue', ready } as const] : []),
  ];
}

/**
 * Clamp, humidify first or leave the gap and fit a sliver; with humidity, weeks and clamps. Of several possible woods, the
 * one that asks for most care.
 * @param question gap 0 to 1000 mm, span above 0, room −30 to 132 °C and 0 to 100 %, moisture 0 to 100 %
 * @throws RangeError outside those
 * SOURCE: crack-advice.ts for round blocks, board-crack.ts for boards; that a crack closed by hand may be glued is the trade's rule (trade handbook, T14).
 */
export function closeCrack(question: CrackQuestion): CrackAnswer {
  const { across, gapMm, spanMm, room, moisturePct } = question;
  const moistureNowPct = moisturePct ?? equilibriumMoisturePct(room.temperatureC, room.relativeHumidityPct);
  const { reasons, ...work } = worked(question, moistureNowPct);
  const action = question.closesByHand ? 'glueAndClamp' : work.action;
  const livedIn = humidityHolding(room.temperatureC, moistureNowPct);
  return {
    ...work,
    action,
    question,
    strainPct: across === 'round' ? closingStrainPct(gapMm, spanMm) : boardStrainPct(gapMm, spanMm),
    moistureNowPct,
    humidifying:
      action === 'humidifyFirst' && work.closing && livedIn.kind === 'found'
        ? humidifyingPlan(livedIn.relativeHumidityPct, percentOf(work.closing))
        : null,
    clamps: action === 'insertSliver' ? null : clampsFor(question),
    reasons: [...remarks(question), ...reasons],
  };
}

/** Where the figures of such an answer come from. */
export const sourcesOfCrack = ({ question, wood, humidifying, clamps }: CrackAnswer): readonly Sourced[] => [
  SOURCES.crackRule,
  question.across === 'round' ? SOURCES.roundCrack : SOURCES.boards,
  SOURCES.equilibrium,
  ...(wood ? [sourceOfWood(wood)] : []),
  ...(humidifying ? [SOURCES.humidifying] : []),
  ...(clamps ? [CLAMP_PRESSURE_MPA.oldCrack, SOURCES.clampForce] : []),
];

/** Advice on a crack that was found, with what had to be taken for granted. */
export function crackOutcome(
  subject: Subject,
  { across, from }: Extract<Physics, { does: 'closeCrack' }>,
): Outcome<CrackAnswer> {
  const gapMm = measured(subject, from.gap);
  if (gapMm === null) return waitingFor([{ ask: from.gap }]);
  const span = across === 'round' ? diameterOf(subject) : boardWidthOf(subject);
  const { woods, assumed } = woodsOf(subject);
  const { room } = subject.climate;
  const metered = onBlock(subject, 'moisturePct');
  const lengthMm = aboveZero(subject, from.length);
  const depthMm = aboveZero(subject, from.depth);
  const holdsPith = subject.setting.parts === 'one';
  const closesByHand = isYes(subject, from.closesByHand);
  const question = { across, gapMm, spanMm: span.mm, woods, room, moisturePct: metered, lengthMm, depthMm } as const;
  const answer = closeCrack({ ...question, holdsPith, closesByHand });
  const { clamps } = answer;
  const suppositions: readonly Assumption[] = [
    ...assumed,
    ...span.assumed,
    ...(metered === null ? ([{ code: 'moisture', moisturePct: answer.moistureNowPct }] as const) : []),
    ...(metered === null && subject.climate.assumed.includes('room') ? ([{ code: 'room', ...room }] as const) : []),
    ...(across === 'round' && holdsPith ? ([{ code: 'holdsPith' }] as const) : []),
    ...(clamps && depthMm === null ? ([{ code: 'faceDepth', mm: clamps.faceDepthMm }] as const) : []),
    ...(clamps ? ([{ code: 'clamp', newton: clamps.newton }] as const) : []),
  ];
  return {
    answer,
    needs: lengthMm === null ? [{ ask: from.length }] : [],
    assumed: suppositions,
    cautions: CRACK_ACTION_DETAILS[answer.action].cautions,
    sources: sourcesOfCrack(answer),
  };
}
