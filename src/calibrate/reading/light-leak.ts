/** Room light under the port: the dark on the sample lies above the dark on the black trap. */
import { LIGHT_LEAK_LIMIT } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import type { HeadTest } from '../linearity/superposition.ts';
import { ReadingRefused } from '../refusal.ts';
import { type CountFrame, basicCounts } from './counts.ts';
import { say } from './sentences.ts';

/** Largest leak of any channel as a share of the white (dark-subtracted basic counts), with its channel's index. */
export function lightLeak(
  darkOnSample: CountFrame,
  darkOnTrap: CountFrame,
  white: Float64Array,
): { share: number; channel: number } {
  const sample = basicCounts(darkOnSample);
  const trap = basicCounts(darkOnTrap);
  let worst = { share: 0, channel: 0 };
  white.forEach((w, i) => {
    const seen = (sample[i]! - trap[i]!) / w;
    const share = Number.isFinite(seen) ? seen : Number.POSITIVE_INFINITY;
    if (share > worst.share) worst = { share, channel: i };
  });
  return worst;
}

/** @throws ReadingRefused `light-leak` above 0.2 % of the white */
export function holdLightTight(
  darkOnSample: CountFrame,
  darkOnTrap: CountFrame,
  white: Float64Array,
  channels: readonly string[],
): void {
  const { share, channel } = lightLeak(darkOnSample, darkOnTrap, white);
  if (share <= LIGHT_LEAK_LIMIT) return;
  const name = channels[channel] ?? say('channel', { number: channel + 1 });
  throw new ReadingRefused(
    'light-leak',
    say('room-light', { share: perCent(share), channel: name, allowed: perCent(LIGHT_LEAK_LIMIT) }),
    [name],
  );
}

/** The same as a test of the head where it lies: passed or not, with what was seen. `leak` is `lightLeak`'s. */
export function lightLeakTest(
  leak: { readonly share: number; readonly channel: number },
  channels: readonly string[],
): HeadTest {
  const { share } = leak;
  const channel = channels[leak.channel] ?? say('channel', { number: leak.channel + 1 });
  const passed = share <= LIGHT_LEAK_LIMIT;
  const seen = say('light-got-in', { share: perCent(share) });
  const allowed = perCent(LIGHT_LEAK_LIMIT);
  return {
    passed,
    worst: share,
    channel,
    sentence: passed
      ? say('light-tight', { seen, allowed })
      : say('not-light-tight', { seen, channel, allowed }),
  };
}
