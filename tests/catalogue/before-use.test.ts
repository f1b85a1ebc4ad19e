import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { settingOf } from '../../src/core/block.ts';
import { holds } from '../../src/core/condition.ts';
import { FREEZE_OBSTACLES } from '../../src/core/physics/freezing.ts';
import { WATCH_RULES } from '../../src/core/quarantine.ts';
import { aBlock } from '../make.ts';

const { beforeFirstUse, storing, copyWays, damage, materials, law } = catalogue;

describe('checks before first use', () => {
  it('name treatments that exist', () => {
    for (const { treatment } of Object.values(beforeFirstUse)) {
      if (treatment) expect(catalogue.treatments).toHaveProperty(treatment);
    }
  });
  // Trade handbook §6.3: seven lines before first use and one on storing with three parts.
  it('say everything the handbook says', () => {
    const said = Object.values({ ...beforeFirstUse, ...storing })
      .map(({ term, text }) => `${term} ${text}`)
      .join(' ');
    for (const figure of ['8–12 %', '0.2 %', 'three times', '45–60 % RH', '15–22 °C', '75 % RH'])
      expect(said).toContain(figure);
    for (const word of [
      'stocking',
      'white cloth',
      'spirit',
      'cord',
      'key falls',
      'film',
      'old stamp',
      'thin pins',
      'no rubber',
      'tissue',
      'no sealed plastic',
    ]) {
      expect(said.toLowerCase()).toContain(word);
    }
  });
  it('ask something of every kind of block', () => {
    for (const blockType of Object.keys(catalogue.types)) {
      const setting = settingOf(aBlock({ blockType }), catalogue);
      expect(Object.values(beforeFirstUse).some(({ when }) => !when || holds(when, setting))).toBe(true);
    }
  });
});

describe('a gate that keeps a block apart', () => {
  const gates = Object.entries(damage).flatMap(([kind, { gates }]) => gates.map((gate) => ({ kind, ...gate })));
  it('for something alive says what it is watched for', () => {
    const alive = gates.filter(({ effects }) => effects.includes('live'));
    expect(alive.length).toBeGreaterThan(0);
    for (const { kind, watch } of alive) expect([kind, watch]).toEqual([kind, expect.any(String)]);
  });
  it('names a watch there is a rule for, and only where it keeps apart', () => {
    for (const { watch, effects } of gates) {
      if (!watch) continue;
      expect(WATCH_RULES).toHaveProperty(watch);
      expect(effects).toContain('quarantine');
    }
  });
  // Materials handbook §2.4, common practice: not plaster, not papier-mâché.
  it('does not send to the freezer what must not freeze', () => {
    expect(FREEZE_OBSTACLES[materials.plaster?.freezing ?? 'animalGlue'].verdict).toBe('refuse');
    expect(FREEZE_OBSTACLES[materials.papierMache?.freezing ?? 'animalGlue'].verdict).toBe('refuse');
  });
});

describe('taking a copy', () => {
  it('has more than one way, each with its cautions', () => {
    expect(Object.keys(copyWays).length).toBeGreaterThan(2);
    for (const { cautions, wants } of Object.values(copyWays)) {
      expect(cautions.length).toBeGreaterThan(0);
      expect(wants.length).toBeGreaterThan(0);
    }
  });
  it('can be done to a block of any material', () => {
    for (const material of Object.keys(materials)) {
      const setting = settingOf(aBlock({ materials: [material] }), catalogue);
      expect(Object.values(copyWays).some(({ when }) => !when || holds(when, setting))).toBe(true);
    }
  });
  it('is said beside the law on whose shape it is', () => {
    expect(law.filter(({ bearsOn }) => bearsOn === 'copying').map(({ topic }) => topic)).toEqual([
      'Design rights when copying',
    ]);
  });
});
