import { describe, expect, it } from 'vitest';
import { controlLimits } from '../../web/src/charts/control-limits.ts';

describe('controlLimits', () => {
  it('has no limits for no reading or one', () => {
    expect(controlLimits([])).toBeUndefined();
    expect(controlLimits([3])).toBeUndefined();
  });

  it('has no width when every reading is the same', () => {
    expect(controlLimits([2, 2, 2])).toEqual({ centre: 2, lower: 2, upper: 2 });
  });

  it('meets the worked example of individuals in the NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2', () => {
    // Data and limits as remembered of that page (from memory): mean 50.81, mean moving range 1.8778, UCL 55.8041, LCL 45.8159.
    const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
    const { centre, lower, upper } = controlLimits(flow)!;
    expect(centre).toBeCloseTo(50.81, 2);
    expect(upper).toBeCloseTo(55.8041, 3);
    expect(lower).toBeCloseTo(45.8159, 3);
  });
});
