import {
  crownSize,
  domeAreaCm2,
  domeAreaRoughCm2,
  flatBrimCm2,
  slopedBrimCm2,
  sphericalCrownCm2,
} from '../../../../src/core/physics/block-geometry.ts';
import { colourDifference, labOf } from '../../../../src/core/physics/colour.ts';
import { crackVolumeMm3, dentOf } from '../../../../src/core/physics/dents.ts';
import { absorption, darkShareFor, mixReflectance } from '../../../../src/core/physics/filler-colour.ts';
import { layersFor, mixMm3 } from '../../../../src/core/physics/fillers.ts';
import { halfAxesOf } from '../../../../src/core/physics/oval.ts';
import { type Answers, number, type Row, triple } from './row.ts';

const crown = (row: Row) =>
  crownSize({
    ...halfAxesOf(number(row, 'C_mm'), number(row, 'ratio')),
    heightMm: number(row, 'dome_mm'),
    sideMm: number(row, 'side_mm'),
  });

export const SHAPE_AND_COLOUR: Answers = {
  'geom.cap': {
    answer: (row) => {
      const { volumeMm3, ballRadiusMm, wallMm2 } = dentOf(number(row, 'd_mm'), number(row, 'h_mm'));
      return { V_mm3: volumeMm3, sphere_R_mm: ballRadiusMm, cap_area_mm2: wallMm2 };
    },
  },
  'geom.filler.shrink': { answer: (row) => mixMm3(number(row, 'V_mm3'), 100 * number(row, 's')) },
  'geom.layers': { answer: (row) => layersFor(number(row, 'depth_mm'), number(row, 'max_layer_mm')) },
  'geom.wedge': {
    answer: (row) => {
      const size = [number(row, 'length_mm'), number(row, 'width_mm'), number(row, 'depth_mm')] as const;
      return {
        constant: crackVolumeMm3(...size, 'even'),
        width_taper: crackVolumeMm3(...size, 'mouthTapers'),
        both_taper: crackVolumeMm3(...size, 'bothTaper'),
      };
    },
  },
  'geom.dome': {
    answer: (row) => {
      const dome = {
        halfLengthMm: number(row, 'a_mm'),
        halfWidthMm: number(row, 'b_mm'),
        heightMm: number(row, 'c_mm'),
      };
      return { exact_cm2: domeAreaCm2(dome), approx_cm2: domeAreaRoughCm2(dome) };
    },
  },
  'geom.head': {
    answer: (row) => {
      const { halfLengthMm, halfWidthMm } = halfAxesOf(number(row, 'C_mm'), number(row, 'ratio'));
      return { a_mm: halfLengthMm, b_mm: halfWidthMm };
    },
  },
  'geom.crown.570': {
    answer: (row) => {
      const { sideCm2, domeCm2, totalCm2 } = crown(row);
      return { side_cm2: sideCm2, dome_cm2: domeCm2, total_cm2: totalCm2 };
    },
  },
  'geom.crown.volume': {
    // "The same crown": the oval of 570 mm at 1.25 of the row before.
    answer: (row) =>
      crownSize({ ...halfAxesOf(570, 1.25), heightMm: number(row, 'dome_mm'), sideMm: number(row, 'side_mm') })
        .volumeCm3,
  },
  'geom.annulus.oval': {
    answer: (row) =>
      flatBrimCm2(
        { halfLengthMm: number(row, 'ao'), halfWidthMm: number(row, 'bo') },
        { halfLengthMm: number(row, 'ai'), halfWidthMm: number(row, 'bi') },
      ),
  },
  'geom.annulus.round': { answer: (row) => slopedBrimCm2(number(row, 'ro'), number(row, 'ri'), 0) },
  'geom.frustum': { answer: (row) => slopedBrimCm2(number(row, 'ro'), number(row, 'ri'), number(row, 'drop_mm')) },
  'geom.zone': { answer: (row) => sphericalCrownCm2(number(row, 'R_mm'), number(row, 'h_mm')) },
  de00: { answer: (row) => colourDifference(triple(row, 'Lab1'), triple(row, 'Lab2')) },
  'de00.photo_example': { answer: (row) => colourDifference(labOf(triple(row, 'rgb1')), labOf(triple(row, 'rgb2'))) },
  'lab.srgb': { answer: (row) => labOf(triple(row, 'rgb')) },
  'km.ks': { answer: (row) => absorption(number(row, 'R')) },
  'km.mix': { answer: (row) => mixReflectance(number(row, 'R_light'), number(row, 'R_dark'), number(row, 'c_dark')) },
  'km.fraction': {
    answer: (row) => {
      const found = darkShareFor(number(row, 'R_light'), number(row, 'R_dark'), number(row, 'R_target'));
      return found.kind === 'mix' ? found.darkShare : found.kind;
    },
  },
};
