import type { Trace } from '../../kernel/trace.ts';
import { givenCount, type OptionContext } from '../context.ts';
import { type Coat, type Found, NOTHING } from './coat.ts';

/** The profile the system asks for against the one the sheet of the first coat asks for: no floor can be both. */
export function profileFit(ctx: OptionContext, coats: readonly Coat[], trace: Trace): Found {
  const wanted = ctx.system.profile;
  const first = coats.find((coat) => coat.layer.onConcrete) ?? coats[0];
  const stated = first?.product.profile;
  if (!wanted || !first || !stated) return NOTHING;
  if (Math.max(wanted.least, stated.least) <= Math.min(wanted.most, stated.most)) return NOTHING;
  const t = trace.within('profile');
  const figures = {
    systemLeast: givenCount(t, 'system-least', wanted.least, 'chosen', ctx.system.name).id,
    systemMost: givenCount(t, 'system-most', wanted.most, 'chosen', ctx.system.name).id,
    sheetLeast: givenCount(t, 'sheet-least', stated.least, 'data sheet', first.sheet).id,
    sheetMost: givenCount(t, 'sheet-most', stated.most, 'data sheet', first.sheet).id,
  };
  const names = { layer: first.name, system: ctx.system.name };
  return {
    reasons: [
      {
        code: 'system-profile-conflict',
        verdict: 'stop',
        figures,
        names,
        source: figures.sheetLeast,
        lift: { code: 'system-profile-conflict-lift', figures, names },
      },
    ],
  };
}
