/** Styles every part and screen adopts: box model, headings, links, focus, the plain button. */
import { css } from 'lit';

export const baseStyles = css`
  :host {
    display: block;
    box-sizing: border-box;
    min-inline-size: 0;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  [hidden],
  :host([hidden]) {
    display: none !important;
  }
  h1,
  h2,
  h3 {
    margin: 0;
    line-height: 1.15;
    font-weight: 700;
    text-wrap: balance;
  }
  h1 {
    font-size: var(--t-title);
    letter-spacing: -0.01em;
  }
  h2 {
    font-size: var(--t-lead);
  }
  h3 {
    font-size: var(--t-body);
  }
  p,
  ul,
  ol,
  dl {
    margin: 0;
    max-inline-size: var(--measure);
  }
  a {
    color: inherit;
    text-underline-offset: 0.2em;
    text-decoration-thickness: 2px;
  }
  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
    letter-spacing: inherit;
  }
  button {
    min-block-size: var(--target);
    padding: 8px 16px;
    border: var(--edge);
    border-radius: 0;
    background: transparent;
    font-weight: 650;
    text-align: start;
    cursor: pointer;
  }
  button:hover:not(:disabled) {
    background: var(--sunk);
  }
  button:active:not(:disabled) {
    background: var(--ink);
    color: var(--on-ink);
  }
  button:disabled {
    border-style: dashed;
    font-weight: 400;
    cursor: default;
  }
  input[type='checkbox'] {
    appearance: none;
    inline-size: 24px;
    block-size: 24px;
    margin: 0;
    padding: 3px;
    flex: none;
    border: var(--edge);
    border-radius: 0;
    cursor: pointer;
    print-color-adjust: exact;
    forced-color-adjust: none;
  }
  input[type='checkbox']:checked {
    background: var(--ink) content-box;
  }
  /* A press that weighs little looks as a link does, and stands flush with the words around it. */
  button.quiet {
    border-color: transparent;
    border-inline-width: 0;
    padding-inline: 0;
    font-weight: inherit;
    text-decoration: underline;
    text-decoration-thickness: 2px;
    text-underline-offset: 0.2em;
  }
  :focus-visible {
    outline: 3px solid var(--ink);
    outline-offset: 3px;
    box-shadow: 0 0 0 3px var(--chalk);
  }
  /* A fold: its mark hangs, so that the second line of a long name stands under the first. */
  summary {
    padding: 10px 0;
    padding-inline-start: 1.15em;
    text-indent: -1.15em;
    min-block-size: var(--target);
    align-content: center;
    font-weight: 650;
    cursor: pointer;
  }
  .small {
    font-size: var(--t-small);
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: var(--s1) var(--s2);
    align-items: center;
  }
  .stack {
    display: grid;
    gap: var(--s3);
    align-content: start;
    min-inline-size: 0;
  }
  .stack > * {
    min-inline-size: 0;
  }
  /* A heading belongs to what follows it: nearer than to what went before. */
  .stack > h2 + *,
  .stack > h3 + * {
    margin-block-start: -12px;
  }
  .unseen {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  @media print {
    .no-print,
    button {
      display: none !important;
    }
    /* A heading stays with what it heads; what is looked at as one stands on one page. */
    h1,
    h2,
    h3,
    caption,
    summary {
      break-after: avoid;
    }
    figure,
    svg,
    tr,
    li,
    dl > div {
      break-inside: avoid;
    }
    p {
      orphans: 3;
      widows: 3;
    }
    .stack {
      display: block;
    }
    .stack > * + * {
      margin-block-start: 4mm;
    }
    .stack > h2 + *,
    .stack > h3 + * {
      margin-block-start: 1mm;
    }
  }
`;
