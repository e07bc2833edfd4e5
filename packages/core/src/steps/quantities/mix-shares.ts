import type { Product } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenField, sheetOf } from '../context.ts';
import { additionShare, componentShare, shareBesideAddition } from '../formulas/quantities-components.ts';

export interface ComponentShare {
  readonly component: string;
  readonly share: Known<'1'>;
  /** Part of the ratio, as against a tint that only comes with the kit. */
  readonly ofRatio: boolean;
}

/**
 * Share of the mixed volume each component has. A component named in the ratio keeps its parts; an addition that comes
 * in a kit without being named there adds its volume to the whole kit.
 */
export function mixShares(trace: Trace, product: Product): readonly ComponentShare[] {
  const t = trace.within('mix');
  const where = sheetOf(product);
  const parts = product.mix.map(({ component, parts: value }) =>
    t.given(`${component}.parts`, { value, unit: '1', origin: 'data sheet', where, shows: 'plain' }),
  );
  const ratio = product.mix.map(({ component }, i) => ({
    component,
    share: t.figure(`${component}.ratio-share`, componentShare, { part: parts[i] as Known<'1'>, parts }),
  }));
  const named = new Set(product.mix.map(({ component }) => component));
  const kit = product.packs.find(
    ({ parts: held }) =>
      [...named].every((c) => held.some((p) => p.component === c)) && held.some((p) => !named.has(p.component)),
  );
  if (!kit) return ratio.map((one) => ({ ...one, ofRatio: true }));

  const volumeOf = (component: string): Known<'m³'> => {
    const held = kit.parts.filter((part) => part.component === component);
    const [first] = held;
    if (!first) throw new Error(`pack ${kit.id} lost its component ${component}`);
    return givenField(t, `${component}.in-kit`, first.volume, 'data sheet', { where });
  };
  const volumes = product.mix.map(({ component }) => volumeOf(component));
  const extra = kit.parts.filter((part) => !named.has(part.component));
  const additions = extra.map((part) => volumeOf(part.component));
  const all = t.figure('addition-share', additionShare, { volumes, parts, additions, counted: additions });
  const beside = ratio.map(({ component, share }) => ({
    component,
    share: t.figure(`${component}.share`, shareBesideAddition, { share, additionShare: all }),
    ofRatio: true,
  }));
  const added = extra.map((part, i) => ({
    component: part.component,
    share: t.figure(`${part.component}.share`, additionShare, {
      volumes,
      parts,
      additions,
      counted: [additions[i] as Known<'m³'>],
    }),
    ofRatio: false,
  }));
  return [...beside, ...added];
}
