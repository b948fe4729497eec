import { html, nothing } from 'lit';
import { splitDifference } from '../../../../src/mix/match/difference.ts';
import { type Patch, patchBeside, patchOfLab } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import '../../parts/compare.ts';
import '../../parts/drawdown.ts';
import { splitWords } from '../../text/differences.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import type { MixFilm } from '../../workers/mix-films-job.ts';
import type { PredictAnswer } from '../../workers/predict-job.ts';
import type { WantedColour } from './mix-state.ts';

/** How the pile lies where it is a film: as predicted, and what is under it. */
export interface LaidPile {
  readonly film: MixFilm;
  readonly ground: Patch | undefined;
}

/** The wanted colour under the lamp in use where its spectrum is known, else as it was named. */
const wantedPatch = ({ lab, spectrum }: WantedColour): Patch =>
  spectrum ? patchOfReflectance(spectrum) : patchOfLab(lab);

/** The pile as the constants say it is, thick or as a film, beside the wanted colour where one is named. */
export function pileView(
  wanted: WantedColour | undefined,
  thick: PredictAnswer | undefined,
  laid: LaidPile | undefined,
) {
  const mix = laid?.film.over ?? thick;
  const t = mixingWords();
  if (!mix) {
    return html`<tl-drawdown
        size="fill"
        heading=${wanted ? t.want : t.pile}
        .patch=${wanted && wantedPatch(wanted)}
      ></tl-drawdown>
      <p>${t.empty}</p>`;
  }
  const says = t.interval(between(mix.interval.value, t.to), between(mix.interval.lean, t.to));
  if (!wanted) {
    return html`<tl-drawdown
        size="fill"
        heading=${t.pile}
        .patch=${patchOfReflectance(mix.reflectance)}
        .overBlack=${laid?.film.overBlack && patchOfReflectance(laid.film.overBlack.reflectance)}
        .ground=${laid?.ground}
        .interval=${mix.interval.radius95}
      ></tl-drawdown>
      <p class="small">${says}</p>`;
  }
  const comparable = wanted.lab.white === mix.lab.white;
  return html`<tl-compare
      .patches=${wanted.spectrum ? [patchOfReflectance(wanted.spectrum), patchOfReflectance(mix.reflectance)] : [patchBeside(wanted.lab, mix), mix]}
      .names=${[t.want, t.mix]}
    ></tl-compare>
    ${comparable ? html`<p><b>${splitWords(splitDifference(wanted.lab, mix.lab))}</b></p>` : nothing}
    <p class="small">${says}</p>`;
}

function between([low, high]: readonly [number, number], to: string): string {
  return `${num(low, 1)} ${to} ${num(high, 1)}`;
}
