import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import type { Photo } from '../../core/records.ts';
import { StoredPicture } from '../../parts/stored-picture.tsx';
import css from './camera.module.css';
import { LEVEL_WITHIN_DEGREES, type Level } from './level.ts';
import type { CameraState } from './use-camera.ts';

/** What the lens sees, and over it grid, level and the before photograph; none of them in the photograph. */
export function Finder({
  camera,
  video,
  ghost,
  strength,
  grid,
  level,
  busy,
}: {
  readonly camera: CameraState;
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly ghost: Photo | undefined;
  /** Of the ghost, 0 to 1. */
  readonly strength: number;
  readonly grid: boolean;
  readonly level: Level | undefined;
  readonly busy: boolean;
}) {
  const stream = camera.at === 'live' ? camera.stream : null;
  const [shape, setShape] = useState(3 / 4);
  useLayoutEffect(() => {
    if (!video.current) return;
    video.current.srcObject = stream;
    // Autoplay alone is not enough after the camera was away.
    if (stream) void video.current.play()?.catch(() => undefined);
  }, [stream]);
  return (
    <div class={css.finder} style={{ '--ratio': shape }} data-busy={busy || undefined}>
      <video
        ref={video}
        playsInline
        muted
        autoPlay
        aria-label="What the camera sees"
        onResize={({ currentTarget: { videoWidth, videoHeight } }) => {
          if (videoWidth * videoHeight > 0) setShape(videoWidth / videoHeight);
        }}
      />
      {ghost && (
        <div class={css.ghost} style={{ opacity: strength }}>
          <StoredPicture sha256={ghost.sha256} alt="The before photograph, to line up with" />
        </div>
      )}
      {grid && (
        <svg class={css.lines} viewBox="0 0 3 3" preserveAspectRatio="none" aria-hidden="true">
          <path class={css.under} d="M1 0v3M2 0v3M0 1h3M0 2h3" />
          <path d="M1 0v3M2 0v3M0 1h3M0 2h3" />
        </svg>
      )}
      {level && <LevelMark level={level} />}
      {camera.at !== 'live' && <p class={css.waiting}>{camera.at === 'starting' ? 'Opening the camera…' : 'Paused'}</p>}
    </div>
  );
}

/** Upright: a line that stays with the horizon between two that stay with the phone. Overhead: a bubble in a ring. */
function LevelMark({ level }: { readonly level: Level }) {
  const { held, offDegrees, lean } = level;
  const isLevel = Math.abs(offDegrees) <= LEVEL_WITHIN_DEGREES;
  const lines =
    held === 'upright' ? (
      <>
        <path d="M-46 0h14M32 0h14" />
        <path d="M-28 0h56" transform={`rotate(${(-offDegrees).toFixed(1)})`} />
      </>
    ) : (
      <>
        <circle r="14" />
        <circle r="6" cx={(lean[0] * 60).toFixed(1)} cy={(lean[1] * 60).toFixed(1)} />
      </>
    );
  return (
    <svg class={css.level} viewBox="-50 -50 100 100" data-level={isLevel || undefined} aria-hidden="true">
      <g class={css.under}>{lines}</g>
      <g>{lines}</g>
    </svg>
  );
}
