import type { ComponentType } from 'preact';

export type Params = Readonly<Record<string, string>>;

export interface Route {
  /** Path after the `#`, with `:name` for parameters. */
  readonly path: string;
  /** Said in the browser's title and to a screen reader on arrival; screens refine it with the block's name. */
  readonly title: string;
  readonly load: () => Promise<{ default: ComponentType<{ params: Params }> }>;
}

/** Declares a screen. Each `screens/<name>/route.ts` exports one or several as `routes`; they are found by glob. */
export const defineRoute = (route: Route): Route => route;

/** What a part of an address says; one that was cut or mistyped is taken as it stands, and then nothing is found under it. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** Parameters when `path` fits the route, else undefined. */
export function matches(route: Route, path: string): Params | undefined {
  const wanted = route.path.split('/').filter(Boolean);
  const given = path.split('/').filter(Boolean);
  if (wanted.length !== given.length) return undefined;
  const params: Record<string, string> = {};
  for (const [index, part] of wanted.entries()) {
    const value = given[index] ?? '';
    if (part.startsWith(':')) params[part.slice(1)] = decoded(value);
    else if (part !== value) return undefined;
  }
  return params;
}

/** Address of a screen: `to('/block/:id', { id })` → `#/block/…`. */
export function to(path: string, params: Params = {}): string {
  return `#${path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(params[name] ?? ''))}`;
}
