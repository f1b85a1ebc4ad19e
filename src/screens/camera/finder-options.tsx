import { useEffect, useState } from 'preact/hooks';
import { TickField } from '../../ui/field.tsx';
import { RangeField } from '../../ui/range-field.tsx';
import css from './camera.module.css';
import { type Abilities, adjust } from './camera-track.ts';
import { LEVEL_WITHIN_DEGREES, type Level } from './level.ts';
import type { CameraState } from './use-camera.ts';
import { type LevelState, levelIsOffered, useLevel } from './use-level.ts';

/** What lies over the finder and what the lamp and lens do; for this visit only. */
export function useFinderOptions(camera: CameraState) {
  const [grid, setGrid] = useState(true);
  const [levelWanted, setLevelWanted] = useState(false);
  const [ghostHidden, setGhostHidden] = useState(false);
  const [strength, setStrength] = useState(0.4);
  const [torch, setTorch] = useState(false);
  const [zoom, setZoom] = useState<number>();
  const level = useLevel(levelWanted && camera.at === 'live');
  const track = camera.at === 'live' ? camera.track : undefined;
  const abilities: Abilities = camera.at === 'live' ? camera.abilities : { torch: false, zoom: null };
  // A camera opened anew has forgotten lamp and lens.
  useEffect(() => {
    if (!track) return;
    if (torch) void adjust(track, { torch }).then((done) => done || setTorch(false));
    if (zoom !== undefined) void adjust(track, { zoom });
  }, [track]);
  return {
    ...{
      grid,
      setGrid,
      levelWanted,
      level,
      ghostHidden,
      setGhostHidden,
      strength,
      setStrength,
      torch,
      zoom,
      abilities,
    },
    setTorch(on: boolean): void {
      setTorch(on);
      if (track) void adjust(track, { torch: on }).then((done) => done || setTorch(false));
    },
    setZoom(to: number): void {
      setZoom(to);
      if (track) void adjust(track, { zoom: to });
    },
    /** From a tap: some phones ask their owner before they tell how they are held. */
    async setLevel(on: boolean): Promise<void> {
      setLevelWanted(on && (await level.allow()));
    },
  };
}

type Options = ReturnType<typeof useFinderOptions>;

export function FinderOptions({ hasGhost, ...o }: Options & { readonly hasGhost: boolean }) {
  const { zoom: lens } = o.abilities;
  return (
    <>
      {hasGhost && (
        <RangeField
          label="Strength of the before picture"
          said={`${Math.round(o.strength * 100)} %`}
          {...{ min: 0.1, max: 0.9, step: 0.1, value: o.strength }}
          onChange={o.setStrength}
        />
      )}
      <TickField label="Grid" value={o.grid} onChange={o.setGrid} />
      {levelIsOffered() && (
        <TickField
          label="Level"
          hint={levelSentence(o.level.state)}
          value={o.levelWanted}
          onChange={(on) => void o.setLevel(on)}
        />
      )}
      {o.abilities.torch && <TickField label="Lamp" value={o.torch} onChange={o.setTorch} />}
      {lens && (
        <>
          <RangeField
            label="Zoom"
            said={`${(o.zoom ?? lens.min).toFixed(1)} ×`}
            {...{ ...lens, value: o.zoom ?? lens.min }}
            onChange={o.setZoom}
          />
          <p class={css.hint}>For the record without zoom: the same lens every time.</p>
        </>
      )}
    </>
  );
}

function levelSentence(state: LevelState): string | undefined {
  if (state.at === 'refused') return 'This phone does not tell the page how it is held. The grid helps as well.';
  if (state.at === 'none') return 'This device does not say how it is held. The grid helps as well.';
  return state.at === 'on' ? held(state.level) : undefined;
}

function held({ held, offDegrees }: Level): string {
  const off = Math.round(Math.abs(offDegrees));
  if (Math.abs(offDegrees) <= LEVEL_WITHIN_DEGREES) return held === 'overhead' ? 'Straight down' : 'Level';
  return held === 'overhead' ? `${off}° from straight down` : `${off}° to the ${offDegrees > 0 ? 'right' : 'left'}`;
}
