/** Why a reading, a calibration step or an entry was not taken. For programs; the sentence is for people. */
export type RefusalReason =
  | 'saturated'
  | 'low-signal'
  | 'implausible'
  | 'not-a-number'
  | 'channels-differ'
  | 'settings-differ'
  | 'lamp-state'
  | 'light-leak'
  | 'lamp-drift'
  | 'white-drift'
  | 'white-order'
  | 'too-few'
  | 'entry';

/** Not taken: what was seen, what is allowed, what to do next, in one sentence. Nothing was changed. */
export class ReadingRefused extends Error {
  readonly reason: RefusalReason;
  /** Names of the channels it concerns; empty when it concerns all. */
  readonly channels: readonly string[];

  constructor(reason: RefusalReason, sentence: string, channels: readonly string[] = []) {
    super(sentence);
    this.name = 'ReadingRefused';
    this.reason = reason;
    this.channels = channels;
  }
}
