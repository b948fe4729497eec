import { GRID_NM } from '../../../../src/colour/grid.ts';
import { DEFAULT_WHITE, type WhiteName } from '../../../../src/colour/illuminant.ts';
import { labOf, labOfReflectance } from '../../../../src/colour/lab.ts';
import { lampWeights } from '../../../../src/colour/lamp-weights.ts';
import type { TypedReading } from '../../../../server/api/readings.ts';
import { call } from '../../api/call.ts';
import type { WantedColour } from './mix-state.ts';
import { said } from '../../text/said.ts';

/** A typed reading as a colour: a spectrum where it was read on the whole grid, else its Lab. */
export function colourOfTyped(reading: TypedReading): WantedColour {
  switch (reading.kind) {
    case 'Lab':
    case 'XYZ': {
      const [one, two, three] = reading.values as [number, number, number];
      const white: WhiteName = `${reading.illuminant}/${reading.observer}`;
      if (reading.kind === 'Lab') return { lab: { L: one, a: two, b: three, white } };
      const k = reading.scale === '1' ? 100 : 1;
      return { lab: labOf({ X: k * one, Y: k * two, Z: k * three, white }) };
    }
    case 'reflectance':
    case 'bands': {
      const nm = reading.kind === 'bands' ? reading.bands.map((b) => b.centre) : reading.wavelengths;
      const r = reading.scale === 'percent' ? reading.values.map((v) => v / 100) : reading.values;
      const lab = labOfReflectance(r, lampWeights(DEFAULT_WHITE, nm));
      const onGrid = nm.length === GRID_NM.length && nm.every((w, i) => w === GRID_NM[i]);
      return onGrid ? { lab, spectrum: r } : { lab };
    }
  }
}

/**
 * Reads what lies under the head now.
 * @throws Error with the head's own sentence when the reading was not taken.
 */
export async function readUnderHead(): Promise<WantedColour> {
  const reading = await call('readOnce');
  if (!reading.accepted || !reading.colour)
    throw new Error(reading.findings.map((f) => said(f.sentence)).join(' '));
  const { illuminant, observer } = reading.colour.white;
  const lab = { ...reading.colour.Lab, white: `${illuminant}/${observer}` as WhiteName };
  const { reflectance, channels } = reading;
  // A head that reads the whole grid says what the colour does under any lamp.
  const onGrid = channels.length === GRID_NM.length && channels.every((c, i) => c.centre === GRID_NM[i]);
  return reflectance && onGrid ? { lab, spectrum: reflectance } : { lab };
}
