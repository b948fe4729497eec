import { html, nothing } from 'lit';
import type { Finding } from '../../../server/api/words.ts';
import { findingSays } from '../text/findings.ts';
import './notice.ts';
import { TlElement, define } from './tl-element.ts';

/** What the bench found, in its own plain words: a note, a warning, or why a reading was not taken. */
export class TlFindings extends TlElement {
  static override properties = { findings: { attribute: false } };
  declare findings: readonly Finding[];

  constructor() {
    super();
    this.findings = [];
  }

  override render() {
    const seen = this.findings.filter((f) => f.level !== 'good');
    if (seen.length === 0) return nothing;
    return html`<div class="stack">
      ${seen.map(
        (f) =>
          html`<tl-notice
            live
            kind=${f.level === 'refused' ? 'error' : f.level === 'warning' ? 'warning' : 'note'}
            >${findingSays(f)}</tl-notice
          >`,
      )}
    </div>`;
  }
}
define('tl-findings', TlFindings);
