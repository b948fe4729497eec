import { describe, expect, it } from 'vitest';
import { faultTrials } from './fault-trials.ts';

/** The full count of 100 000 is printed by `npm run bench -- fault-trials`; here a smaller one stands guard. */
const TRIALS = 2000;

describe('a wire that damages every answer', () => {
  it('never gets a wrong reading accepted when answers carry checksums', async () => {
    const count = await faultTrials(TRIALS, true, 20_261_125);
    console.log('with checksums', count);
    expect(count.wrong).toBe(0);
    // The trials must bite: most need the repeat, and some end in faults.
    expect(count.rightAfterRepeat).toBeGreaterThan(TRIALS / 2);
  });
  it('gets some accepted without them: which is why the host always asks for them', async () => {
    const count = await faultTrials(TRIALS, false, 20_261_125);
    console.log('without checksums', count);
    expect(count.wrong).toBeGreaterThan(0);
    // Only damage that looks like a reading in every other way gets through.
    expect(Object.keys(count.wrongBy)).not.toContain('an older frame in its place');
  });
});
