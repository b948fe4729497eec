import { GRID_SIZE } from '../../colour/grid.ts';
import { channelCount } from './channels.ts';
import { pilesOf, sharesOfPile } from './piles.ts';
import { SwatchSetProblem } from './problem.ts';
import type { Check, Swatch, SwatchSet } from './schema.ts';
import { say } from './sentences.ts';

/** Readings are reflectance factors: a glossy white at 45/0 may pass 1 a little, noise may pass 0 a little. */
const LOWEST_READING = -0.05;
const HIGHEST_READING = 1.3;
/** A rung above this share of a tube can stand in for its masstone. */
const MOSTLY = 0.5 + 1e-9;

/** The rules across tubes, backings, swatches and checks; listed in docs/swatch-set.md. */
export function holdSwatchRules(set: SwatchSet): void {
  const channels = channelCount(set.instrument);
  holdUnique(set.tubes, 'tubes', 'tubes');
  holdUnique(set.backings, 'backings', 'backings');
  holdUnique([...set.swatches, ...set.checks], 'swatches', say('swatches-or-checks'));
  set.backings.forEach((backing, b) => {
    holdNumbers(
      backing.reflectance,
      channels,
      say('the-backing', { id: backing.id }),
      `backings[${b}].reflectance`,
      say('one-per-channel'),
    );
  });
  const whites = set.tubes.filter((tube) => tube.role === 'white');
  if (whites.length > 1 || (whites.length === 0 && set.swatches.length > 0)) {
    throw new SwatchSetProblem(
      whites.length
        ? say('two-whites', { tubes: whites.map((t) => `"${t.id}"`).join(' and ') })
        : say('no-white'),
      'tubes',
    );
  }
  const truths = set.instrument.kind === 'spectral' ? channels : GRID_SIZE;
  set.swatches.forEach((swatch, s) => holdPainted(set, swatch, `swatches[${s}]`, 'Swatch', channels));
  set.checks.forEach((check, c) => {
    holdPainted(set, check, `checks[${c}]`, 'Check', channels);
    if (!check.readings && !check.truth) {
      throw new SwatchSetProblem(say('empty-check', { id: check.id }), `checks[${c}]`);
    }
    if (check.truth) {
      const what = set.instrument.kind === 'spectral' ? say('one-per-wavelength') : say('one-per-10-nm');
      holdNumbers(check.truth, truths, say('the-truth', { id: check.id }), `checks[${c}].truth`, what);
    }
  });
  holdReadAgain(set);
  holdDrawdowns(set);
  pilesOf(set);
  holdMasstones(set, whites[0]?.id);
}

function holdUnique(items: readonly { id: string }[], at: string, words: string): void {
  const seen = new Set<string>();
  for (const { id } of items) {
    if (seen.has(id)) throw new SwatchSetProblem(say('same-id', { words, id }), at);
    seen.add(id);
  }
}

function holdNumbers(values: readonly number[], count: number, who: string, at: string, what: string): void {
  if (values.length !== count) {
    throw new SwatchSetProblem(say('numbers', { who, count: values.length, wanted: count, what }), at);
  }
  values.forEach((v, i) => {
    if (v >= LOWEST_READING && v <= HIGHEST_READING) return;
    const advice = v > 1.5 && v <= 130 ? say('divide-by-100') : say('read-again');
    throw new SwatchSetProblem(say('factor-range', { who, value: v, channel: i + 1, advice }), `${at}[${i}]`);
  });
}

function holdPainted(set: SwatchSet, item: Swatch | Check, at: string, word: string, channels: number): void {
  item.readings?.forEach((reading, r) => {
    const who = say('the-reading', { number: r + 1, word: word.toLowerCase(), id: item.id });
    holdNumbers(reading, channels, who, `${at}.readings[${r}]`, say('one-per-channel'));
  });
  if (item.backing !== undefined && !set.backings.some((b) => b.id === item.backing)) {
    throw new SwatchSetProblem(
      say('unknown-backing', { word, id: item.id, backing: item.backing }),
      `${at}.backing`,
    );
  }
  if (item.film !== 'opaque' && item.backing === undefined) {
    throw new SwatchSetProblem(say('no-backing', { word, id: item.id }), `${at}.backing`);
  }
}

/** A film read again points at its first reading, which stands before it. */
function holdReadAgain(set: SwatchSet): void {
  const first = new Set<string>();
  set.swatches.forEach(({ id, again }, s) => {
    if (again !== undefined && !first.has(again)) {
      throw new SwatchSetProblem(say('unknown-first-reading', { id, first: again }), `swatches[${s}].again`);
    }
    if (again === undefined) first.add(id);
  });
}

/** One drawdown is one film: one mixture, one thickness. */
function holdDrawdowns(set: SwatchSet): void {
  const first = new Map<string, Swatch | Check>();
  for (const item of [...set.swatches, ...set.checks]) {
    if (item.film === 'opaque') continue;
    const other = first.get(item.film.drawdown);
    if (!other) {
      first.set(item.film.drawdown, item);
      continue;
    }
    const same =
      other.film !== 'opaque' &&
      other.film.thickness === item.film.thickness &&
      JSON.stringify([other.masses, other.made]) === JSON.stringify([item.masses, item.made]);
    if (!same) {
      throw new SwatchSetProblem(
        say('shared-drawdown', { other: other.id, id: item.id, drawdown: item.film.drawdown }),
        'swatches',
      );
    }
  }
}

/**
 * Scattering shows where a paint is by itself. A rung that is mostly the tube is taken in a masstone's stead (published
 * ladders exist without one) and the fit warns; tints alone are refused.
 */
function holdMasstones(set: SwatchSet, white: string | undefined): void {
  const piles = pilesOf(set);
  const zero = new Float64Array(piles.errorCount);
  const largest = new Map<string, number>();
  for (const swatch of set.swatches) {
    const { shares } = sharesOfPile(piles, piles.pileOf.get(swatch.id)!, zero);
    piles.tubeIds.forEach((id, t) => {
      if (shares[t]! > 0) largest.set(id, Math.max(largest.get(id) ?? 0, shares[t]!));
    });
  }
  if (set.swatches.length && white !== undefined && largest.get(white) !== 1) {
    throw new SwatchSetProblem(say('white-masstone', { id: white }), 'swatches');
  }
  for (const [id, share] of largest) {
    if (share > MOSTLY) continue;
    throw new SwatchSetProblem(say('tube-masstone', { id, percent: Math.round(share * 100) }), 'swatches');
  }
}
