import { css, html, nothing } from 'lit';
import type { State } from '../../../../server/api/state.ts';
import type { Tube } from '../../../../server/api/tubes.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { linkTo } from '../../shell/route.ts';
import { changeSettings } from '../../state/settings.ts';
import { rackWords } from '../../text/rack.ts';

interface Step {
  readonly words: string;
  readonly done: boolean;
  readonly href?: string;
}

/** The first walk: five minutes with invented paints. It knows what is done, and leads to what is not. */
export class TlFirstWalk extends TlElement {
  static override properties = { state: { attribute: false }, tubes: { attribute: false } };
  declare state: State | undefined;
  declare tubes: readonly Tube[];

  static override styles = [
    TlElement.styles,
    css`
      section {
        border: var(--edge);
        border-inline-start-width: 12px;
        padding: var(--s2) var(--s3);
        display: grid;
        max-inline-size: calc(var(--measure) + 5rem);
      }
      header {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        align-items: baseline;
        gap: 0 var(--s3);
      }
      .marks {
        display: flex;
        gap: 4px;
        margin-block: 4px 12px;
      }
      .here {
        font-size: var(--t-lead);
        font-weight: 650;
        line-height: 1.3;
      }
      summary {
        font-weight: 450;
      }
      ol {
        list-style: none;
        padding: 0;
        display: grid;
      }
      li {
        display: grid;
        grid-template-columns: 28px minmax(0, 1fr);
        gap: 12px;
        padding-block: 7px;
        align-items: start;
      }
      i {
        inline-size: 28px;
        block-size: 18px;
        border: var(--edge);
      }
      li i {
        margin-block-start: 3px;
      }
      .done i,
      i.done {
        background: var(--ink);
      }
      .now {
        font-weight: 700;
      }
    `,
  ];

  constructor() {
    super();
    this.state = undefined;
    this.tubes = [];
  }

  get #steps(): readonly Step[] {
    const { walk } = rackWords();
    const { state, tubes } = this;
    const white = tubes.find((t) => t.role === 'white');
    const colours = tubes.filter((t) => t.role === null);
    const read = (t: Tube): boolean => t.known.stage === 'ladder complete' || t.known.stage === 'constants';
    const begun = colours.find((t) => t.known.stage === 'ladder begun') ?? colours[0];
    const full = colours.find(read);
    const fitted = tubes.some((t) => t.known.stage === 'constants');
    const ladder = (t: Tube | undefined): string => (t ? linkTo('ladder', t.id) : linkTo('ladder'));
    return [
      { words: walk.rack, done: tubes.length > 1 },
      { words: walk.head, done: state?.instrument.readyToRead === true || fitted, href: linkTo('bench') },
      { words: walk.white, done: white !== undefined && read(white), href: ladder(white) },
      { words: walk.colour, done: full !== undefined, href: ladder(begun) },
      { words: walk.fit, done: fitted, href: ladder(full) },
      { words: walk.mix, done: false, href: linkTo('mixing') },
    ];
  }

  override render() {
    const t = rackWords();
    const steps = this.#steps;
    const now = steps.findIndex((s) => !s.done);
    const next = steps[now];
    return html`<section>
      <header>
        <h2>${t.walkTitle}</h2>
        <button type="button" class="quiet" @click=${() => changeSettings({ walkDone: true })}>
          ${t.walkDone}
        </button>
      </header>
      <div class="marks" aria-hidden="true">
        ${steps.map((s) => html`<i class=${s.done ? 'done' : ''}></i>`)}
      </div>
      <p class="here">${next?.href ? html`<a href=${next.href}>${next.words}</a>` : next?.words}</p>
      <details>
        <summary>${t.walkSteps}</summary>
        <ol>
          ${steps.map(
            (s, i) =>
              html`<li
                class=${s.done ? 'done' : i === now ? 'now' : ''}
                aria-current=${i === now ? 'step' : nothing}
              >
                <i aria-hidden="true"></i>
                <span
                  >${s.words}${s.done ? html`<span class="unseen"> (${t.stepDone})</span>` : nothing}</span
                >
              </li>`,
          )}
        </ol>
      </details>
    </section>`;
  }
}
define('tl-first-walk', TlFirstWalk);
