import { css } from 'lit';

export const sessionStyles = css`
  :host {
    display: grid;
    gap: var(--s4);
  }
  .table {
    display: grid;
    grid-template-columns: minmax(0, 1.7fr) minmax(0, 1fr);
    gap: var(--s4) var(--s5);
    align-items: start;
  }
  .step {
    display: grid;
    gap: var(--s3);
    align-content: start;
  }
  .far {
    font-size: clamp(2.75rem, 5.6vw, 5.25rem);
    font-weight: 800;
    line-height: 1;
    letter-spacing: -0.025em;
    max-inline-size: none;
    overflow-wrap: anywhere;
    min-block-size: 2em;
    display: grid;
    align-content: end;
    text-wrap: balance;
  }
  .near {
    font-size: var(--t-lead);
    line-height: 1.3;
    min-block-size: 2.6em;
  }
  .said {
    min-block-size: 7rem;
    border: 2px solid transparent;
    padding: 12px 20px;
    display: grid;
    align-content: center;
  }
  .verdict {
    font-size: clamp(1.75rem, 4.4vw, 3.5rem);
    font-weight: 800;
    line-height: 1.1;
  }
  .kept {
    border-color: var(--ink);
    border-inline-start-width: 20px;
  }
  .sent-back,
  .not-taken {
    background: var(--ink);
    color: var(--on-ink);
  }
  .entry {
    border-block-start: var(--edge);
    padding-block-start: var(--s3);
  }
  @media (max-width: 70rem) {
    .table {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media (max-width: 56rem) {
    .step tl-next {
      position: fixed;
      inset-inline: 0;
      inset-block-end: calc(62px + var(--said, 0px) + env(safe-area-inset-bottom));
      z-index: 4;
    }
    .far {
      min-block-size: 2em;
    }
    .said {
      min-block-size: 6rem;
    }
  }
  @media (max-height: 30rem) {
    .step tl-next {
      position: static;
    }
  }
`;
