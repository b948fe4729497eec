import { html } from 'lit';
import type { TubeFitAnswer } from '../../../../server/api/fits.ts';
import type { TubeChecks, TubeFacts } from '../../../../server/api/tube-facts.ts';
import type { ProfileTube } from '../../../../src/profile/schema.ts';
import '../../parts/figures.ts';
import type { Figure } from '../../parts/figures.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { num } from '../../text/numbers.ts';
import { tubeFactsWords } from '../../text/tube-facts.ts';
import { trustFigures } from './tube-facts.ts';
import { ownName } from './rung-name.ts';

/** Ratios that differ by less than this are called the same, in per cent. */
const SAME_PERCENT = 1;

interface RungRow {
  readonly name: string;
  readonly deltaE00: number;
  readonly leftOut: number | null;
  readonly mcdm: number | null;
  readonly repeats: number;
  readonly lnRatioError: number;
}

/** What a tube's constants rest on: rung by rung, its checks, and where its doubt comes from. */
export class TlTubeEvidence extends TlElement {
  static override properties = {
    tube: { attribute: false },
    fit: { attribute: false },
    facts: { attribute: false },
    checks: { attribute: false },
  };
  declare tube: ProfileTube;
  declare fit: TubeFitAnswer | undefined;
  declare facts: TubeFacts | undefined;
  declare checks: TubeChecks | undefined;

  override render() {
    const t = tubeFactsWords();
    const rows = this.#rows();
    return html`<div class="stack">
      <tl-figures
        .figures=${[...trustFigures(this.tube), ...this.#checkFigures(), ...this.#doubtFigures()]}
      ></tl-figures>
      ${
        rows.length > 0
          ? html`<tl-table
              caption=${t.evidence}
              .columns=${[
                { heading: t.rung },
                { heading: t.residual, unit: t.deltaE, figures: true },
                { heading: t.fromOthers, unit: t.deltaE, figures: true },
                { heading: t.repeats, figures: true },
                { heading: t.scatter, unit: t.mcdm, figures: true },
                { heading: t.weighing },
              ]}
              .rows=${[...rows.map(cells), ...this.#leftOut()]}
            ></tl-table>`
          : ''
      }
    </div>`;
  }

  #rows(): RungRow[] {
    if (this.fit) {
      return this.fit.rungs.map((r) => ({ ...r, leftOut: r.leftOutDeltaE00 }));
    }
    return (this.tube.evidence?.rungs ?? []).map((r) => ({
      name: ownName(r.id, this.tube),
      deltaE00: r.deltaE00,
      leftOut: r.leftOutDeltaE00 ?? null,
      mcdm: r.mcdm ?? null,
      repeats: r.repeats,
      lnRatioError: r.lnRatioError,
    }));
  }

  /** Rungs that were not believed stand in the table, for they were painted and read. */
  #leftOut(): string[][] {
    const t = tubeFactsWords();
    return (this.fit?.notBelieved ?? []).map((rung) => [
      rung.name,
      '–',
      '–',
      '–',
      '–',
      rung.readsLike === null ? t.leftOutRung : `1:${num(rung.readsLike, 1)}, ${t.leftOutRung}`,
    ]);
  }

  #checkFigures(): Figure[] {
    const t = tubeFactsWords();
    const { checks } = this;
    if (!checks) return [];
    const { count, mean, worst, inside95 } = checks;
    if (mean === null) return [{ name: t.checks, figure: t.noChecks, means: t.noChecksMeans }];
    return [
      {
        name: t.checks,
        figure: num(mean, 2),
        means: t.checksMeans(num(count, 0), num(worst ?? 0, 1), num(100 * (inside95 ?? 0), 0)),
      },
    ];
  }

  #doubtFigures(): Figure[] {
    const t = tubeFactsWords();
    if (!this.facts) return [];
    const { doubt } = this.facts;
    const places = (['darks', 'middles', 'lights'] as const).flatMap((place) =>
      doubt[place] === null ? [] : [t.ranges[place](num(doubt[place], 1))],
    );
    return [
      { name: t.doubt, figure: num(doubt.radius, 1), means: `${t.doubtMeans}; ${places.join(', ')}` },
      {
        name: t.mostly,
        figure: t.share(num(100 * doubt.shares[doubt.dominant], 0)),
        means: `${t.sources[doubt.dominant]}: ${t.sourcesMean[doubt.dominant]}`,
      },
    ];
  }
}

function cells(rung: RungRow): string[] {
  const t = tubeFactsWords();
  const percent = 100 * Math.expm1(rung.lnRatioError);
  const reads =
    Math.abs(percent) < SAME_PERCENT
      ? t.agrees
      : percent > 0
        ? t.more(num(percent, 0))
        : t.less(num(-percent, 0));
  return [
    rung.name,
    num(rung.deltaE00, 2),
    rung.leftOut === null ? '–' : num(rung.leftOut, 2),
    num(rung.repeats, 0),
    rung.mcdm === null ? '–' : num(rung.mcdm, 2),
    reads,
  ];
}

define('tl-tube-evidence', TlTubeEvidence);
