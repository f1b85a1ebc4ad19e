import { compose, type Homography, scaledTo1 } from './homography.ts';

/** What the camera needs to have told us, or else is assumed. */
export type Camera = {
  /** Focal length in pixels of this picture. */
  readonly focalPx: number;
  /** Where the optical axis meets the picture: its centre, unless it was cropped. */
  readonly centreX: number;
  readonly centreY: number;
};

/**
 * Focal length of a phone's main lens as a share of the long side: 0.71 to 0.81 in the pictures tried, which is a
 * 26 to 29 mm lens on full frame. Used when the picture's metadata give none.
 */
export const USUAL_FOCAL = 0.78;
/** One standard error of that guess. */
export const USUAL_FOCAL_SPREAD = 0.05;

export const cameraOf = (photo: { readonly width: number; readonly height: number }, focalPx?: number): Camera => ({
  focalPx: focalPx ?? USUAL_FOCAL * Math.max(photo.width, photo.height),
  centreX: photo.width / 2,
  centreY: photo.height / 2,
});

export type PlanePose = {
  /** First two columns and origin of the plane in camera coordinates, millimetres. */
  readonly r1: readonly [number, number, number];
  readonly r2: readonly [number, number, number];
  readonly origin: readonly [number, number, number];
  /** How far the two axes are from equal length and right angles: 0 for a true rectangle of the assumed shape. */
  readonly misfit: number;
};

/**
 * Where a flat object stands before the camera, from its homography (mm to px).
 * Source: Z. Zhang 2000, "A flexible new technique for camera calibration", section 3.1.
 */
export function poseOf(mmToPx: Homography, camera: Camera): PlanePose {
  const { focalPx: f, centreX, centreY } = camera;
  const k = compose([1 / f, 0, -centreX / f, 0, 1 / f, -centreY / f, 0, 0, 1], mmToPx);
  const a = [k[0], k[3], k[6]] as const;
  const b = [k[1], k[4], k[7]] as const;
  const la = Math.hypot(...a);
  const lb = Math.hypot(...b);
  const size = (k[8] < 0 ? -1 : 1) / Math.sqrt(la * lb);
  const scaled = (v: readonly [number, number, number]): [number, number, number] => [
    v[0] * size,
    v[1] * size,
    v[2] * size,
  ];
  const skew = (a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) / (la * lb);
  return {
    r1: scaled(a),
    r2: scaled(b),
    origin: scaled([k[2], k[5], k[8]]),
    misfit: Math.hypot(Math.log(la / lb), skew),
  };
}

/** Unit normal of a posed plane, towards the camera. */
export function normalOf({ r1, r2, origin }: PlanePose): [number, number, number] {
  const n: [number, number, number] = [
    r1[1] * r2[2] - r1[2] * r2[1],
    r1[2] * r2[0] - r1[0] * r2[2],
    r1[0] * r2[1] - r1[1] * r2[0],
  ];
  const length = Math.hypot(...n);
  const towards = n[0] * origin[0] + n[1] * origin[1] + n[2] * origin[2] > 0 ? -1 : 1;
  return [(towards * n[0]) / length, (towards * n[1]) / length, (towards * n[2]) / length];
}

/** Angle between the view axis and the normal of the plane, in degrees; 0 = photographed square on. */
export const tiltOf = (pose: PlanePose): number =>
  (Math.acos(Math.min(1, Math.abs(normalOf(pose)[2]))) * 180) / Math.PI;

/**
 * Homography (mm to px) of the parallel plane `zMm` nearer to the camera.
 * Source: pinhole geometry; [r1 r2 t] as in `poseOf`, t moved along the plane's normal.
 */
export function raised(pose: PlanePose, camera: Camera, zMm: number): Homography | undefined {
  const n = normalOf(pose);
  const { r1, r2, origin } = pose;
  const t = [origin[0] + zMm * n[0], origin[1] + zMm * n[1], origin[2] + zMm * n[2]] as const;
  const { focalPx: f, centreX, centreY } = camera;
  return scaledTo1(
    compose([f, 0, centreX, 0, f, centreY, 0, 0, 1], [r1[0], r2[0], t[0], r1[1], r2[1], t[1], r1[2], r2[2], t[2]]),
  );
}
