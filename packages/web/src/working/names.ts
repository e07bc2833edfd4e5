/** `relativeHumidity` as `relative humidity`: names of inputs are full physical words, so they read once parted. */
export const inputName = (name: string): string =>
  name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .trim();

/** Where a number stands in the plan, from its id: `flake.quantities.clear.needed` as `flake, quantities, clear, needed`. */
export const placeName = (id: string): string =>
  inputName(id.replaceAll('~', '.').replaceAll('-', ' ').replaceAll('.', ', '));
