import { useCallback, useMemo } from 'react';
import { usePlan } from '../job/job-context.tsx';
import { answered } from '../worker/plan-types.ts';
import { placeName } from './names.ts';

/** Names places of the plan as people call them: products and coats by their names, the option looked at not at all. */
export function usePlaceName(): (id: string) => string {
  const { planned, plan, optionId } = usePlan();
  const called = useMemo(() => {
    const names = new Map(Object.entries(planned?.names ?? {}));
    for (const option of plan?.options ?? []) {
      if (answered(option.system)) for (const { layer, name } of option.system.layers) names.set(layer, name);
    }
    for (const { id, name } of plan?.options ?? []) names.set(id, id === optionId ? '' : name);
    return names;
  }, [planned, plan, optionId]);
  return useCallback((id: string) => placeName(id, called), [called]);
}
