import { GRID_NM, GRID_SIZE } from '../../src/colour/grid.ts';
import type { PaletteProfile, ProfileTube } from '../../src/profile/schema.ts';

/** An invented palette of three tubes, for tests of the format: no such paint was measured. */
export function inventedProfile(): PaletteProfile {
  const column = (f: (i: number) => number): number[] =>
    Array.from({ length: 2 * GRID_SIZE }, (_, i) => f(i));
  const tube = (id: string, K: (nm: number) => number, S: (nm: number) => number): ProfileTube => ({
    id,
    label: `invented ${id}`,
    pigments: [],
    K: GRID_NM.map(K),
    S: GRID_NM.map(S),
    covariance: {
      own: [column((i) => 0.01 * Math.cos(i / 7)), column((i) => (i < GRID_SIZE ? 0.005 : 0.02))],
      shared: [column((i) => 0.002 * Math.sin(i / 5))],
    },
  });
  return {
    format: 'palette-profile',
    version: 1,
    title: 'invented for tests',
    created: '2026-01-31T10:00:00Z',
    generator: { name: 'tintladder', version: '0.1.0' },
    basis: 'mass',
    wavelengths: [...GRID_NM],
    geometry: '45/0',
    surface: { form: '45/0', refractiveIndex: 1.5, k1: 0.04, k2: 0.5963458, escape: 0.405231, haze: 0 },
    white: 'white',
    tubes: [
      {
        ...tube(
          'white',
          () => 0.003,
          () => 1,
        ),
        pigments: ['PW6'],
        role: 'white',
      },
      {
        ...tube(
          'blue',
          (nm) => 0.2 + 3 * Math.exp(-(((nm - 600) / 70) ** 2)),
          () => 0.06,
        ),
        pigments: ['PB29'],
        density: 1.4,
      },
      {
        ...tube(
          'earth',
          (nm) => 4 / (1 + Math.exp((nm - 560) / 25)) + 0.1,
          (nm) => 0.3 + nm / 4000,
        ),
        pigments: ['PR101'],
      },
    ],
    discrepancy: { sdLnKS: GRID_NM.map(() => 0.03), correlationNm: 60 },
    weighing: { resolution: 0.01 },
    noise: { sigma: 0.0006, relative: 0.004 },
  };
}
