import type { Command } from 'commander';
import { ILLUMINANTS } from '../../src/colour/illuminant.ts';

export interface WhiteOptions {
  readonly illuminant: string;
  readonly observer: string;
}

/** The viewing white of a colour, the same words for every verb. */
export function withWhite(command: Command): Command {
  return command
    .option('--illuminant <name>', `one of ${ILLUMINANTS.join(', ')}`, 'D65')
    .option('--observer <name>', '2deg or 10deg', '10deg');
}
