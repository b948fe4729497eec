import { type PropertyValues, css, html, nothing } from 'lit';
import type { FitResult } from '../../../../server/api/fits.ts';
import type { PaletteProfile, ProfileTube } from '../../../../src/profile/schema.ts';
import { UNDERTONE_X } from '../../../../src/fit/film-facts/undertone.ts';
import { type Patch, onThisScreen } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import '../../parts/next-step.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import '../../parts/sheet-notes.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { linkTo } from '../../shell/route.ts';
import { trustSays } from '../../text/findings.ts';
import { constantsWords } from '../../text/constants.ts';
import { RemoteController } from '../../state/remote.ts';
import { settings } from '../../state/settings.ts';
import { num } from '../../text/numbers.ts';
import { sheetWords } from '../../text/sheets.ts';
import type { FilmsAnswer } from '../../workers/films-job.ts';
import { searchBench } from '../../workers/palette-controller.ts';
import type { Pull } from './ladder-pulls.ts';
import './ladder-pulls.ts';
import { fitUnder } from './rung-name.ts';
import { curvesOf, pullsOf } from './tube-facts.ts';

/** Every tube on paper: its ladder and undertone as pulls, a box left white for real paint, K and S, trust in words. */
export class TlPaletteSheet extends TlElement {
  static override properties = {
    profile: { attribute: false },
    fit: { attribute: false },
    rungs: { attribute: false },
    ready: { type: Boolean },
  };
  declare profile: PaletteProfile;
  declare fit: FitResult | undefined;
  declare rungs: ReadonlyMap<string, ReadonlyMap<string, Patch>> | undefined;
  /** The fit and the rungs have come. */
  declare ready: boolean;
  readonly #thin = new RemoteController<ReadonlyMap<string, FilmsAnswer>>(this);

  static override styles = [
    TlElement.styles,
    css`
      .tubes {
        display: grid;
        gap: var(--s3);
      }
      article {
        display: grid;
        grid-template-columns: minmax(0, 1.15fr) minmax(0, 1fr);
        gap: 8px var(--s3);
        border-block-start: var(--edge);
        padding-block-start: 8px;
        break-inside: avoid;
      }
      article > header {
        grid-column: 1 / -1;
      }
      .says {
        display: grid;
        gap: 8px;
        align-content: start;
      }
      .pulls {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 5.5rem;
        gap: 8px;
        align-content: start;
      }
      header .small:empty {
        display: none;
      }
      .paint {
        border: 1px dashed var(--ink);
        background: #fff;
        color: #000;
        font-size: var(--t-small);
        padding: 4px;
      }
      .small {
        line-height: 1.3;
      }
      @media (max-width: 40rem) {
        article {
          grid-template-columns: minmax(0, 1fr);
        }
      }
      @media print {
        .tubes {
          display: block;
        }
        /* Three to a page of either paper. */
        article {
          margin-block-end: 3mm;
          padding-block-start: 1.5mm;
          grid-template-columns: 105mm minmax(0, 1fr);
          gap: 1.5mm 4mm;
        }
        header {
          display: flex;
          gap: 4mm;
          align-items: baseline;
        }
        header p {
          max-inline-size: none;
        }
        .trust {
          margin-inline-start: auto;
        }
        .pulls {
          grid-template-columns: minmax(0, 1fr) 34mm;
        }
        .paint {
          min-block-size: 50mm;
        }
        tl-constants-chart {
          max-inline-size: 75mm;
        }
        tl-sheet-notes {
          margin-block-end: 3mm;
        }
        .says {
          display: block;
        }
      }
    `,
  ];

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('profile')) return;
    const { tubes } = this.profile;
    void this.#thin.run(async (signal) => {
      // A sheet that is said to be ready has its drawings.
      const chart = import('../../charts/constants-chart.ts').catch(() => undefined);
      const films = await Promise.all(
        tubes.map(({ id }) =>
          searchBench.run('films', { tubeId: id, thicknesses: [UNDERTONE_X] }, { signal }),
        ),
      );
      await chart;
      return new Map(films.map((film, i) => [tubes[i]!.id, film]));
    });
  }

  override render() {
    const t = constantsWords();
    const { profile } = this;
    return html`<tl-page heading=${t.sheetTitle} lead=${sheetWords().paletteIs}>
      <tl-next
        slot="next"
        label=${t.print}
        ?busy=${this.#thin.pending || !this.ready}
        @click=${() => window.print()}
      ></tl-next>
      <a class="no-print" href=${linkTo('constants')}>${t.back}</a>
      <tl-sheet-notes .profile=${profile} white=${settings().lamp}></tl-sheet-notes>
      ${
        // All at once: what comes piece by piece pushes what is read, and prints half.
        this.ready && (this.#thin.value || this.#thin.error)
          ? html`<div class="tubes">${profile.tubes.map((tube) => this.#tube(tube))}</div>`
          : html`<tl-progress label=${t.fetching}></tl-progress>`
      }
    </tl-page>`;
  }

  #tube(tube: ProfileTube) {
    const t = constantsWords();
    const fit = fitUnder(this.fit, tube);
    const pulls = pullsOf(fit, this.rungs?.get(tube.id) ?? new Map<string, Patch>());
    const first = pulls[0];
    const film = this.#thin.value?.get(tube.id)?.films[0];
    const undertone: Pull[] = film
      ? [
          {
            name: t.undertone,
            predicted: patchOfReflectance(film.overWhite),
            overBlack: patchOfReflectance(film.overBlack),
          },
        ]
      : [];
    const paint = first ? { paint: onThisScreen(first.predicted.lab).css } : {};
    return html`<article>
      <header>
        <h2>${tube.label}</h2>
        <p class="small">${[tube.pigments.join(' + '), tube.batch].filter(Boolean).join(', ')}</p>
        <p class="small trust">${tube.evidence ? trustSays(tube.evidence.trust) : nothing}</p>
      </header>
      <div class="pulls">
        <tl-ladder-pulls close .pulls=${[...pulls, ...undertone]}></tl-ladder-pulls>
        <div class="paint" aria-hidden="true">${t.paintHere}</div>
      </div>
      <div class="says">
        <tl-constants-chart
          bare
          fixed="340"
          summary=${t.curvesSays(tube.label)}
          .nm=${this.profile.wavelengths}
          .series=${[{ label: tube.label, ...curvesOf(tube, fit), ...paint }]}
        ></tl-constants-chart>
        <p class="small">
          ${film ? t.undertoneOf(t.thickness(num(UNDERTONE_X, 1)), num(film.contrast, 2)) : nothing}
        </p>
      </div>
    </article>`;
  }
}

define('tl-palette-sheet', TlPaletteSheet);
