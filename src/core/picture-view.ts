import type { PictureSize, Spot } from './mark-geometry.ts';

/** What part of a picture is on screen: the picture's pixel at the top left, and screen pixels for one of its own. */
export interface PictureView {
  readonly left: number;
  readonly top: number;
  readonly zoom: number;
}

/** Nothing is learnt from one pixel larger than this. */
const LARGEST_ZOOM = 8;

const zoomToFit = (picture: PictureSize, screen: PictureSize): number =>
  Math.min(screen.width / picture.width, screen.height / picture.height);

/** The whole picture, in the middle of the screen. */
export function fitted(picture: PictureSize, screen: PictureSize): PictureView {
  return kept({ left: 0, top: 0, zoom: zoomToFit(picture, screen) }, picture, screen);
}

/** The nearest view that shows no less than it could: never smaller than whole, never past an edge. */
export function kept(view: PictureView, picture: PictureSize, screen: PictureSize): PictureView {
  const least = zoomToFit(picture, screen);
  const zoom = Math.min(Math.max(view.zoom, least), Math.max(LARGEST_ZOOM, least));
  const along = (start: number, whole: number, room: number): number => {
    const seen = room / zoom;
    return seen >= whole ? (whole - seen) / 2 : Math.min(Math.max(start, 0), whole - seen);
  };
  return {
    zoom,
    left: along(view.left, picture.width, screen.width),
    top: along(view.top, picture.height, screen.height),
  };
}

/** Magnified by `by` about a place on the screen, which stays where it is. */
export function zoomed(view: PictureView, by: number, [x, y]: readonly [number, number]): PictureView {
  const zoom = view.zoom * by;
  return { zoom, left: view.left + x / view.zoom - x / zoom, top: view.top + y / view.zoom - y / zoom };
}

/** Pushed by so many screen pixels, as a sheet under a finger. */
export const pushed = (view: PictureView, dx: number, dy: number): PictureView => ({
  ...view,
  left: view.left - dx / view.zoom,
  top: view.top - dy / view.zoom,
});

/** The spot of the picture under a place on the screen. */
export const spotAt = (view: PictureView, picture: PictureSize, [x, y]: readonly [number, number]): Spot => [
  (view.left + x / view.zoom) / picture.width,
  (view.top + y / view.zoom) / picture.height,
];

/** The least push that brings a spot onto the screen with some room round it. */
export function showing(view: PictureView, picture: PictureSize, screen: PictureSize, [x, y]: Spot): PictureView {
  const room = Math.min(screen.width, screen.height) / 8;
  const shift = (place: number, whole: number): number =>
    place < room ? place - room : place > whole - room ? place - whole + room : 0;
  return pushed(
    view,
    -shift((x * picture.width - view.left) * view.zoom, screen.width),
    -shift((y * picture.height - view.top) * view.zoom, screen.height),
  );
}
