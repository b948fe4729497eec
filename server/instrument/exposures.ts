import type { CountFrame, Exposure } from '../../src/calibrate/reading/counts.ts';
import type { Head } from '../../src/device/head/head.ts';
import type { HeadReading } from '../../src/device/head/reading.ts';

/** Frame to the channels that carry colour. */
export function frameOf(reading: HeadReading, channels: readonly number[]): CountFrame {
  return {
    counts: channels.map((i) => reading.counts[i]!),
    gain: reading.gain,
    apertureS: reading.apertureS,
    lamp: reading.lamp,
  };
}

export interface TakenExposure {
  readonly exposure: Exposure;
  readonly light: HeadReading;
  readonly dark: HeadReading;
}

/** Lamp off, then lamp on, on whatever lies under the head. @throws DeviceFault */
export async function expose(head: Head, channels: readonly number[]): Promise<TakenExposure> {
  const dark = await head.readDark();
  return pair(await head.read(), dark, channels);
}

/** After a press of the head's own button the light frame is there already. @throws DeviceFault */
export async function exposeAfterPress(
  head: Head,
  light: HeadReading,
  channels: readonly number[],
): Promise<TakenExposure> {
  return pair(light, await head.readDark(), channels);
}

function pair(light: HeadReading, dark: HeadReading, channels: readonly number[]): TakenExposure {
  return { exposure: { light: frameOf(light, channels), dark: frameOf(dark, channels) }, light, dark };
}
