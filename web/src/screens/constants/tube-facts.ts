import type { TubeFitAnswer } from '../../../../server/api/fits.ts';
import type { PaletteProfile, ProfileTube } from '../../../../src/profile/schema.ts';
import { type ConstantCurve, constantCurve } from '../../charts/constants-band.ts';
import type { Patch } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import { patchOfAnswer } from '../../design/patch-of-answer.ts';
import type { Figure } from '../../parts/figures.ts';
import { constantsWords } from '../../text/constants.ts';
import { num } from '../../text/numbers.ts';
import type { Pull } from './ladder-pulls.ts';
import { said } from '../../text/said.ts';

/** K and S of a tube with their 95 % ranges: from the fit where there is one, else from the profile's covariance. */
export function curvesOf(
  tube: ProfileTube,
  fit: TubeFitAnswer | undefined,
): { K: ConstantCurve; S: ConstantCurve } {
  return fit ? { K: fit.K, S: fit.S } : { K: constantCurve(tube, 'K'), S: constantCurve(tube, 'S') };
}

/** The rungs as pulls; without a fit, as predicted from the profile's own constants. */
export function pullsOf(fit: TubeFitAnswer | undefined, predicted: ReadonlyMap<string, Patch>): Pull[] {
  if (!fit) return [...predicted].map(([name, patch]) => ({ name, predicted: patch }));
  return fit.rungs.flatMap((rung) => {
    const patch = rung.spectrum
      ? patchOfReflectance(rung.spectrum.value)
      : rung.fittedColour && patchOfAnswer(rung.fittedColour);
    if (!patch) return [];
    return [
      {
        name: rung.name,
        predicted: rung.fittedColour ? patchOfAnswer(rung.fittedColour) : patch,
        ...(rung.measuredColour ? { measured: patchOfAnswer(rung.measuredColour) } : {}),
        deltaE00: rung.deltaE00,
        ...(rung.readsLike ? { verdict: said(rung.readsLike) } : {}),
      },
    ];
  });
}

/** Trust in numbers, each with what it means. */
export function trustFigures(tube: ProfileTube): Figure[] {
  const t = constantsWords();
  const evidence = tube.evidence;
  if (!evidence) return [];
  const errors = evidence.rungs.map((r) => r.deltaE00);
  const left = evidence.rungs.flatMap((r) => (r.leftOutDeltaE00 === undefined ? [] : [r.leftOutDeltaE00]));
  return [
    { name: t.readings, figure: t.kinds[evidence.readings], means: t.kindsMean[evidence.readings] },
    ...(errors.length
      ? [
          {
            name: t.meanError,
            figure: num(errors.reduce((sum, v) => sum + v, 0) / errors.length, 1),
            means: t.meanErrorMeans,
          },
        ]
      : []),
    ...(left.length ? [{ name: t.leftOut, figure: num(Math.max(...left), 1), means: t.leftOutMeans }] : []),
    { name: t.chi, figure: num(evidence.reducedChiSquare, 2), means: t.chiMeans },
    { name: t.status, figure: t.statuses[evidence.status], means: t.iterations(evidence.iterations) },
  ];
}

/** The masses of the usual rungs of a tube, by their names. */
export function usualRungs(
  profile: PaletteProfile,
  tubeId: string,
): [name: string, masses: Record<string, number>][] {
  const t = constantsWords();
  if (tubeId === profile.white) return [[t.masstone, { [tubeId]: 1 }]];
  return [0, 1, 4, 16].map((parts) => [
    parts === 0 ? t.masstone : t.tint(String(parts)),
    parts === 0 ? { [tubeId]: 1 } : { [tubeId]: 1, [profile.white]: parts },
  ]);
}
