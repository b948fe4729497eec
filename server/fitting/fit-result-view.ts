import { GRID_NM } from '../../src/colour/grid.ts';
import type { FittedSwatch, PaletteFit, RungEvidence, TubeFit } from '../../src/fit/palette-fit.ts';
import { predictWithCovariance } from '../../src/fit/predict.ts';
import type { FitResult, TubeFitAnswer } from '../api/fits.ts';
import { readingFormOf } from '../importing/reading-form-of.ts';
import { channelNames, colourOfReading, colourOfReflectance } from '../views/colour-view.ts';
import { constantCurves, reflectanceCurve } from './band-curve.ts';
import type { FitJob } from './fit-job.ts';
import { readsLike } from './reads-like.ts';
import { suggestionsFor } from './suggestions.ts';

/** What the Constants screen shows of a fit. */
export function fitResultView(fit: PaletteFit, job: FitJob): Omit<FitResult, 'fit'> {
  const form = readingFormOf(job.set.instrument);
  const swatches = new Map(fit.swatches.map((s) => [s.id, s]));
  const rungView = (tubeId: string, rung: RungEvidence): TubeFitAnswer['rungs'] => {
    const fitted = swatches.get(rung.id);
    if (!fitted) return [];
    const origin = job.rungs[rung.id];
    return [
      {
        swatchId: rung.id,
        rungId: origin?.rungId ?? null,
        name: origin?.name ?? underTube(tubeId, rung.id),
        share: rung.share,
        measured: [...fitted.mean],
        fitted: [...fitted.predicted],
        spectrum: spectrumOf(fit, fitted),
        measuredColour: colourOfReading([...fitted.mean], form),
        fittedColour: colourOfReflectance(fitted.reflectance, 'prediction'),
        deltaE00: rung.deltaE00,
        leftOutDeltaE00: rung.leftOutDeltaE00 ?? null,
        lnRatioError: rung.lnRatioError,
        readsLike: readsLike(rung.share, rung.lnRatioError),
        repeats: rung.repeats,
        mcdm: rung.mcdm ?? null,
      },
    ];
  };
  return {
    wavelengths: [...GRID_NM],
    geometry: fit.palette.geometry,
    channels: channelNames(form),
    surface: { ...fit.palette.surface, estimated: { ...fit.surfaceSds } },
    tubes: fit.tubes.map((tube) =>
      tubeView(
        fit,
        job,
        tube,
        tube.evidence.rungs.flatMap((rung) => rungView(tube.tube.id, rung)),
      ),
    ),
  };
}

/** A swatch of a file as it is called where its tube stands above it: "deep-blue-1:4" is "1:4". */
function underTube(tubeId: string, swatchId: string): string {
  const rest = swatchId.startsWith(tubeId) ? swatchId.slice(tubeId.length).replace(/^[\s_./-]+/, '') : '';
  return rest || swatchId;
}

function spectrumOf(fit: PaletteFit, fitted: FittedSwatch): TubeFitAnswer['rungs'][number]['spectrum'] {
  // A thin film's band needs its card; the Constants screen shows its reading and its fit channel by channel.
  if (fitted.film !== 'opaque') return null;
  const { measured, factor } = predictWithCovariance(fit.palette, fitted.masses);
  return reflectanceCurve(measured, factor);
}

function tubeView(
  fit: PaletteFit,
  job: FitJob,
  whole: TubeFit,
  rungs: TubeFitAnswer['rungs'],
): TubeFitAnswer {
  const { tube, constants, evidence } = whole;
  const { white } = fit.palette;
  const isWhite = tube.id === white;
  const predicted = (masses: Record<string, number>) =>
    colourOfReflectance(predictWithCovariance(fit.palette, masses).measured, 'prediction');
  return {
    tubeId: tube.id,
    label: tube.label ?? tube.id,
    pigments: [...(tube.pigments ?? [])],
    role: isWhite ? 'white' : null,
    ...constantCurves(constants),
    rungs,
    status: evidence.status,
    message: evidence.message,
    reducedChiSquare: evidence.reducedChiSquare,
    trust: evidence.trust,
    warnings: [...evidence.warnings],
    suggestions: suggestionsFor(fit, job, whole, rungs),
    notBelieved: notBelieved(fit, job, tube.id),
    masstone: predicted({ [tube.id]: 1 }),
    tint: isWhite ? null : predicted({ [tube.id]: 1, [white]: 4 }),
    findings: evidence.warnings.map((sentence) => ({ level: 'warning' as const, code: 'fit', sentence })),
  };
}

/** Rungs of a tube that were left out because they were not believed. */
function notBelieved(fit: PaletteFit, job: FitJob, tubeId: string): TubeFitAnswer['notBelieved'] {
  return fit.leftOut
    .filter((rung) => rung.tube === tubeId)
    .map(({ swatches, words, weighed, readsLike: reads, probability, swapped }) => {
      const origin = job.rungs[swatches[0]!];
      return {
        swatchIds: [...swatches],
        rungId: origin?.rungId ?? null,
        name: origin?.name ?? underTube(tubeId, swatches[0]!),
        sentence: words,
        weighed: weighed ?? null,
        readsLike: reads ?? null,
        probability: probability ?? null,
        swapped: swapped ?? false,
      };
    });
}
