/** How the phone is held, from its own sense of gravity. */
export interface Level {
  /** Held up before the block, or over it with the lens down. */
  readonly held: 'upright' | 'overhead';
  /** Upright: degrees the phone is turned, clockwise positive. Overhead: degrees away from straight down. */
  readonly offDegrees: number;
  /** Overhead: where a bubble would float, −1 to 1 across and down the screen. Upright: 0. */
  readonly lean: readonly [x: number, y: number];
}

/** Within this it counts as level: steadier than a hand holds it, and far under what moves a measure. Trade estimate. */
export const LEVEL_WITHIN_DEGREES = 1.5;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const degrees = (angle: number): number => (angle * 180) / Math.PI;

/**
 * @param beta front-to-back tilt and @param gamma left-to-right tilt, degrees, as the browser's orientation event has them
 * @param screenAngle degrees the phone is turned from its usual way up, counter-clockwise positive (`screen.orientation.angle`)
 * Source: W3C Device Orientation Event: the earth's up seen in the phone's axes is the last row of Z·X·Y rotations,
 * (−cos β sin γ, sin β, cos β cos γ).
 */
export function levelOf(beta: number, gamma: number, screenAngle: number): Level {
  const [b, g, turn] = [radians(beta), radians(gamma), radians(screenAngle)];
  const [right, top, out] = [-Math.cos(b) * Math.sin(g), Math.sin(b), Math.cos(b) * Math.cos(g)];
  // In the axes of the screen as it is read now.
  const x = right * Math.cos(turn) - top * Math.sin(turn);
  const y = top * Math.cos(turn) + right * Math.sin(turn);
  if (Math.abs(out) > Math.SQRT1_2) {
    return { held: 'overhead', offDegrees: degrees(Math.acos(Math.min(1, Math.abs(out)))), lean: [x, -y] };
  }
  return { held: 'upright', offDegrees: degrees(Math.atan2(-x, y)), lean: [0, 0] };
}
