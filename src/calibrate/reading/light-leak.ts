/** Room light under the port: the dark on the sample lies above the dark on the black trap. */
import { LIGHT_LEAK_LIMIT } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import { ReadingRefused } from '../refusal.ts';
import { type CountFrame, basicCounts } from './counts.ts';

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
  const name = channels[channel] ?? `channel ${channel + 1}`;
  throw new ReadingRefused(
    'light-leak',
    `Room light gets in: ${perCent(share)} of the white in ${name} with the lamp off, and ` +
      `${perCent(LIGHT_LEAK_LIMIT)} is allowed; seat the head flat on the swatch or shade it.`,
    [name],
  );
}
