import { css, html, nothing } from 'lit';
import type { FitResult, TubeFitAnswer } from '../../../../server/api/fits.ts';
import type { PaletteProfile, ProfileTube } from '../../../../src/profile/schema.ts';
import type { LadderPoint } from '../../charts/ladder-plane.ts';
import { type Patch, onThisScreen } from '../../design/patch.ts';
import { patchOfAnswer } from '../../design/patch-of-answer.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { trustSays } from '../../text/findings.ts';
import { constantsWords } from '../../text/constants.ts';
import { adviceSays } from '../../text/advice.ts';
import { tubeFactsWords } from '../../text/tube-facts.ts';
import type { TubeChecks, TubeFacts } from '../../../../server/api/tube-facts.ts';
import type { Ladder } from '../../../../server/api/ladders.ts';
import type { FilmsAnswer } from '../../workers/films-job.ts';
import './ladder-pulls.ts';
import './not-believed.ts';
import './tube-drying.ts';
import './tube-evidence.ts';
import { channelWavelengths } from './channels.ts';
import { curvesOf, pullsOf } from './tube-facts.ts';
import './tube-films.ts';
import { said } from '../../text/said.ts';

/** The drawings come after the first answers. Where one cannot be had, the rest stands without it. */
const charts = Promise.allSettled([
  import('../../charts/constants-chart.ts'),
  import('../../charts/ladder-plane.ts'),
  import('../../charts/reflectance-chart.ts'),
  import('../../charts/residual-chart.ts'),
]);

/** Everything known of one tube, from what the eye can check to what the numbers rest on. */
export class TlTubeView extends TlElement {
  static override properties = {
    profile: { attribute: false },
    tube: { attribute: false },
    fit: { attribute: false },
    result: { attribute: false },
    rungs: { attribute: false },
    films: { attribute: false },
    facts: { attribute: false },
    checks: { attribute: false },
    ladder: { attribute: false },
    against: {},
    settled: { type: Boolean },
    below: { state: true },
  };
  declare profile: PaletteProfile;
  declare tube: ProfileTube;
  declare fit: TubeFitAnswer | undefined;
  declare result: FitResult | undefined;
  declare rungs: ReadonlyMap<string, Patch> | undefined;
  declare films: FilmsAnswer | undefined;
  declare facts: TubeFacts | undefined;
  declare checks: TubeChecks | undefined;
  declare ladder: Ladder | undefined;
  declare against: string;
  /** All that was asked of this tube has been answered. */
  declare settled: boolean;
  /** What follows the films is drawn once they stand, so that nothing is pushed down; it stays for the next tube. */
  declare below: boolean;

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

  constructor() {
    super();
    this.settled = false;
    this.below = false;
  }

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
        ${
          fit && fit.notBelieved.length > 0
            ? html`<tl-not-believed .rungs=${fit.notBelieved} .ladder=${this.ladder}></tl-not-believed>`
            : nothing
        }
        ${this.#warnings().map((w) => html`<tl-notice kind="warning">${said(w)}</tl-notice>`)}
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
          .facts=${this.facts}
          .others=${this.#others()}
          .against=${this.against}
          .perMicrometre=${this.profile.whiteScatteringPerMicrometre?.value}
          @tl-against=${(e: CustomEvent<string>) =>
            this.dispatchEvent(new CustomEvent('tl-against', { detail: e.detail }))}
          @tl-thickness=${(e: CustomEvent<number>) =>
            this.dispatchEvent(new CustomEvent('tl-thickness', { detail: e.detail }))}
        ></tl-tube-films>
      </section>
      ${this.below ? this.#below() : nothing}
    `;
  }

  override updated(): void {
    if (this.below || !this.settled) return;
    void charts.then(() => requestAnimationFrame(() => setTimeout(() => (this.below = true))));
  }

  #below() {
    const t = constantsWords();
    const { tube, fit } = this;
    return html`
      <section class="pair">${this.#charts()}</section>
      <section class="stack">
        <h2>${t.trust}</h2>
        <tl-tube-evidence
          .tube=${tube}
          .fit=${fit}
          .facts=${this.facts}
          .checks=${this.checks}
        ></tl-tube-evidence>
      </section>
      <section class="stack">
        <h2>${tubeFactsWords().drying}</h2>
        <tl-tube-drying .drying=${this.facts?.drying ?? []} .ladder=${this.ladder}></tl-tube-drying>
      </section>
      <section class="stack">
        <h2>${t.next}</h2>
        ${
          fit && fit.suggestions.length > 0
            ? html`<ol>
                ${fit.suggestions.map((s) => html`<li>${adviceSays(s)}</li>`)}
              </ol>`
            : html`<p>${t.nothing}</p>`
        }
      </section>
    `;
  }

  /** Those that a rung left out has said already are not said twice. */
  #warnings(): string[] {
    const told = new Set(this.fit?.notBelieved.map((rung) => rung.sentence));
    return (this.fit?.warnings ?? this.tube.evidence?.warnings ?? []).filter((w) => !told.has(w));
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
