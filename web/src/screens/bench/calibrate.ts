/** Setting the head, one step: what the bench and the ladder both ask of it. */
import type { Instrument } from '../../../../server/api/instrument.ts';
import { call } from '../../api/call.ts';
import type { StepName } from './bench-steps.ts';

/** Reads one of the things a head is set on; the white tile is the one chosen for this head. */
export function readStep(step: StepName): Promise<Instrument> {
  switch (step) {
    case 'dark':
      return call('readDark');
    case 'white tile':
      return call('readWhiteTile', { body: {} });
    case 'black trap':
      return call('readBlackTrap');
    case 'check tile':
      return call('readCheckTile');
  }
}
