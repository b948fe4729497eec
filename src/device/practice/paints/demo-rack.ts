/**
 * The demo rack: eight INVENTED oil paints. Their curves were drawn by hand to look plausible for the pigment named;
 * none was measured from a tube, and no maker's paint is meant. Coefficients are per unit mass of tube paint, on a
 * scale where the white's scattering is 1 in mid-spectrum; densities are round guesses for an oil paste.
 */
import type { TransferPaint } from '../transfer/transfer-reflectance.ts';
import { above, bell, below, drawn, flat } from './shapes.ts';

/** Shown wherever the demo rack is. */
export const DEMO_NOTE = 'Invented demo paint: drawn by hand, not measured from any tube.';

export const DEMO_WHITE: TransferPaint = {
  id: 'demo-white',
  label: 'Demo white',
  pigments: ['PW6'],
  role: 'white',
  absorption: drawn(flat(0.00016), below(0.9, 386, 5), below(0.0006, 450, 22)),
  scattering: drawn(flat(0.92), below(0.16, 520, 90)),
  density: 2.0,
};

export const DEMO_YELLOW_EARTH: TransferPaint = {
  id: 'demo-yellow-earth',
  label: 'Demo yellow earth',
  pigments: ['PY43'],
  absorption: drawn(flat(0.018), below(1.1, 502, 18), bell(0.05, 650, 55), bell(0.1, 480, 22)),
  scattering: drawn(flat(0.34), above(0.2, 540, 28)),
  density: 1.6,
};

export const DEMO_RED_EARTH: TransferPaint = {
  id: 'demo-red-earth',
  label: 'Demo red earth',
  pigments: ['PR101'],
  absorption: drawn(flat(0.045), below(2.3, 556, 13), bell(0.09, 665, 45)),
  scattering: drawn(flat(0.62), above(0.34, 585, 22)),
  density: 1.8,
};

export const DEMO_YELLOW: TransferPaint = {
  id: 'demo-warm-yellow',
  label: 'Demo warm yellow',
  pigments: ['PY35'],
  absorption: drawn(flat(0.004), below(1.9, 498, 7.5)),
  scattering: drawn(flat(0.5), above(0.2, 510, 16)),
  density: 2.1,
};

export const DEMO_DEEP_BLUE: TransferPaint = {
  id: 'demo-deep-blue',
  label: 'Demo deep blue',
  pigments: ['PB29'],
  absorption: drawn(bell(1.35, 600, 42), bell(0.42, 545, 32), bell(0.2, 690, 38), flat(0.03)),
  scattering: drawn(flat(0.05), bell(0.03, 440, 45)),
  density: 1.4,
};

export const DEMO_STRONG_BLUE: TransferPaint = {
  id: 'demo-strong-blue',
  label: 'Demo strong blue',
  pigments: ['PB15'],
  absorption: drawn(bell(15, 622, 28), bell(13, 702, 32), bell(5, 572, 26), below(3.4, 390, 14), flat(0.34)),
  scattering: drawn(flat(0.16), bell(0.14, 470, 50)),
  density: 1.15,
};

export const DEMO_GREEN: TransferPaint = {
  id: 'demo-cold-green',
  label: 'Demo cold green',
  pigments: ['PG7'],
  absorption: drawn(
    bell(9, 645, 34),
    bell(7.5, 718, 32),
    bell(2.2, 590, 26),
    below(5.2, 431, 17),
    flat(0.24),
  ),
  scattering: drawn(flat(0.13), bell(0.08, 505, 40)),
  density: 1.2,
};

export const DEMO_BLACK: TransferPaint = {
  id: 'demo-bone-black',
  label: 'Demo bone black',
  pigments: ['PBk9'],
  absorption: drawn(flat(2.4), below(0.5, 560, 70)),
  scattering: drawn(flat(0.14)),
  density: 1.5,
};

/** The eight, white first. */
export const DEMO_RACK: readonly TransferPaint[] = [
  DEMO_WHITE,
  DEMO_YELLOW,
  DEMO_YELLOW_EARTH,
  DEMO_RED_EARTH,
  DEMO_DEEP_BLUE,
  DEMO_STRONG_BLUE,
  DEMO_GREEN,
  DEMO_BLACK,
];
