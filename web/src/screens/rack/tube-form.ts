import { css, html, nothing } from 'lit';
import type { NewTube, Tube } from '../../../../server/api/tubes.ts';
import { type Answer, call } from '../../api/call.ts';
import '../../parts/choice.ts';
import { type FieldChange, type TlField } from '../../parts/field.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { parseNumber } from '../../text/numbers.ts';
import { rackWords } from '../../text/rack.ts';
import { BLANK, type Draft, draftOf, pigmentCodes } from './tube-draft.ts';

/** What is written on a tube, old or new. Sends `tl-saved` when the rack has it. */
export class TlTubeForm extends TlElement {
  static override properties = {
    tube: { attribute: false },
    needsWhite: { type: Boolean },
    needsPalette: { type: Boolean },
    practicePaints: { attribute: false },
    draft: { state: true },
    busy: { state: true },
    refusal: { state: true },
  };
  /** The tube to change; undefined for a new one. */
  declare tube: Tube | undefined;
  /** The palette has no white yet. */
  declare needsWhite: boolean;
  /** There is no palette yet: the first tube begins one. */
  declare needsPalette: boolean;
  declare practicePaints: Answer<'listPracticePaints'>;
  declare draft: Draft;
  declare busy: boolean;
  declare refusal: string;

  static override styles = [
    TlElement.styles,
    css`
      form {
        display: grid;
        gap: var(--s3);
      }
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 15rem), 1fr));
        gap: var(--s3);
        align-items: start;
      }
      details .two {
        padding-block: 8px var(--s3);
      }
      /* In sight however long the form is. */
      tl-next {
        position: sticky;
        inset-block-end: 0;
        z-index: 1;
      }
    `,
  ];

  constructor() {
    super();
    this.tube = undefined;
    this.needsWhite = false;
    this.needsPalette = false;
    this.practicePaints = [];
    this.draft = BLANK;
    this.busy = false;
    this.refusal = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    const { tube } = this;
    this.draft = tube ? draftOf(tube) : { ...BLANK, role: this.needsWhite ? 'white' : '' };
    this.#moreIsWritten =
      tube !== undefined && Boolean(tube.batch || tube.bought || tube.density || tube.note);
    void this.updateComplete.then(() => this.renderRoot.querySelector<TlField>('tl-field')?.focus());
  }

  override render() {
    const t = rackWords();
    const { draft } = this;
    return html`<form @submit=${this.#save} @keydown=${this.#enter}>
      ${this.#field('label', t.label, { required: true, help: t.labelHelp })}
      ${this.#field('pigments', t.pigments, { help: t.pigmentsHelp })}
      <tl-choice
        label=${t.role}
        .options=${[
          { value: '', label: t.roleColour },
          { value: 'white', label: t.roleWhite },
        ]}
        .value=${draft.role}
        @tl-choose=${(e: CustomEvent<string>) => this.#set('role', e.detail)}
      ></tl-choice>
      ${!this.tube && this.practicePaints.length > 0 ? this.#practice() : nothing}
      <details ?open=${this.#moreIsWritten}>
        <summary>${t.moreOnTube}</summary>
        ${this.#more()}
      </details>
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      <tl-next
        label=${this.tube ? t.saveChange : t.save}
        ?busy=${this.busy}
        @click=${() => void this.#send()}
      ></tl-next>
      ${this.tube ? this.#away(this.tube) : nothing}
    </form>`;
  }

  /** What else stands on this tube, at the time the form opens. */
  #moreIsWritten = false;

