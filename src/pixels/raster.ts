export type Raster = { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number };
