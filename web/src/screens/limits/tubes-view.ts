import { html } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import '../../parts/table.ts';
import { limitsWords } from '../../text/limits.ts';
import { num } from '../../text/numbers.ts';
import type { OneMoreAnswer } from '../../workers/limits-jobs.ts';
import { labelIn } from '../mixing/pour-words.ts';

/** Every tube with a box: what is left out is worth what the limits lose. */
export function tubesInUse(
  profile: PaletteProfile,
  without: readonly string[],
  use: (id: string, on: boolean) => void,
) {
  const t = limitsWords();
  return html`<fieldset>
    <legend>${t.inUse}</legend>
    <p class="small">${t.inUseHow}</p>
    <div class="tubes">
      ${profile.tubes.map(
        (tube) =>
          html`<label
            ><input
              type="checkbox"
              .checked=${!without.includes(tube.id)}
              @change=${(e: Event) => use(tube.id, (e.target as HTMLInputElement).checked)}
            />${tube.label}</label
          >`,
      )}
    </div>
  </fieldset>`;
}

/** What each tube left out would add, most first. */
export function oneMoreView(profile: PaletteProfile, found: OneMoreAnswer | undefined) {
  const t = limitsWords();
  return html`<section class="stack">
    <h2>${t.more}</h2>
    ${
      found
        ? html`<tl-table
            caption=${t.moreTable}
            .columns=${[{ heading: t.tube }, { heading: t.gain, unit: '%', figures: true }]}
            .rows=${found.gains.map((g) => [
              labelIn(profile, g.tube),
              Number.isFinite(g.gain) ? num(100 * g.gain, 1) : '–',
            ])}
          ></tl-table>`
        : html`<p class="small">${t.moreNone}</p>`
    }
  </section>`;
}
