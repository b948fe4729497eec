import { html, nothing } from 'lit';
import { splitDifference } from '../../../../src/mix/match/difference.ts';
import { patchOfLab, patchOfReflectance } from '../../design/patch.ts';
import '../../parts/compare.ts';
import '../../parts/drawdown.ts';
import { splitWords } from '../../text/differences.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import type { PredictAnswer } from '../../workers/predict-job.ts';
import type { WantedColour } from './mix-state.ts';

/** The pile as the constants say it is, beside the wanted colour where one is named. */
export function pileView(wanted: WantedColour | undefined, mix: PredictAnswer | undefined) {
  const t = mixingWords();
  if (!mix) {
    return html`<tl-drawdown
        size="fill"
        heading=${wanted ? t.want : t.pile}
        .patch=${wanted && patchOfLab(wanted.lab)}
      ></tl-drawdown>
      <p>${t.empty}</p>`;
  }
  const says = t.interval(between(mix.interval.value, t.to), between(mix.interval.lean, t.to));
  if (!wanted) {
    return html`<tl-drawdown
        size="fill"
        heading=${t.pile}
        .patch=${patchOfReflectance(mix.reflectance)}
        .interval=${mix.interval.radius95}
      ></tl-drawdown>
      <p class="small">${says}</p>`;
  }
  const comparable = wanted.lab.white === mix.lab.white;
  return html`<tl-compare
      .patches=${[patchOfLab(wanted.lab), patchOfLab(mix.lab)]}
      .names=${[t.want, t.mix]}
    ></tl-compare>
    ${comparable ? html`<p><b>${splitWords(splitDifference(wanted.lab, mix.lab))}</b></p>` : nothing}
    <p class="small">${says}</p>`;
}

function between([low, high]: readonly [number, number], to: string): string {
  return `${num(low, 1)} ${to} ${num(high, 1)}`;
}
