import { type CountFrame, type Exposure, signalOf } from '../../src/calibrate/reading/counts.ts';
import { holdLampSteady } from '../../src/calibrate/reading/lamp-drift.ts';
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

/** Lamp off, then lamp on, on whatever lies under the head. @throws DeviceFault; ReadingRefused `lamp-drift` */
export async function expose(head: Head, channels: readonly number[]): Promise<TakenExposure> {
  const dark = await head.readDark();
  return pair(await head.read(), dark, channels);
}

/** After a press of the head's own button the light frame is there already. @throws as `expose` */
export async function exposeAfterPress(
  head: Head,
  light: HeadReading,
  channels: readonly number[],
): Promise<TakenExposure> {
  return pair(light, await head.readDark(), channels);
}

/** Mean of the dark-subtracted basic counts of several exposures. @throws DeviceFault, ReadingRefused */
export async function meanSignal(
  head: Head,
  channels: readonly number[],
  times: number,
): Promise<Float64Array> {
  const sum = new Float64Array(channels.length);
  const names = channels.map((i) => head.channels[i]!.name);
  const counting = { channels: names, fullScale: head.settings.fullScale };
  for (let n = 0; n < times; n += 1) {
    const { exposure } = await expose(head, channels);
    signalOf(exposure, counting).forEach((s, c) => (sum[c]! += s / times));
  }
  return sum;
}

function pair(light: HeadReading, dark: HeadReading, channels: readonly number[]): TakenExposure {
  holdLampSteady(light);
  return { exposure: { light: frameOf(light, channels), dark: frameOf(dark, channels) }, light, dark };
}
