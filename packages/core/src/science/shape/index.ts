import type { AnyFormula } from '../../kernel/formula.ts';
import { arcWallArea, arcWallRadius } from './arc-wall.ts';
import { areaError } from './area-error.ts';
import { coveFace, coveFill } from './cove.ts';
import { areaLessHoles, outlineArea, outlinePerimeter, outlineWalls } from './outline-formulas.ts';
import { flightFace, wallFace } from './steps.ts';
import { misclosure } from './traverse.ts';
import { quadrilateralArea, triangleArea } from './triangle.ts';

export * from './arc-wall.ts';
export * from './area-error.ts';
export * from './cove.ts';
export * from './crossing.ts';
export * from './door-on-wall.ts';
export * from './join-rooms.ts';
export * from './lay-out.ts';
export * from './outline-formulas.ts';
export * from './polygon.ts';
export * from './room-from-tape.ts';
export * from './steps.ts';
export * from './tape-measures.ts';
export * from './traverse.ts';
export * from './triangle.ts';

export const shapeFormulas: readonly AnyFormula[] = [
  outlineArea,
  outlinePerimeter,
  outlineWalls,
  areaLessHoles,
  areaError,
  coveFill,
  coveFace,
  flightFace,
  wallFace,
  triangleArea,
  quadrilateralArea,
  arcWallRadius,
  arcWallArea,
  misclosure,
];
