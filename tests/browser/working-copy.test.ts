import { expect, it, vi } from 'vitest';
import { workingCopy } from '../../src/photos/working-copy.ts';
import { withExif } from '../support/exif.ts';
import { CORNERS, cornersOf, isNear, scene } from '../support/test-pictures.ts';

const library = vi.hoisted(() => vi.fn(() => Promise.reject(new ReferenceError('Image is not defined'))));
vi.mock('browser-image-compression', () => ({ default: library }));

it('the working copy is made where the compression library fails, as in WebKit’s workers, and it is not asked again', async () => {
  const bytes = withExif(await scene(3000, 2000, { orientation: 6 }), { orientation: 6 });
  const source = new Blob([bytes], { type: 'image/jpeg' });
  for (let time = 0; time < 2; time++) {
    const copy = await workingCopy(source, { width: 3000, height: 2000 }, { longSidePx: 2048, quality: 0.85 });
    expect(copy.type).toBe('image/jpeg');
    const corners = await cornersOf(await copy.arrayBuffer());
    expect(isNear(corners.bottomLeft, CORNERS.bottomLeft)).toBe(true);
  }
  expect(library).toHaveBeenCalledTimes(1);
});
