/** Setting the head, one step: what the bench and the ladder both ask of it. */
import type { Instrument } from '../../../../server/api/instrument.ts';
import { call } from '../../api/call.ts';
import type { StepName } from './bench-steps.ts';

/**
 * Reads one of the things a head is set on.
 * @param tile reflectance of the white tile, 0..1.1, where the painter knows it
 */
export function readStep(step: StepName, tile?: number): Promise<Instrument> {
  switch (step) {
    case 'dark':
      return call('readDark');
    case 'white tile':
      return call('readWhiteTile', { body: tile === undefined ? {} : { reflectance: tile } });
    case 'black trap':
      return call('readBlackTrap');
    case 'check tile':
      return call('readCheckTile');
  }
}