  /** Nobody has to fill in any of it to measure a tube. */
  #more() {
    const t = rackWords();
    const { draft } = this;
    return html`<div class="two">
        ${this.#field('batch', t.batchLabel)}
        <tl-field
          label=${t.boughtLabel}
          kind="date"
          .value=${draft.bought}
          @tl-change=${(e: CustomEvent<FieldChange>) => this.#set('bought', e.detail.text)}
        ></tl-field>
        <tl-field
          label=${t.dryingLabel}
          .value=${draft.drying}
          .options=${(['unknown', 'fresh', 'touch-dry', 'dry'] as const).map((value) => ({
            value,
            label: t.drying[value],
          }))}
          @tl-change=${(e: CustomEvent<FieldChange>) => this.#set('drying', e.detail.text)}
        ></tl-field>
        <tl-field
          label=${t.density}
          kind="number"
          unit="g/ml"
          min="0.1"
          max="30"
          help=${t.densityHelp}
          .value=${draft.density}
          @tl-change=${(e: CustomEvent<FieldChange>) => this.#set('density', e.detail.text)}
        ></tl-field>
      </div>
      ${this.#field('note', t.note)}`;
  }

  #practice() {
    const t = rackWords();
    return html`<tl-field
      label=${t.practicePaint}
      help=${t.practiceHelp}
      .value=${this.draft.practice}
      .options=${[
        { value: '', label: t.realPaint },
        ...this.practicePaints.map((p) => ({
          value: p.id,
          label: [p.label, ...p.pigments].join(' · '),
        })),
      ]}
      @tl-change=${(e: CustomEvent<FieldChange>) => this.#choosePractice(e.detail.text)}
    ></tl-field>`;
  }

  #choosePractice(id: string): void {
    const paint = this.practicePaints.find((p) => p.id === id);
    const before = this.practicePaints.find((p) => p.id === this.draft.practice);
    // What an earlier choice filled in gives way; what was typed stays.
    const own = (typed: string, filled: string | undefined): string => (typed === filled ? '' : typed);
    this.draft = {
      ...this.draft,
      practice: id,
      ...(paint
        ? {
            label: own(this.draft.label, before?.label) || paint.label,
            pigments: own(this.draft.pigments, before?.pigments.join(' ')) || paint.pigments.join(' '),
            role: paint.white ? 'white' : '',
          }
        : {}),
    };
  }

  #away(tube: Tube) {
    const t = rackWords();
    const bare = tube.known.stage === 'not measured';
    return html`<div class="stack">
      ${bare ? nothing : html`<p class="small">${t.putAwayNote}</p>`}
      <div class="row">
        <button type="button" @click=${() => void this.#putAway(tube)}>
          ${tube.putAway ? t.takeBack : t.putAway}
        </button>
        ${
          bare
            ? html`<button type="button" class="quiet" @click=${() => void this.#remove(tube)}>
                ${t.remove}
              </button>`
            : nothing
        }
      </div>
    </div>`;
  }

  #field(key: 'label' | 'pigments' | 'batch' | 'note', label: string, more: Partial<TlField> = {}) {
    return html`<tl-field
      name=${key}
      label=${label}
      ?required=${more.required ?? false}
      help=${more.help ?? ''}
      .value=${this.draft[key]}
      @tl-change=${(e: CustomEvent<FieldChange>) => this.#set(key, e.detail.text)}
    ></tl-field>`;
  }

  #set(key: keyof Draft, text: string): void {
    this.draft = { ...this.draft, [key]: text };
  }

  readonly #save = (event: Event): void => {
    event.preventDefault();
    void this.#send();
  };

  /** Enter in a field keeps the tube, as in a form of the browser's own. */
  readonly #enter = (event: KeyboardEvent): void => {
    const from = event.composedPath()[0];
    if (event.key === 'Enter' && from instanceof HTMLInputElement) {
      event.preventDefault();
      void this.#send();
    }
  };

  async #send(): Promise<void> {
    const fields = [...this.renderRoot.querySelectorAll<TlField>('tl-field')];
    const wrong = fields.filter((f) => !f.check());
    if (wrong.length > 0) {
      const fold = wrong[0]?.closest('details');
      if (fold) fold.open = true;
      wrong[0]?.focus();
      return;
    }
    const { draft } = this;
    const written = {
      label: draft.label.trim(),
      pigments: pigmentCodes(draft.pigments),
      batch: draft.batch.trim(),
      bought: draft.bought || null,
      density: parseNumber(draft.density) ?? null,
      note: draft.note.trim(),
      drying: draft.drying as NonNullable<NewTube['drying']>,
      role: draft.role === 'white' ? ('white' as const) : null,
    };
    const { tube } = this;
    await this.#try(async () => {
      const t = rackWords();
      if (tube) {
        await call('changeTube', { params: { tubeId: tube.id }, body: written });
        return t.changed(written.label);
      }
      if (this.needsPalette) await call('createPalette', { body: { title: t.paletteTitle } });
      await call('createTube', { body: { ...written, practicePaintId: draft.practice || null } });
      return t.saved(written.label);
    });
  }

  async #putAway(tube: Tube): Promise<void> {
    await this.#try(async () => {
      await call('changeTube', { params: { tubeId: tube.id }, body: { putAway: !tube.putAway } });
      return tube.putAway ? rackWords().saved(tube.label) : rackWords().goneAway(tube.label);
    });
  }

  async #remove(tube: Tube): Promise<void> {
    await this.#try(async () => {
      await call('deleteTube', { params: { tubeId: tube.id } });
      return rackWords().removed(tube.label);
    });
  }

  async #try(work: () => Promise<string>): Promise<void> {
    this.busy = true;
    this.refusal = '';
    try {
      say(await work());
      this.dispatchEvent(new CustomEvent('tl-saved', { bubbles: true, composed: true }));
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    } finally {
      this.busy = false;
    }
  }
}
define('tl-tube-form', TlTubeForm);
