import air from './sources/air.json' with { type: 'json' };
import bond from './sources/bond.json' with { type: 'json' };
import climate from './sources/climate.json' with { type: 'json' };
import cracks from './sources/cracks.json' with { type: 'json' };
import dust from './sources/dust.json' with { type: 'json' };
import evidence from './sources/evidence.json' with { type: 'json' };
import film from './sources/film.json' with { type: 'json' };
import hours from './sources/hours.json' with { type: 'json' };
import mix from './sources/mix.json' with { type: 'json' };
import moisture from './sources/moisture.json' with { type: 'json' };
import movement from './sources/movement.json' with { type: 'json' };
import power from './sources/power.json' with { type: 'json' };
import preparation from './sources/preparation.json' with { type: 'json' };
import price from './sources/price.json' with { type: 'json' };
import safety from './sources/safety.json' with { type: 'json' };
import shape from './sources/shape.json' with { type: 'json' };
import statistics from './sources/statistics.json' with { type: 'json' };
import surface from './sources/surface.json' with { type: 'json' };
import vapour from './sources/vapour.json' with { type: 'json' };
import voc from './sources/voc.json' with { type: 'json' };

/** How a source was seen: read in its text, remembered, or worked out by ourselves. */
export type SourceMark = 'READ' | 'MEM' | 'CALC' | 'PRACTICE';

/** One entry of the bibliography. Addresses of pages stand here and nowhere else. */
export interface Source {
  readonly title: string;
  readonly author?: string;
  readonly publisher?: string;
  readonly year?: number;
  readonly address?: string;
  readonly mark: SourceMark;
  readonly note?: string;
}

/** One file per family; a new file is one line here. */
const FILES: readonly Readonly<Record<string, unknown>>[] = [
  air,
  bond,
  climate,
  cracks,
  dust,
  evidence,
  film,
  hours,
  mix,
  moisture,
  movement,
  power,
  preparation,
  price,
  safety,
  shape,
  statistics,
  surface,
  vapour,
  voc,
];

function merged(): ReadonlyMap<string, Source> {
  const all = new Map<string, Source>();
  for (const file of FILES) {
    for (const [key, source] of Object.entries(file)) {
      if (all.has(key)) throw new Error(`two sources with the key ${key}`);
      all.set(key, source as Source);
    }
  }
  return all;
}

/** The whole bibliography by key. */
export const SOURCES = merged();

/** The source under a key. Throws when there is none: a formula or row that cites nothing is a mistake of ours. */
export function sourceOf(key: string): Source {
  const source = SOURCES.get(key);
  if (!source) throw new Error(`no source with the key ${key}`);
  return source;
}
