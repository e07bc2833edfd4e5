/** A number with its noun. */
export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
