import { css, html, nothing } from 'lit';
import type { FitResult, TubeFitAnswer } from '../../../../server/api/fits.ts';
import type { PaletteProfile, ProfileTube } from '../../../../src/profile/schema.ts';
import '../../charts/constants-chart.ts';
import '../../charts/ladder-plane.ts';
import type { LadderPoint } from '../../charts/ladder-plane.ts';
import '../../charts/reflectance-chart.ts';
import '../../charts/residual-chart.ts';
import { type Patch, onThisScreen } from '../../design/patch.ts';
import { patchOfAnswer } from '../../design/patch-of-answer.ts';
import '../../parts/figures.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { trustSays } from '../../text/findings.ts';
import { constantsWords } from '../../text/constants.ts';
import type { FilmsAnswer } from '../../workers/films-job.ts';
import './ladder-pulls.ts';
import { channelWavelengths } from './channels.ts';
import { curvesOf, pullsOf, trustFigures } from './tube-facts.ts';
import './tube-films.ts';

/** Everything known of one tube, from what the eye can check to what the numbers rest on. */
export class TlTubeView extends TlElement {
  static override properties = {
    profile: { attribute: false },
    tube: { attribute: false },
    fit: { attribute: false },
    result: { attribute: false },
    rungs: { attribute: false },
    films: { attribute: false },
    against: {},
  };
  declare profile: PaletteProfile;
  declare tube: ProfileTube;
  declare fit: TubeFitAnswer | undefined;
  declare result: FitResult | undefined;
  declare rungs: ReadonlyMap<string, Patch> | undefined;
  declare films: FilmsAnswer | undefined;
  declare against: string;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s5);
      }
      .pair {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 30rem), 1fr));
        gap: var(--s4) var(--s5);
      }
      header {
        display: grid;
        gap: 2px;
      }
      header h2 {
        font-size: var(--t-title);
      }
      .trust {
        font-size: var(--t-lead);
        line-height: 1.35;
      }
    `,
  ];

  override render() {
    const t = constantsWords();
    const { tube, fit } = this;
    const pulls = pullsOf(fit, this.rungs ?? new Map<string, Patch>());
    return html`
      <section class="stack">
        <header>
          <h2>${tube.label}</h2>
          <p>${tube.pigments.join(' + ')}</p>
        </header>
        ${tube.evidence ? html`<p class="trust">${trustSays(tube.evidence.trust)}</p>` : nothing}
        ${(fit?.warnings ?? tube.evidence?.warnings ?? []).map(
          (w) => html`<tl-notice kind="warning">${w}</tl-notice>`,
        )}
      </section>
      <section class="stack">
        <h2>${t.rungs}</h2>
        <p>${fit ? t.rungsHow : t.noReading}</p>
        <tl-ladder-pulls .pulls=${pulls}></tl-ladder-pulls>
      </section>
      <section class="stack">
        <h2>${t.film}</h2>
        <tl-tube-films
          .answer=${this.films}
          .others=${this.#others()}
          .against=${this.against}
          .perMicrometre=${this.profile.whiteScatteringPerMicrometre?.value}
          @tl-against=${(e: CustomEvent<string>) =>
            this.dispatchEvent(new CustomEvent('tl-against', { detail: e.detail }))}
        ></tl-tube-films>
      </section>
      <section class="pair">${this.#charts()}</section>
      <section class="stack">
        <h2>${t.trust}</h2>
        <tl-figures .figures=${trustFigures(tube)}></tl-figures>
      </section>
      <section class="stack">
        <h2>${t.next}</h2>
        ${
          fit && fit.suggestions.length > 0
            ? html`<ol>
                ${fit.suggestions.map((s) => html`<li>${s}</li>`)}
              </ol>`
            : html`<p>${t.nothing}</p>`
        }
      </section>
    `;
  }

  #others() {
    return this.profile.tubes
      .filter((o) => o.id !== this.tube.id && o.id !== this.profile.white)
      .map((o) => ({ value: o.id, label: o.label }));
  }

  #charts() {
    const t = constantsWords();
    const { tube, fit } = this;
    const first = fit ? patchOfAnswer(fit.masstone) : [...(this.rungs?.values() ?? [])][0];
    const paint = first ? onThisScreen(first.lab).css : undefined;
    const curves = curvesOf(tube, fit);
    return html`<tl-constants-chart
        heading=${t.curves}
        summary=${t.curvesSays(tube.label)}
        .nm=${this.profile.wavelengths}
        .series=${[{ label: tube.label, ...curves, ...(paint ? { paint } : {}) }]}
      ></tl-constants-chart>
      ${
        fit && this.result
          ? html`<tl-reflectance-chart
                heading=${t.reflectance}
                summary=${t.reflectanceSays(tube.label)}
                .series=${this.#reflectances(fit, this.result)}
              ></tl-reflectance-chart>
              <tl-residual-chart
                heading=${t.residuals}
                summary=${t.residualsSays(tube.label)}
                .rungs=${fit.rungs.map((r) => ({
                  label: r.name,
                  deltaE00: r.deltaE00,
                  ...(r.measuredColour
                    ? { paint: onThisScreen(patchOfAnswer(r.measuredColour).lab).css }
                    : {}),
                  ...(r.leftOutDeltaE00 === null ? {} : { leftOut: r.leftOutDeltaE00 }),
                }))}
              ></tl-residual-chart>
              <tl-ladder-plane
                heading=${t.plane}
                summary=${t.planeSays(tube.label)}
                .read=${fit.rungs.flatMap((r) => point(r.name, r.measuredColour))}
                .path=${fit.rungs.flatMap((r) => point(r.name, r.fittedColour))}
              ></tl-ladder-plane>`
          : nothing
      }`;
  }

  #reflectances(fit: TubeFitAnswer, result: FitResult) {
    const nm = channelWavelengths(result.channels);
    return fit.rungs.flatMap((rung) => {
      const colour = rung.measuredColour ?? rung.fittedColour;
      const paint = colour ? { paint: onThisScreen(patchOfAnswer(colour).lab).css } : {};
      const curve = rung.spectrum
        ? {
            curve: {
              nm: result.wavelengths,
              r: rung.spectrum.value,
              low: rung.spectrum.low,
              high: rung.spectrum.high,
            },
          }
        : {};
      const points = nm ? { points: { nm, r: rung.measured } } : {};
      return rung.spectrum || nm ? [{ label: rung.name, ...paint, ...curve, ...points }] : [];
    });
  }
}

function point(label: string, colour: TubeFitAnswer['masstone'] | null): LadderPoint[] {
  if (!colour) return [];
  const patch = patchOfAnswer(colour);
  return [{ label, paint: onThisScreen(patch.lab).css, a: patch.lab.a, b: patch.lab.b, value: patch.value }];
}

define('tl-tube-view', TlTubeView);
