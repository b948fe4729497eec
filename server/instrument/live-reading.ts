import type { Channel } from '../../src/device/head/channels.ts';
import type { LiveReading } from '../api/instrument.ts';
import type { ReadingForm } from '../api/readings.ts';
import type { Finding } from '../api/words.ts';
import { colourOfReading } from '../views/colour-view.ts';
import type { TakenExposure } from './exposures.ts';

export interface AboutReading {
  readonly at: string;
  /** In the order of the counts. */
  readonly channels: readonly Channel[];
  readonly form: ReadingForm;
  readonly accepted: boolean;
  readonly findings: readonly Finding[];
  readonly reflectance?: Float64Array | undefined;
}

/** A reading as the Bench draws it the moment it arrives, kept or not. */
export function liveReading({ exposure, light }: TakenExposure, about: AboutReading): LiveReading {
  const scale = exposure.light.gain * exposure.light.apertureS * 1000;
  const { reflectance } = about;
  return {
    at: about.at,
    accepted: about.accepted,
    findings: [...about.findings],
    channels: about.channels.map((c) => ({
      name: c.name,
      centre: c.centreNm ?? null,
      fwhm: c.fwhmNm ?? null,
    })),
    counts: exposure.light.counts.map((c, i) => (c - exposure.dark.counts[i]!) / scale),
    reflectance: reflectance ? [...reflectance] : null,
    colour: reflectance ? colourOfReading([...reflectance], about.form) : null,
    temperature: light.kelvin ?? null,
  };
}
