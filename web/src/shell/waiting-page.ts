import { type TemplateResult, html } from 'lit';
import '../parts/notice.ts';
import '../parts/page-frame.ts';
import '../parts/progress.ts';
import type { OpenPalette } from '../workers/palette-controller.ts';

/** The page of a screen that works on a palette, while that is on its way or could not be fetched. */
export function waitingPage(
  palette: Extract<OpenPalette, { status: 'pending' | 'error' }>,
  { title, lead, fetching }: { readonly title: string; readonly lead: string; readonly fetching: string },
): TemplateResult {
  if (palette.status === 'pending') {
    return html`<tl-page heading=${title} lead=${lead}
      ><tl-progress label=${fetching}></tl-progress
    ></tl-page>`;
  }
  return html`<tl-page heading=${title}
    ><tl-notice kind="error" live>${palette.error.message}</tl-notice></tl-page
  >`;
}
