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
  static override properties = {
    rows: { attribute: false },
    profile: { attribute: false },
    close: { type: Boolean },
  };
  declare rows: readonly FamilyRow[];
  declare profile: PaletteProfile | undefined;
  /** One line, for a printed sheet. */
  declare close: boolean;

  constructor() {
    super();
    this.rows = [];
    this.profile = undefined;
    this.close = false;
  }

  override render() {
    const t = studyWords();
    const amounts = this.rows.flatMap((row) => (row.amount ? [row.amount] : []));
    if (amounts.length === 0) return nothing;
    const assumed = amounts.some((a) => a.assumedDensity.length > 0);
    const paints = paintNeeded(amounts).map(({ id, grams }) => ({
      name: this.profile?.tubes.find((tube) => tube.id === id)?.label ?? id,
      figure: `${num(grams, 1)} g`,
    }));
    if (this.close) {
      return html`<p><b>${t.needed}:</b> ${paints.map((p) => `${p.name} ${p.figure}`).join(', ')}</p>`;
    }
    return html`<section class="stack">
      <h2>${t.needed}</h2>
      <tl-figures .figures=${paints}></tl-figures>
      ${assumed ? html`<p class="small">${t.assumed(num(ASSUMED_DENSITY, 1))}</p>` : nothing}
    </section>`;
  }
}
define('tl-paint-list', TlPaintList);
