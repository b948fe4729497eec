import { FAULT_SENTENCES } from './fault-sentences.ts';

/** Everything that can go wrong between the program and a head. */
export const FAULT_KINDS = [
  // the port
  'no-serial-support',
  'permission',
  'busy',
  'waiting',
  'busy-or-denied',
  'missing',
  'not-a-serial-port',
  'open-timeout',
  'open-failed',
  // the line
  'disconnected',
  'timeout',
  'overlong',
  'crc',
  'no-crc',
  'frame',
  'stale',
  'sequence',
  'out-of-sync',
  // the head
  'no-answer',
  'protocol',
  'other-head',
  'settings',
  'saturated',
  'hardware',
  'refused',
  'unsupported',
  'out-of-range',
] as const;
export type FaultKind = (typeof FAULT_KINDS)[number];

export interface FaultDetails {
  /** The port, as a person calls it. */
  readonly port?: string;
  /** What was seen, in words or as received. */
  readonly seen?: string;
  /** What is allowed. */
  readonly allowed?: string;
  /** Names of the channels concerned. */
  readonly channels?: readonly string[];
  /** What was asked of the head when it happened. */
  readonly asked?: string;
  /** Number from the head's error queue. */
  readonly code?: number;
}

/**
 * A typed fault. `message` is one sentence for a person with paint on their hands: what was seen, what is allowed,
 * what to do next. `details` carry the evidence for a log or a screen.
 */
export class DeviceFault extends Error {
  override readonly name = 'DeviceFault';
  readonly kind: FaultKind;
  readonly details: FaultDetails;

  constructor(kind: FaultKind, details: FaultDetails = {}, options?: ErrorOptions) {
    super(FAULT_SENTENCES[kind](details), options);
    this.kind = kind;
    this.details = details;
  }
}

export function isDeviceFault(error: unknown): error is DeviceFault {
  return error instanceof DeviceFault;
}
