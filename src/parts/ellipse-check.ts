import { ellipseCircumferenceMm, ovalNumber, TAPE_AGREES_WITHIN } from '../core/ellipse.ts';

/**
 * Whether tape and callipers agree: within 1 % they do; beyond, the outline is egg-shaped, built up, or one of the two
 * slipped. The tape wins. Source: trade handbook §1.5 (common practice).
 * @returns a sentence, or undefined when one of the three was not taken
 */
export function ellipseCheck(measures: Readonly<Record<string, number>>): string | undefined {
  const { circRopeMm, lengthMm, widthMm } = measures;
  if (!lengthMm || !widthMm) return undefined;
  const computed = Math.round(ellipseCircumferenceMm({ lengthMm, widthMm }));
  const oval = Math.round(ovalNumber({ lengthMm, widthMm }));
  if (!circRopeMm) return `Callipers alone give about ${computed} mm round, oval ${oval}. Take the tape too: it wins.`;
  const off = Math.abs(computed - circRopeMm) / circRopeMm;
  if (off <= TAPE_AGREES_WITHIN) return `Tape and callipers agree (${computed} mm from the callipers), oval ${oval}.`;
  return `Callipers give ${computed} mm, the tape ${circRopeMm}: egg-shaped, built up, or a slip. The tape wins; look again.`;
}
