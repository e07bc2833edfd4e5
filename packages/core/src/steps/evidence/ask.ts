import type { Said } from '../../kernel/said.ts';
import type { Claim } from './claim.ts';
import type { Family } from './methods.ts';

/** What the maker of one product would have to say before a property of it can be compared. */
export interface Ask {
  readonly product: string;
  readonly name: string;
  readonly property: string;
  /** The claim in question as its sheet writes it; none where the sheet is silent on the property. */
  readonly claim?: string;
  readonly wanted: readonly Said[];
}

const kebab = (key: string): string => key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** Gaps of one claim, whatever it is compared with. */
export function asksOf(claim: Claim): readonly Said[] {
  const { family, method, conditions, property, value } = claim;
  if (family.methods.length === 0) return [{ code: 'evidence-ask-test' }];
  if (!method) return [{ code: 'evidence-ask-method' }];
  const missing = method.must
    .filter((key) => conditions[key] === undefined)
    .map(
      (key): Said => ({ code: 'evidence-ask-condition', names: { condition: `@evidence-condition-${kebab(key)}` } }),
    );
  const mode: readonly Said[] =
    method.mode && property.failureMode === undefined ? [{ code: 'evidence-ask-mode' }] : [];
  const density: readonly Said[] =
    value.kind === 'number' && value.unit === 'kg' ? [{ code: 'evidence-ask-density' }] : [];
  const number: readonly Said[] =
    value.kind === 'words' && (method.units || method.order) ? [{ code: 'evidence-ask-number' }] : [];
  return [...missing, ...mode, ...density, ...number];
}

/** The whole result of a property that others state and this sheet leaves out. */
export const askAll = (family: Family): readonly Said[] => [
  { code: 'evidence-ask-all', names: { property: `@evidence-property-${family.id}` } },
];
