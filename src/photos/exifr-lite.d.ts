/** The part of the EXIF reader that this app uses; its own declarations would bring Node's types into the page. */
declare module 'exifr/dist/lite.esm.mjs' {
  export function parse(
    file: Uint8Array,
    options: { readonly [block: string]: unknown },
  ): Promise<{ readonly [tag: string]: unknown } | undefined>;
}
