import type { PaletteProfile } from './schema.ts';

/**
 * The profile as it is handed on by default: the maker and batch a painter noted for a tube are left out, and with
 * `labels: 'pigments'` the label is too (a typed label can hold a maker's name), replaced by the pigment codes.
 */
export function withoutMakers(
  profile: PaletteProfile,
  options: { readonly labels?: 'kept' | 'pigments' } = {},
): PaletteProfile {
  return {
    ...profile,
    tubes: profile.tubes.map(({ maker: _maker, batch: _batch, ...tube }, i) =>
      options.labels === 'pigments'
        ? { ...tube, label: tube.pigments.join(' + ') || (tube.role === 'white' ? 'white' : `tube ${i + 1}`) }
        : tube,
    ),
  };
}
