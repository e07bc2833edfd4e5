import type { Job } from '../../job.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenField } from '../context.ts';

/**
 * Open time by the crew's own test: a square metre rolled, tied in after 3, 5, 8 … minutes. What was learnt is the
 * last tie-in that vanished before the first that stayed; a later lucky one is not believed.
 */
export function openTimesTried(trace: Trace, job: Job): readonly Said[] {
  return (job.survey.openTimeTests ?? []).map((test, i): Said => {
    const t = trace.within(`open-time-test.${i}`);
    const slab = givenField(t, 'slab', test.slab, 'reading', { when: test.on });
    const inOrder = [...test.ties].sort((a, b) => a.after.value - b.after.value);
    const stayed = inOrder.findIndex(({ vanished }) => !vanished);
    const last = (stayed < 0 ? inOrder : inOrder.slice(0, stayed)).at(-1);
    const names = { product: test.product };
    if (!last) {
      const shortest = inOrder[0];
      if (!shortest) throw new Error('an open time test without ties passed its schema');
      const first = givenField(t, 'first', shortest.after, 'own test', { when: test.on });
      return { code: 'survey-open-time-below', figures: { first: first.id, slab: slab.id }, names };
    }
    const time = givenField(t, 'last', last.after, 'own test', { when: test.on });
    const figures = { time: time.id, slab: slab.id };
    return { code: stayed < 0 ? 'survey-open-time-at-least' : 'survey-open-time', figures, names };
  });
}
