/** Which step of setting the head comes next. */
import type { Instrument } from '../../../../server/api/instrument.ts';

export type StepName = Instrument['steps'][number]['step'];

/** The first step that is not good and may not be left out; undefined when the head is set. */
export function neededStep(instrument: Instrument): StepName | undefined {
  return instrument.steps.find((s) => s.state !== 'good' && !s.optional)?.step;
}

/** What the bench asks for: what is needed, then the black trap, which may be left out but should not be. */
export function nextStep(instrument: Instrument): StepName | undefined {
  const trap = instrument.steps.find((s) => s.step === 'black trap' && s.state === 'not done');
  return neededStep(instrument) ?? trap?.step;
}

/** Is a head on the line at all? */
export function isOn(instrument: Instrument | undefined): instrument is Instrument {
  return instrument !== undefined && (instrument.state === 'ready' || instrument.state === 'reading');
}
