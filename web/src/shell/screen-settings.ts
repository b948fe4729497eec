import { css, html } from 'lit';
import '../parts/choice.ts';
import { TlElement, define } from '../parts/tl-element.ts';
import {
  LAMPS,
  LANGUAGES,
  type Lamp,
  type Language,
  THEMES,
  type Theme,
  changeSettings,
  settings,
} from '../state/settings.ts';
import { shellWords } from '../text/shell.ts';

const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch' };

/** Theme, language, viewing lamp, tone and speech: what this person chose for this screen. */
export class TlScreenSettings extends TlElement {
  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
      }
      label {
        display: flex;
        gap: 12px;
        align-items: center;
        min-block-size: var(--target);
      }
      input {
        inline-size: 24px;
        block-size: 24px;
        accent-color: #000;
        flex: none;
      }
    `,
  ];

  override render() {
    const t = shellWords();
    const now = settings();
    const choose =
      <K extends 'theme' | 'language' | 'lamp'>(key: K) =>
      (e: CustomEvent<string>): void =>
        changeSettings({ [key]: e.detail as Theme & Language & Lamp });
    return html`
      <tl-choice
        label=${t.surround}
        .options=${THEMES.map((value) => ({ value, label: t.themes[value] }))}
        .value=${now.theme}
        @tl-choose=${choose('theme')}
      ></tl-choice>
      <tl-choice
        label=${t.language}
        .options=${LANGUAGES.map((value) => ({ value, label: LANGUAGE_NAMES[value] }))}
        .value=${now.language}
        @tl-choose=${choose('language')}
      ></tl-choice>
      <div class="stack">
        <tl-choice
          label=${t.lamp}
          .options=${LAMPS.map((value) => ({ value, label: t.lamps[value] }))}
          .value=${now.lamp}
          @tl-choose=${choose('lamp')}
        ></tl-choice>
        <p class="small">${t.lampNote} ${t.screenNote}</p>
      </div>
      <div>
        ${this.#tick(t.sound, now.tone, (tone) => changeSettings({ tone }))}
        ${this.#tick(t.speech, now.speech, (speech) => changeSettings({ speech }))}
      </div>
    `;
  }

  #tick(label: string, checked: boolean, then: (on: boolean) => void) {
    return html`<label
      ><input
        type="checkbox"
        .checked=${checked}
        @change=${(e: Event) => then((e.target as HTMLInputElement).checked)}
      />${label}</label
    >`;
  }
}
define('tl-screen-settings', TlScreenSettings);
