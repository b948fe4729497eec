/**
 * A whole ladder from the firmware to a profile: invented paints (radiative transfer, nothing of the fit's own model)
 * as light on the modelled sensor, counts from the real firmware over a pseudo-terminal, the program's own driver,
 * calibration and fit. The truth is known, so the end can be held to it.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { reflectanceFromCounts, holdWhite } from '../../src/calibrate/reading/reflectance.ts';
import type { TwoPointScale } from '../../src/calibrate/reading/reflectance.ts';
import { closeBracket } from '../../src/calibrate/reading/white-bracket.ts';
import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { connectHead } from '../../src/device/head/connect.ts';
import type { Head } from '../../src/device/head/head.ts';
import { DEMO_DEEP_BLUE, DEMO_WHITE, DEMO_YELLOW_EARTH } from '../../src/device/practice/paints/demo-rack.ts';
import type { TransferPart } from '../../src/device/practice/transfer/transfer-reflectance.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import type { PaletteFit } from '../../src/fit/palette-fit.ts';
import { predictReflectance } from '../../src/fit/predict.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { readProfile } from '../../src/profile/read.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { COUNTED_REFLECTANCE, LADDER_FROM_EIGHT_BANDS } from '../tolerances.ts';
import { BenchHead } from './bench/bench-head.ts';
import { buildFirmware, simavrMissing } from './bench/build.ts';
import type { Build } from './bench/build.ts';
import {
  BANDS,
  BAND_ROWS,
  BLACK_TRAP,
  WHITE_TILE,
  bandsOf,
  lay,
  mixtureReflectance,
} from './bench/paint-under-head.ts';

const COLOURS = [DEMO_YELLOW_EARTH, DEMO_DEEP_BLUE];
const GRAMS: readonly (readonly [string, number, number])[] = [
  ['masstone', 5, 0],
  ['1:1', 2, 2],
  ['1:4', 1, 4],
  ['1:16', 0.5, 8],
];
const NAMES = BANDS.map(([name]) => name);

/** The bench of a ladder: head set on white and trap, then one swatch after another. */
class LadderBench {
  readonly #head: Head;
  readonly #bench: BenchHead;
  #scale!: TwoPointScale;

  constructor(head: Head, bench: BenchHead) {
    this.#head = head;
    this.#bench = bench;
  }

  get #counting(): { channels: string[]; fullScale: number } {
    return { channels: NAMES, fullScale: this.#head.settings.fullScale };
  }

