import { predictFrom } from '../../server/mixing/predict.ts';
import { whiteOf } from '../input.ts';
import { Rack } from '../rack.ts';
import { type Output, printJson, table } from '../output.ts';
import type { PredictOptions } from '../verbs/predict.ts';
import { runFilms } from './films.ts';

export function runPredict(file: string, options: PredictOptions, output: Output): void {
  const rack = new Rack(file);
  const { profile } = rack;
  const white = whiteOf(options);
  if (options.film !== undefined || options.glaze) return runFilms(rack, options, output);
  const { wavelengths, reflectance, colour, interval, warnings, lights } = predictFrom(
    profile,
    rack.masses(options.masses),
    white,
  );
  if (options.json) {
    printJson(output, {
      wavelengths,
      reflectance: reflectance.value,
      reflectance95: { low: reflectance.low, high: reflectance.high },
      geometry: profile.geometry,
      illuminant: colour.white.illuminant,
      observer: colour.white.observer,
      XYZ: colour.XYZ,
      Lab: colour.Lab,
      value: colour.value,
      lean: colour.lean,
      leanWord: colour.leanWord,
      chroma: colour.chroma,
      interval: {
        deltaE00: interval.radius95,
        value: [interval.valueLow, interval.valueHigh],
        lean: [interval.leanLow, interval.leanHigh],
      },
      lights,
      warnings,
    });
    return;
  }
  const { L, a, b } = colour.Lab;
  output.out(
    [
      `L* ${L.toFixed(2)}  a* ${a.toFixed(2)}  b* ${b.toFixed(2)}  (${white}, read at ${profile.geometry})`,
      `value ${colour.value.toFixed(2)} (${interval.valueLow.toFixed(2)} to ${interval.valueHigh.toFixed(2)}), ${colour.leanWord}, lean ${colour.lean.toFixed(1)}`,
      `95 of 100 mixes made by this recipe lie within ${interval.radius95.toFixed(2)} CIEDE2000.`,
      ...lights.map(
        ({ illuminant, Lab, lean }) =>
          `under ${illuminant}: L* ${Lab.L.toFixed(2)}  a* ${Lab.a.toFixed(2)}  b* ${Lab.b.toFixed(2)}, lean ${lean.toFixed(1)}`,
      ),
      ...warnings.map((w) => `Warning: ${w}`),
      '',
      table(
        ['nm', 'reflectance', 'low', 'high'],
        wavelengths.map((nm, i) => [
          String(nm),
          reflectance.value[i]!.toFixed(4),
          reflectance.low[i]!.toFixed(4),
          reflectance.high[i]!.toFixed(4),
        ]),
      ),
    ].join('\n'),
  );
}
