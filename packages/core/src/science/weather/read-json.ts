/** Careful steps into an answer of unknown shape: what is not there is undefined, never an exception or a guess. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

export const parseJson = (text: string): Json | undefined => {
  try {
    return JSON.parse(text) as Json;
  } catch {
    return undefined;
  }
};

export const at = (json: Json | undefined, ...path: readonly string[]): Json | undefined => {
  let here = json;
  for (const key of path) {
    if (here === null || typeof here !== 'object' || Array.isArray(here)) return undefined;
    here = (here as { readonly [key: string]: Json })[key];
  }
  return here;
};

export const numberAt = (json: Json | undefined, ...path: readonly string[]): number | undefined => {
  const found = at(json, ...path);
  return typeof found === 'number' && Number.isFinite(found) ? found : undefined;
};

export const textAt = (json: Json | undefined, ...path: readonly string[]): string | undefined => {
  const found = at(json, ...path);
  return typeof found === 'string' ? found : undefined;
};

export const listAt = (json: Json | undefined, ...path: readonly string[]): readonly Json[] | undefined => {
  const found = at(json, ...path);
  return Array.isArray(found) ? (found as readonly Json[]) : undefined;
};
