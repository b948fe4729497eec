import { LitElement, type CSSResultGroup } from 'lit';
import { baseStyles } from '../design/base-styles.ts';
import { SettingsController } from '../state/settings.ts';

/** What every part and screen extends: the base styles, and drawn again when language, theme or lamp changes. */
export class TlElement extends LitElement {
  static override styles: CSSResultGroup = [baseStyles];

  constructor() {
    super();
    new SettingsController(this);
  }
}

/** Registers an element once; a second registration (hot reload) is left alone. */
export function define(name: string, element: CustomElementConstructor): void {
  if (!customElements.get(name)) customElements.define(name, element);
}