  async #expose() {
    const bandsOnly = <T extends { readonly counts: readonly number[] }>(frame: T) => ({
      ...frame,
      counts: frame.counts.slice(0, BANDS.length),
    });
    return { light: bandsOnly(await this.#head.read()), dark: bandsOnly(await this.#head.readDark()) };
  }

  async white(): Promise<Float64Array> {
    await lay(this.#bench, WHITE_TILE);
    return holdWhite(await this.#expose(), this.#counting);
  }

  async set(): Promise<void> {
    const white = await this.white();
    await lay(this.#bench, BLACK_TRAP);
    const { light, dark } = await this.#expose();
    const per = light.gain * light.apertureS * 1000;
    const trap = Float64Array.from(light.counts, (count, i) => (count - dark.counts[i]!) / per);
    this.#scale = { white, trap, tile: bandsOf(WHITE_TILE), trapReflectance: 0.002 };
  }

  async read(parts: readonly TransferPart[]): Promise<number[]> {
    await lay(this.#bench, mixtureReflectance(parts));
    return [...reflectanceFromCounts(await this.#expose(), this.#scale, this.#counting)];
  }

  /** The closing white must be the opening one again. */
  async close(): Promise<void> {
    const before = { signal: this.#scale.white, atMs: 0 };
    closeBracket(before, { signal: await this.white(), atMs: 1 }, NAMES);
  }
}

const missing = simavrMissing();
if (missing) console.warn(`SKIPPED: the ladder through the ATmega328P firmware in simavr (${missing}).`);

interface Place {
  readonly name: string;
  readonly targets: readonly string[];
  readonly absent: boolean;
  /** Frames averaged in the head. The simulated chip is slow: it takes one, with the noise of four. */
  readonly averages: number;
  readonly noise: number;
  readonly start: (folder: string) => Promise<BenchHead>;
}
const PLACES: readonly Place[] = [
  {
    name: 'native core',
    targets: ['native'],
    absent: false,
    averages: 4,
    noise: 0.5,
    start: (folder) => BenchHead.native(folder, '--fast', '--seed', '11'),
  },
  {
    name: 'ATmega328P binary in simavr',
    targets: ['avr', 'simavr'],
    absent: missing !== undefined,
    averages: 1,
    noise: 0.25,
    start: (folder) => BenchHead.simavr(folder, '--fast'),
  },
];

describe.each(PLACES)(
  'a ladder read by the firmware, $name',
  ({ name, targets, absent, averages, noise, start }) => {
    let build: Build;
    let bench: BenchHead;
    let head: Head;
    let set: SwatchSet;
    let fit: PaletteFit;
    let worstReflectance = 0;

    beforeAll(async () => {
      if (absent) return;
      build = await buildFirmware(...targets);
      bench = await start(build.folder);
      await bench.tell(`noise ${noise}`);
      const settings = { gain: 64, apertureS: 0.182, averages };
      head = await connectHead(new SerialTransport(bench.path), systemClock, { settings });
      set = await paintAndRead(new LadderBench(head, bench));
      fit = fitPalette(set, { leaveOneOut: false });
    }, 240_000);
    afterAll(async () => {
      if (absent) return;
      await head.close();
      await bench.stop();
      build.remove();
    });

    async function paintAndRead(ladder: LadderBench): Promise<SwatchSet> {
      await ladder.set();
      const swatch = async (id: string, parts: readonly TransferPart[]) => {
        const truth = bandsOf(mixtureReflectance(parts));
        const readings = [await ladder.read(parts), await ladder.read(parts)];
        for (const reading of readings)
          reading.forEach((R, i) => (worstReflectance = Math.max(worstReflectance, Math.abs(R - truth[i]!))));
        const masses = Object.fromEntries(parts.map(({ paint, mass }) => [paint.id, mass]));
        return { id, film: 'opaque' as const, masses, readings };
      };
      const swatches = [await swatch('white', [{ paint: DEMO_WHITE, mass: 5 }])];
      for (const paint of COLOURS) {
        for (const [rung, colour, white] of GRAMS) {
          const parts = [{ paint, mass: colour }, ...(white ? [{ paint: DEMO_WHITE, mass: white }] : [])];
          swatches.push(await swatch(`${paint.id} ${rung}`, parts));
        }
        await ladder.close();
      }
      return readSwatchSet({
        format: 'swatch-set',
        version: 1,
        source: 'Invented paints under the simulated head; nothing was measured.',
        instrument: {
          kind: 'bands',
          geometry: '45/0',
          bands: head.channels.slice(0, BANDS.length).map((channel) => ({
            name: channel.name,
            centre: channel.centreNm!,
            fwhm: channel.fwhmNm!,
          })),
          response: { wavelengths: [...GRID_NM], rows: BAND_ROWS },
        },
        tubes: [DEMO_WHITE, ...COLOURS].map(({ id, label, pigments, role }) => ({
          id,
          label,
          pigments,
          ...(role ? { role } : {}),
        })),
        swatches,
      });
    }

    it.skipIf(absent)('gives back the reflectance that lay under it', () => {
      console.log(
        `${name}: worst band ${(100 * worstReflectance).toFixed(3)} % of reflectance, of ${set.swatches.length} swatches.`,
      );
      expect(worstReflectance).toBeLessThan(COUNTED_REFLECTANCE);
    });

    it.skipIf(absent)('is fitted, and every rung reads as it was painted', () => {
      expect(fit.status).toBe('converged');
      for (const { tube, evidence } of fit.tubes) {
        for (const rung of evidence.rungs)
          expect(rung.deltaE00, `${tube.id} ${rung.id}`).toBeLessThan(LADDER_FROM_EIGHT_BANDS);
      }
    });

    it.skipIf(absent)('predicts a mixture of the two colours that was never read', () => {
      const parts = [
        { paint: DEMO_YELLOW_EARTH, mass: 3 },
        { paint: DEMO_DEEP_BLUE, mass: 1 },
        { paint: DEMO_WHITE, mass: 4 },
      ];
      const masses = Object.fromEntries(parts.map(({ paint, mass }) => [paint.id, mass]));
      const predicted = labOfReflectance(
        predictReflectance(fit.palette, masses).measured,
        tristimulusWeights('D65/10deg'),
      );
      const truth = labOfReflectance(mixtureReflectance(parts), tristimulusWeights('D65/10deg'));
      const difference = ciede2000(predicted, truth);
      console.log(`${name}: unread mixture, CIEDE2000 ${difference.toFixed(2)} from the truth.`);
      expect(difference).toBeLessThan(LADDER_FROM_EIGHT_BANDS);
    });

    it.skipIf(absent)('makes a profile that another program can read', () => {
      const facts = { created: '2026-01-01T00:00:00Z', generator: { name: 'tintladder', version: 'test' } };
      const profile = profileFromFit(fit, facts);
      const again = readProfile(writeProfile(profile));
      expect(again.tubes.map((tube) => tube.id)).toEqual([DEMO_WHITE, ...COLOURS].map((paint) => paint.id));
      expect(again.geometry).toBe('45/0');
    });
  },
);
