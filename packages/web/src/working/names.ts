/** `relativeHumidity` as `relative humidity`: names of inputs are full physical words, so they read once parted. */
export const inputName = (name: string): string =>
  name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .trim();
