import type { Container } from './container.ts';
import { avif, heic } from './heif.ts';
import { jpeg } from './jpeg.ts';
import { png } from './png.ts';
import { webp } from './webp.ts';

/** AVIF before HEIC: its files often name the general HEIF brand as well. SVG is no photograph and is not here. */
const CONTAINERS = [jpeg, png, webp, avif, heic] as const;

/** The format of a picture file by its first bytes; undefined for anything else. */
export const containerOf = (bytes: Uint8Array): Container | undefined =>
  CONTAINERS.find((container) => container.recognises(bytes));

/** Formats that a phone may write and a browser may be unable to show. */
export const mayNotDecode = (container: Container): boolean => container === heic || container === avif;
