import type { CoatSpread, Published } from '@slabwright/core';
import type { StepView } from '../steps/step-view.tsx';
import { answered } from '../worker/plan-types.ts';
import type { CoatCells } from './api.ts';

export type Coat = Published<CoatSpread>;

/** Coats of the spread, in the order they are laid; none while it is being worked out. */
export const coatsOf = ({ option }: StepView): readonly Coat[] =>
  option?.spread && answered(option.spread) ? option.spread.coats : [];

/** The coat looked at on one area: the one of the layer chosen, else the first that has pours, else the first. */
export function coatOn(coats: readonly Coat[], area: string | undefined, layer: string | null): Coat | null {
  const here = coats.filter(({ areas }) => area === undefined || areas.includes(area));
  return here.find((one) => one.layer === layer) ?? here.find(({ state }) => state === 'planned') ?? here[0] ?? null;
}

export const cellsFor = (cells: readonly CoatCells[], coat: Coat): CoatCells | null =>
  cells.find(({ layer, areas }) => layer === coat.layer && areas.join() === coat.areas.join()) ?? null;

/** A coat on its rooms: what the screen knows it by. */
export const coatKey = ({ layer, areas }: Coat): string => `${layer} ${areas.join()}`;
