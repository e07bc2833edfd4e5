import type { Job } from '../../job.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { MixedProduct } from '../as-mixed.ts';
import { type OptionContext, productOf } from '../context.ts';
import { bridgingClaims } from '../cracks/bridging.ts';
import type { Handled } from '../cracks/handled.ts';
import { cracks } from '../cracks/index.ts';
import { needs } from '../needs/index.ts';
import { preparation } from '../preparation/index.ts';
import type { CrackPlan, NeedsPlan, PreparationPlan, SitePlan, SurveyPlan } from '../results.ts';
import type { Margin } from './margins.ts';

/**
 * Answers that many systems have in common, each worked out once. The keys name everything of a system that the step
 * reads; a test compares the ranking with the plan of each system, so that a key which forgets something is found.
 */
export class Shared {
  private readonly surveyed: SurveyPlan;
  readonly site: SitePlan | undefined;
  private readonly prepared = new Map<string, PreparationPlan>();
  private dayless: Job | undefined;
  private readonly needed = new Map<string, NeedsPlan>();
  private readonly judged = new Map<string, readonly CrackPlan[]>();
  private readonly ofSheet = new Map<string, readonly Margin[]>();
  private readonly ofRoom = new Map<string, readonly Margin[]>();
  /** Told when something was worked out for others too, so that its numbers stay with the ranking. */
  private readonly made: () => void;

  constructor(surveyed: SurveyPlan, site: SitePlan | undefined, made: () => void) {
    this.surveyed = surveyed;
    this.site = site;
    this.made = made;
  }

  /**
   * The same option on a day nobody looks at: work is counted alike, and the gates of the hours, which need starts that
   * no tried system has, are not judged.
   */
  withoutDay(ctx: Handled): Handled {
    this.dayless ??= { ...ctx.job, use: withoutDates(ctx.job.use), survey: { ...ctx.job.survey, climate: [] } };
    return { ...ctx, job: this.dayless };
  }

  /**
   * The option with its cracks and joints judged. Of a system that reads only which cracks its films were shown to
   * bridge, and what elongation its sheets state beside.
   */
  handled(ctx: OptionContext, trace: Trace): Handled {
    const key = JSON.stringify(
      ctx.system.layers.map((layer) => [
        layer.id,
        bridgingClaims(productOf(ctx, layer)).map(({ property }) => property),
      ]),
    );
    return { ...ctx, lines: once(this.judged, key, () => cracks(ctx, this.surveyed, trace, this.site).cracks) };
  }

  /** Preparation reads the profile asked for, else the films it follows from; the bond asked for; what stands up. */
  preparation(ctx: Handled, trace: Trace): PreparationPlan {
    const { layers, profile } = ctx.system;
    const first = layers.find(({ onConcrete }) => onConcrete) ?? layers[0];
    const stated = profile ?? (first ? productOf(ctx, first).profile : undefined);
    const films = layers.map(({ product, wetFilm, dryFilm }) => [product, wetFilm?.value, dryFilm?.value]);
    const key = JSON.stringify([
      stated ? [stated.least, stated.most] : films,
      layers.map((layer) => productOf(ctx, layer).bondNeed?.value),
      layers.some(({ verticals }) => verticals),
      ctx.lines?.map(({ planned }) => planned),
    ]);
    return once(this.prepared, key, () => preparation(ctx, this.surveyed, trace));
  }

  /** Needs read the products, which of them meets the concrete, and what the job says. */
  needs(ctx: OptionContext, trace: Trace): NeedsPlan {
    const key = JSON.stringify(ctx.system.layers.map(({ product, onConcrete }) => [product, onConcrete ?? false]));
    return once(this.needed, key, () => {
      const found = needs(ctx, trace);
      this.made();
      return found;
    });
  }

  /** Margins of one sheet on this slab, whatever system its product lies in. */
  readMargins(product: MixedProduct, make: () => readonly Margin[]): readonly Margin[] {
    return once(this.ofRoom, keyOf(product), make);
  }

  /** The same of what does not hang on the hour. */
  sheetMargins(product: MixedProduct, make: () => readonly Margin[]): readonly Margin[] {
    return once(this.ofSheet, keyOf(product), make);
  }
}

const keyOf = ({ id, mixed = '' }: MixedProduct): string => `${id}/${mixed}`;

/** Traffic decides on re-cut joints and stays; the dates only on the gates. */
function withoutDates(use: Job['use']): Job['use'] {
  const { footBy: _, vehicleBy: __, ...rest } = use ?? {};
  return rest;
}

function once<T>(known: Map<string, T>, key: string, make: () => T): T {
  const found = known.get(key) ?? make();
  known.set(key, found);
  return found;
}
