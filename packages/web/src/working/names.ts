/** `relativeHumidity` as `relative humidity`: names of inputs are full physical words, so they read once parted. */
export const inputName = (name: string): string =>
  name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .trim();

/**
 * Where a number stands in the plan, from its id: `flake.quantities.clear.needed` as `quantities, clear coat, needed`.
 * `called` says what parts of it are called, such as a product by its id; an empty name leaves the part out.
 */
export const placeName = (id: string, called: ReadonlyMap<string, string> = new Map()): string =>
  id
    .split(/[~.]/)
    .map((part) => called.get(part) ?? inputName(part.replaceAll('-', ' ')))
    .filter((part) => part !== '')
    .join(', ');
