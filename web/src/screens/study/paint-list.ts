import { html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { ASSUMED_DENSITY, paintNeeded } from '../../../../src/study/index.ts';
import '../../parts/figures.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { num } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import type { FamilyRow } from './family-rows.ts';

/** What to squeeze out for the whole study. */
export class TlPaintList extends TlElement {
  static override properties = { rows: { attribute: false }, profile: { attribute: false } };
  declare rows: readonly FamilyRow[];
  declare profile: PaletteProfile | undefined;

  constructor() {
    super();
    this.rows = [];
    this.profile = undefined;
  }

  override render() {
    const t = studyWords();
    const amounts = this.rows.flatMap((row) => (row.amount ? [row.amount] : []));
    if (amounts.length === 0) return nothing;
    const assumed = amounts.some((a) => a.assumedDensity.length > 0);
    return html`<section class="stack">
      <h2>${t.needed}</h2>
      <tl-figures
        .figures=${paintNeeded(amounts).map(({ id, grams }) => ({
          name: this.profile?.tubes.find((tube) => tube.id === id)?.label ?? id,
          figure: `${num(grams, 1)} g`,
        }))}
      ></tl-figures>
      ${assumed ? html`<p class="small">${t.assumed(num(ASSUMED_DENSITY, 1))}</p>` : nothing}
    </section>`;
  }
}
define('tl-paint-list', TlPaintList);
