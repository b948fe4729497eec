import { css, html } from 'lit';
import { patchOfLab } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import '../../parts/choice.ts';
import '../../parts/compare.ts';
import '../../parts/dialog.ts';
import '../../parts/drawdown.ts';
import '../../parts/empty.ts';
import '../../parts/field.ts';
import '../../parts/figures.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { say } from '../../parts/status-line.ts';
import '../../parts/table.ts';
import '../../parts/term.ts';
import '../../parts/tube-card.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import type { Route } from '../../shell/route.ts';

const white = 'D65/10deg';
const earth = patchOfLab({ L: 42, a: 22, b: 34, white });
const earthRead = patchOfLab({ L: 43.1, a: 20.5, b: 33, white });
const thinWhite = patchOfLab({ L: 58, a: 8, b: 52, white });
const thinBlack = patchOfLab({ L: 24, a: -2, b: 9, white });
const outside = patchOfLab({ L: 55, a: -70, b: -40, white });
const grey = patchOfReflectance(new Float64Array(36).fill(0.2));

/** Every part on one page, for those who build screens. Development only; its words are not for painters. */
export class TlPartsScreen extends TlElement {
  static override properties = { route: { attribute: false }, open: { state: true } };
  declare route: Route | undefined;
  declare open: boolean;

  static override styles = [
    TlElement.styles,
    css`
      .patches {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s3);
      }
      .grid {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr));
        gap: var(--s3);
        align-items: start;
      }
    `,
  ];

  constructor() {
    super();
    this.route = undefined;
    this.open = false;
  }

  override render() {
    return html`<tl-page
      heading="Parts"
      lead="What every screen is made of. One block of chalk; everything else is ink."
      .terms=${['rung', 'masstone', 'value']}
      .cautions=${['A caution stands here, folded until wanted.']}
    >
      <tl-next
        slot="next"
        label="Read the 1:4 rung"
        hint="Space, any key, or the head's button"
        @click=${() => say('The next step was pressed.')}
      ></tl-next>
      <section class="stack">
        <h2>Drawdown</h2>
        <div class="patches">
          <tl-drawdown .patch=${earth} heading="Opaque" interval="0.4"></tl-drawdown>
          <tl-drawdown .patch=${thinWhite} .overBlack=${thinBlack} heading="A film"></tl-drawdown>
          <tl-drawdown .patch=${outside} heading="Outside"></tl-drawdown>
          <tl-drawdown .patch=${grey} heading="Half pulled" pulled="0.55"></tl-drawdown>
          <tl-drawdown heading="Bare"></tl-drawdown>
          <tl-drawdown size="s" .patch=${earth}></tl-drawdown>
        </div>
      </section>
      <section class="stack">
        <h2>Edge to edge</h2>
        <tl-compare .patches=${[earth, earthRead]} .names=${['predicted', 'measured']}></tl-compare>
      </section>
      <section class="stack">
        <h2>Fields</h2>
        <div class="grid">
          <tl-field label="Label" value="Ultramarine, the big tube"></tl-field>
          <tl-field label="White" kind="number" unit="g" min="0" max="500" value="2,4"></tl-field>
          <tl-field label="Refused" kind="number" unit="g" value="two" .touched=${true}></tl-field>
          <tl-field
            label="Drying"
            value="dry"
            .options=${[
              { value: 'fresh', label: 'fresh' },
              { value: 'dry', label: 'dry' },
            ]}
          ></tl-field>
          <tl-field
            label="Note"
            kind="area"
            rows="3"
            help="A word of help stands under its field."
          ></tl-field>
          <tl-choice
            label="A few, all in view"
            value="b"
            .options=${[
              { value: 'a', label: 'One' },
              { value: 'b', label: 'Other' },
              { value: 'c', label: 'Third' },
            ]}
          ></tl-choice>
        </div>
      </section>
      <section class="stack">
        <h2>Sentences</h2>
        <tl-notice>A note. Put the head on the <tl-term word="rung"></tl-term>.</tl-notice>
        <tl-notice kind="warning">The white moved by 0.6 % since it was read; read it again.</tl-notice>
        <tl-notice kind="caution" heading="PR108">Gloves; no sanding; no eating at the table.</tl-notice>
        <tl-notice kind="error">White tile read 0.31 at 450 nm; a clean tile reads 0.80 to 1.00.</tl-notice>
      </section>
      <section class="grid">
        <tl-progress label="Fitting" share="0.4"></tl-progress>
        <tl-progress label="Opening the port"></tl-progress>
        <button type="button" @click=${() => (this.open = true)}>Open a dialog</button>
        <button type="button" class="quiet">A quiet button</button>
      </section>
      <section class="grid">
        <tl-tube-card label="A tube" .masstone=${earth} .tint=${thinWhite}></tl-tube-card>
        <tl-tube-card label="A white" white .masstone=${grey}></tl-tube-card>
        <tl-figures
          .figures=${[
            { name: 'Value', figure: '3.2', means: 'good to about 0.1' },
            { name: 'Tinting strength', figure: '164 %', means: 'of the other tube' },
          ]}
        ></tl-figures>
      </section>
      <tl-empty heading="Nothing has been pulled yet"><p>An empty state says what to do.</p></tl-empty>
      <tl-table
        caption="Weighing plan"
        .columns=${[{ heading: 'Rung' }, { heading: 'Paint', unit: 'g', figures: true }]}
        .rows=${[
          ['masstone', '2.00'],
          ['1:4', '0.80'],
        ]}
      ></tl-table>
      <tl-dialog heading="A slip of paper" ?open=${this.open} @tl-close=${() => (this.open = false)}>
        <p>Escape closes it.</p>
      </tl-dialog>
    </tl-page>`;
  }
}
define('tl-parts-screen', TlPartsScreen);
