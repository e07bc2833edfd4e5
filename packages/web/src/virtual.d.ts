declare module 'virtual:outside-checks' {
  /** Check values by formula, counted by mark: READ in a source, MEM from memory, CALC own arithmetic. */
  export const OUTSIDE_CHECKS: Readonly<Record<string, Readonly<Record<string, number>>>>;
}
