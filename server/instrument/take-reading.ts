import { ReadingRefused } from '../../src/calibrate/refusal.ts';
import type { BenchReading, InstrumentOptions } from './bench-reading.ts';
import type { TakenExposure } from './exposures.ts';
import { formOfHead } from './head-channels.ts';
import type { HeadSession } from './head-session.ts';
import { liveReading } from './live-reading.ts';
import { lightFindings, refusedFinding } from './reading-findings.ts';

/** Makes a reading of an exposure and tells the pages of it, refused or not. @throws ReadingRefused */
export function makeReading(
  session: HeadSession,
  { clock, now, read }: Pick<InstrumentOptions, 'clock' | 'now' | 'read'>,
  taken: TakenExposure,
): BenchReading {
  const { head, scale } = session;
  session.kelvin = taken.light.kelvin;
  const form = formOfHead(head);
  const findings = lightFindings(taken.light);
  const about = { at: now(), channels: session.channels.map((i) => head.channels[i]!), form };
  let calibrated;
  try {
    calibrated = scale.calibrate(taken.exposure);
  } catch (error) {
    if (error instanceof ReadingRefused) {
      const refused = refusedFinding(error);
      read(liveReading(taken, { ...about, accepted: false, findings: [...findings, refused] }));
    }
    throw error;
  }
  scale.countReading();
  const due = scale.whiteDue(clock.now(), session.kelvin);
  if (due) findings.push({ level: 'warning', code: 'white-due', sentence: due });
  const { reflectance } = calibrated;
  const live = liveReading(taken, { ...about, accepted: true, findings, reflectance });
  read(live);
  return {
    source: session.practice ? 'practice' : 'head',
    form,
    values: [...(reflectance ?? [])],
    raw: {
      instrument: session.name,
      light: taken.exposure.light,
      dark: taken.exposure.dark,
      kelvin: taken.light.kelvin ?? null,
      block: session.block ?? null,
      signal: [...calibrated.signal],
      atMs: Date.parse(now()),
      ...scale.record(),
    },
    live,
  };
}
