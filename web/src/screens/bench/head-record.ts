import { css, html, nothing } from 'lit';
import type { HeadRecord, TileHistory } from '../../../../server/api/head-record.ts';
import '../../parts/choice.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { benchSays } from '../../text/findings.ts';
import { headWords } from '../../text/head.ts';
import { num } from '../../text/numbers.ts';
import { foldStyles } from './fold-styles.ts';

/** As many as a finger finds apart; the sentence above names them all. */
const MOST_CHARTS = 6;

/** What is known of a head from its own readings: the check tile over time, noise, bands, steps of gain. */
export class TlHeadRecord extends TlElement {
  static override properties = { record: { attribute: false }, shown: { state: true } };
  declare record: HeadRecord | undefined;
  /** Name of the chart in view. */
  declare shown: string;

  static override styles = [
    TlElement.styles,
    foldStyles,
    css`
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 26rem), 1fr));
        gap: var(--s3) var(--s4);
        align-items: start;
      }
      section {
        display: grid;
        gap: var(--s2);
        min-inline-size: 0;
      }
    `,
  ];

  constructor() {
    super();
    this.record = undefined;
    this.shown = 'level';
  }

  override render() {
    const t = headWords();
    const { record } = this;
    if (!record) return nothing;
    return html`<details @toggle=${() => void import('../../charts/control-chart.ts').catch(() => undefined)}>
      <summary>${t.record}</summary>
      <div class="inside">
        ${this.#checkTile(record.checkTile)}
        <div class="two">
          <section>
            <h3>${t.noise}</h3>
            <p>${record.noise ? benchSays(record.noise.sentence) : t.noNoise}</p>
            ${this.#gains(record)}
          </section>
          ${record.bands.length > 0 && record.bands.length <= 16 ? this.#bands(record) : nothing}
        </div>
      </div>
    </details>`;
  }

  #checkTile(history: TileHistory) {
    const t = headWords();
    const { charts } = history;
    // A single channel is offered where it is the one that went out of its limits.
    const offered = charts.filter((c, i) => i < 2 || c.signal !== 'inside').slice(0, MOST_CHARTS);
    const chart = offered.find((c) => c.name === this.shown) ?? offered[0];
    const named = (name: string): string => (name in t.chartNames ? t.chartNames[name as 'level'] : name);
    return html`<section>
      <h3>${t.checkTile}</h3>
      <p>${benchSays(history.sentence)}</p>
      ${
        chart
          ? html`<p>${t.checkTileLead}</p>
              <tl-choice
                label=${t.chart}
                .options=${offered.map((c) => ({ value: c.name, label: named(c.name) }))}
                .value=${chart.name}
                @tl-choose=${(e: CustomEvent<string>) => (this.shown = e.detail)}
              ></tl-choice>
              <div class="two">${this.#charts(history, chart, named(chart.name))}</div>`
          : nothing
      }
    </section>`;
  }

  #charts(history: TileHistory, chart: TileHistory['charts'][number], name: string) {
    const t = headWords();
    const { lower, upper, mean, meanRange, upperRange } = chart.limits;
    const times = history.sessions.map((at) => new Date(at));
    return html`<tl-control-chart
        heading="${t.values}: ${name}"
        summary=${benchSays(history.sentence)}
        unit=${t.reflectance}
        .points=${chart.values.map((value, i) => ({ when: times[i]!, value }))}
        .limits=${{ lower, centre: mean, upper }}
      ></tl-control-chart>
      <tl-control-chart
        heading="${t.ranges}: ${name}"
        summary=${t.range}
        unit=${t.range}
        .points=${chart.ranges.map((value, i) => ({ when: times[i + 1]!, value }))}
        .limits=${{ lower: 0, centre: meanRange, upper: upperRange }}
      ></tl-control-chart>`;
  }

  #gains({ gainSteps }: HeadRecord) {
    const t = headWords();
    if (gainSteps.length === 0)
      return html`<h3>${t.gains}</h3>
        <p>${t.noGains}</p>`;
    return html`<tl-table
      caption=${t.gains}
      .columns=${[{ heading: t.step }, { heading: t.leastMost, figures: true }]}
      .rows=${gainSteps.map(({ fromGain, toGain, ratios }) => [
        `${fromGain} → ${toGain}`,
        `${num(Math.min(...ratios), 4)} – ${num(Math.max(...ratios), 4)}`,
      ])}
    ></tl-table>`;
  }

  #bands({ bands }: HeadRecord) {
    const t = headWords();
    return html`<section>
      <h3>${t.bands}</h3>
      <p>${t.bandsLead}</p>
      <tl-table
        caption=${t.bands}
        .columns=${[
          { heading: t.band },
          { heading: t.catalogue, unit: t.nm, figures: true },
          { heading: t.centre, unit: t.nm, figures: true },
          { heading: t.width, unit: t.nm, figures: true },
          { heading: t.strength, unit: '%', figures: true },
        ]}
        .rows=${bands.map((b) => [
          b.name,
          b.catalogueNm === null ? '–' : num(b.catalogueNm, 0),
          num(b.centreNm, 1),
          num(b.fwhmNm, 1),
          b.strength === null ? '–' : num(100 * b.strength, 0),
        ])}
      ></tl-table>
    </section>`;
  }
}
define('tl-head-record', TlHeadRecord);
