/**
 * How well the white tile fills the head's scale. Too low wastes digits and light; too high leaves no room for a matt
 * white a little brighter than the tile, and the sensor may bend before it is full. 60-80 % is the aim (common
 * practice, no source).
 */
import type { CountFrame, CountingHead } from './counts.ts';
import { say } from './sentences.ts';

export const WHITE_AIM = 0.7;
const LEAST = 0.3;
const MOST = 0.9;

export interface WhiteLevel {
  readonly state: 'low' | 'good' | 'high';
  /** Fullest channel as a share of full scale. */
  readonly share: number;
  readonly channel: string;
  /** The gain, of those there are, that brings the fullest channel nearest below the aim's upper end; when it differs. */
  readonly gain: number | undefined;
  readonly sentence: string;
}

/** Judges a frame of the white tile, lamp on. `gains` are those the head has. */
export function whiteLevel(frame: CountFrame, head: CountingHead, gains: readonly number[] = []): WhiteLevel {
  const fullest = frame.counts.reduce((at, c, i) => (c > frame.counts[at]! ? i : at), 0);
  const share = (frame.counts[fullest] ?? 0) / head.fullScale;
  const channel = head.channels[fullest] ?? say('channel', { number: fullest + 1 });
  const state = share < LEAST ? 'low' : share > MOST ? 'high' : 'good';
  const fitting = gains
    .filter((g) => (share * g) / frame.gain <= WHITE_AIM + 0.1)
    .toSorted((a, b) => b - a)[0];
  const gain = state !== 'good' && fitting !== frame.gain ? fitting : undefined;
  const filled = { percent: Math.round(share * 100), channel };
  const advice =
    gain === undefined
      ? say('change-aperture', { way: state === 'low' ? 'lengthen' : 'shorten' })
      : say('change-gain', { gain });
  return {
    state,
    share,
    channel,
    gain,
    sentence: state === 'good' ? say('white-good', filled) : say('white-level', { ...filled, advice }),
  };
}
