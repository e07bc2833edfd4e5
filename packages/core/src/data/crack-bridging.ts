/** Classes of EN 1062-7, static and dynamic, in rising order; what each bridges stands in crack-bridging.json. */
export const STATIC_CLASSES = ['A1', 'A2', 'A3', 'A4', 'A5'] as const;
export const DYNAMIC_CLASSES = ['B1', 'B2', 'B3.1', 'B3.2', 'B4.1', 'B4.2'] as const;
export const BRIDGING_CLASSES = [...STATIC_CLASSES, ...DYNAMIC_CLASSES] as const;
export type BridgingClass = (typeof BRIDGING_CLASSES)[number];
