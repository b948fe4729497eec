import { css } from 'lit';

/** Neutral throughout: ink and surround come from the page, colour only from paint. */
export const chartStyles = css`
  :host {
    display: block;
    min-width: 0;
    break-inside: avoid;
  }
  figure {
    margin: 0;
  }
  figcaption {
    font-weight: 600;
    margin-block-end: 0.4rem;
  }
  .key {
    font-size: var(--t-small);
    margin-block: -0.3rem 0.4rem;
  }
  .plot {
    position: relative;
    touch-action: pan-y;
  }
  svg {
    display: block;
    position: relative;
    font-family: inherit;
    font-variant-numeric: tabular-nums;
    overflow: visible;
    direction: ltr;
  }
  .scaled {
    inline-size: 100%;
    block-size: auto;
  }
  canvas {
    position: absolute;
    inset: 0;
  }
  .foot {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1rem;
    align-items: baseline;
    justify-content: space-between;
    margin-block: 0.25rem;
  }
  output {
    flex: 1 1 16rem;
    min-height: 2.8em;
    font-variant-numeric: tabular-nums;
    line-height: 1.4;
  }
  .save button {
    font: inherit;
    font-size: var(--t-small);
    border-color: transparent;
    padding: 8px;
    min-inline-size: var(--target);
    text-align: center;
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  .save button:hover {
    border-color: var(--ink);
  }
  summary {
    font-weight: 450;
  }
  .scroll {
    overflow: auto;
    max-block-size: 22rem;
  }
  table {
    border-collapse: collapse;
    font-variant-numeric: tabular-nums;
    font-size: var(--t-small);
  }
  th,
  td {
    text-align: end;
    padding: 0.25em 0.9em 0.25em 0;
    font-weight: 400;
    border-block-end: 1px solid color-mix(in srgb, currentColor 20%, transparent);
    white-space: nowrap;
  }
  thead th {
    font-weight: 600;
  }
  th:first-child {
    text-align: start;
  }
  @media print {
    .foot,
    details {
      display: none;
    }
    .plot {
      block-size: auto !important;
    }
    svg {
      max-inline-size: 100%;
      block-size: auto;
    }
  }
`;
