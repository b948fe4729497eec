import { css } from 'lit';

export const benchStyles = css`
  .table {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    gap: var(--s4) var(--s5);
    align-items: start;
  }
  @media (max-width: 70rem) {
    .table {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  .steps {
    list-style: none;
    padding: 0;
    max-inline-size: none;
    display: grid;
  }
  li {
    display: grid;
    grid-template-columns: 28px minmax(0, 1fr) auto;
    gap: 4px var(--s2);
    align-items: start;
    padding-block: 14px;
    border-block-start: var(--rule);
    min-block-size: 5.5rem;
  }
  li:last-child {
    border-block-end: var(--rule);
  }
  h2 {
    font-size: var(--t-lead);
  }
  section > button {
    justify-self: start;
  }
  i {
    inline-size: 28px;
    block-size: 20px;
    margin-block-start: 4px;
    border: var(--edge);
  }
  .good i {
    background: var(--ink);
  }
  .refused i {
    background: repeating-linear-gradient(-45deg, var(--ink) 0 3px, transparent 3px 7px);
  }
  @media (max-width: 34rem) {
    li {
      grid-template-columns: 28px minmax(0, 1fr);
    }
    li button {
      grid-column: 2;
      justify-self: start;
    }
  }
`;
