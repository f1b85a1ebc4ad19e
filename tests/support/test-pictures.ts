/** Pictures for browser tests, drawn on the spot: four corners of four colours show any turn or mirror. */

export const CORNERS = {
  topLeft: [220, 30, 30],
  topRight: [30, 160, 60],
  bottomLeft: [40, 60, 200],
  bottomRight: [235, 200, 40],
} as const;
type Colour = readonly [number, number, number];

const css = ([r, g, b]: Colour): string => `rgb(${r} ${g} ${b})`;

/** EXIF orientation → how the stored picture must be laid so that a viewer that obeys it sees the corners in place. */
const LAY: Readonly<Record<number, readonly [number, number, number, number]>> = {
  // Canvas transform (a, b, c, d) from the upright picture to the stored one. Source: Exif 2.32, tag 0x0112:
  // 6 says that row 0 of the stored picture is the right side of the scene, and so on.
  1: [1, 0, 0, 1],
  2: [-1, 0, 0, 1],
  3: [-1, 0, 0, -1],
  4: [1, 0, 0, -1],
  5: [0, 1, 1, 0],
  6: [0, -1, 1, 0],
  7: [0, -1, -1, 0],
  8: [0, 1, -1, 0],
};

/** An upright scene of `width` × `height`, stored as a camera held in that orientation stores it. */
export async function scene(
  width: number,
  height: number,
  { orientation = 1, type = 'image/jpeg', noise = 0 }: { orientation?: number; type?: string; noise?: number } = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const [a, b, c, d] = LAY[orientation] as readonly [number, number, number, number];
  const canvas = new OffscreenCanvas(orientation > 4 ? height : width, orientation > 4 ? width : height);
  const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
  context.translate(a < 0 || c < 0 ? canvas.width : 0, b < 0 || d < 0 ? canvas.height : 0);
  context.transform(a, b, c, d, 0, 0);
  context.fillStyle = '#999';
  context.fillRect(0, 0, width, height);
  const [w, h] = [width / 3, height / 3];
  for (const [x, y, colour] of [
    [0, 0, CORNERS.topLeft],
    [width - w, 0, CORNERS.topRight],
    [0, height - h, CORNERS.bottomLeft],
    [width - w, height - h, CORNERS.bottomRight],
  ] as const) {
    context.fillStyle = css(colour);
    context.fillRect(x, y, w, h);
  }
  // Lines of grain, so that a large picture weighs what a photograph weighs.
  for (let i = 0; i < noise; i++) {
    context.strokeStyle = `hsl(${20 + (i % 30)} 45% ${25 + (i % 50)}%)`;
    context.lineWidth = 0.7 + (i % 5);
    context.beginPath();
    context.moveTo((i * 97) % width, height / 3);
    context.lineTo((i * 53) % width, (height * 2) / 3);
    context.stroke();
  }
  const blob = await canvas.convertToBlob({ type, quality: 0.92 });
  if (blob.type !== type) throw new Error(`Wanted ${type}, the browser made ${blob.type}.`);
  return new Uint8Array(await blob.arrayBuffer());
}

/** Colours a sixth in from each corner. */
export async function cornersOf(bytes: ArrayBuffer): Promise<{ [corner in keyof typeof CORNERS]: Colour }> {
  const bitmap = await createImageBitmap(new Blob([bytes]));
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
  context.drawImage(bitmap, 0, 0);
  const at = (x: number, y: number): Colour => {
    const [r = 0, g = 0, b = 0] = context.getImageData(
      Math.floor(bitmap.width * x),
      Math.floor(bitmap.height * y),
      1,
      1,
    ).data;
    return [r, g, b];
  };
  const found = {
    topLeft: at(1 / 6, 1 / 6),
    topRight: at(5 / 6, 1 / 6),
    bottomLeft: at(1 / 6, 5 / 6),
    bottomRight: at(5 / 6, 5 / 6),
  };
  bitmap.close();
  return found;
}

export const isNear = (a: Colour, b: Colour): boolean => a.every((value, i) => Math.abs(value - (b[i] ?? 0)) <= 12);
