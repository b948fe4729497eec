/**
 * A sensor that needs two passes for its bands reads its clear channel in both, and the head flags a frame whose two
 * disagree (flag 16, hardware-notes/protocol.md): the light changed while it was taken, so its bands do not belong
 * together.
 */
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

/** @throws ReadingRefused `lamp-drift` for a frame whose light changed while it was taken */
export function holdLampSteady(frame: { readonly lightChanged: boolean }): void {
  if (!frame.lightChanged) return;
  throw new ReadingRefused('lamp-drift', say('light-changed'));
}
