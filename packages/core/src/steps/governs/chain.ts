import type { System } from '../../catalogue.ts';
import type { BondLink } from '../results.ts';

/** Where a link lies, before anything is known of its strength. */
export type Place = Pick<BondLink, 'id' | 'kind' | 'letter' | 'says'> & { readonly layer?: System['layers'][number] };

const letter = (n: number): string => String.fromCharCode('A'.charCodeAt(0) + n);

/** The chain from the concrete up: concrete, then for each coat the plane under it and the coat itself. */
export function placesOf(system: System): readonly Place[] {
  const concrete: Place = { id: 'concrete', kind: 'concrete', letter: 'A', says: { code: 'governs-link-concrete' } };
  return [
    concrete,
    ...system.layers.flatMap((layer, i): readonly Place[] => {
      const below = system.layers[i - 1];
      const over = layer.name ?? layer.id;
      const under = below ? (below.name ?? below.id) : '@governs-the-concrete';
      return [
        {
          id: `${below?.id ?? 'concrete'}/${layer.id}`,
          kind: 'interface',
          letter: `${letter(i)}/${letter(i + 1)}`,
          says: { code: 'governs-link-interface', names: { under, over } },
          layer,
        },
        {
          id: layer.id,
          kind: 'coat',
          letter: letter(i + 1),
          says: { code: 'governs-link-coat', names: { coat: over } },
          layer,
        },
      ];
    }),
  ];
}
