import { css } from 'lit';

/** A part of the Bench that is folded away until it is wanted. */
export const foldStyles = css`
  details {
    border-block-start: var(--edge);
  }
  summary {
    font-size: var(--t-lead);
  }
  details[open] {
    padding-block-end: var(--s3);
  }
  .inside {
    display: grid;
    gap: var(--s3);
    padding-block-start: 8px;
  }
  h3 {
    font-size: var(--t-body);
  }
  tl-field {
    max-inline-size: 36rem;
  }
  .inside > p,
  .inside > form > p {
    max-inline-size: 60ch;
  }
  ul {
    list-style: none;
    padding: 0;
    margin: 0;
    max-inline-size: none;
  }
  li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 8px var(--s3);
    align-items: start;
    padding-block: 14px;
    border-block-start: var(--rule);
  }
  li h3,
  li p {
    margin: 0;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  button {
    justify-self: start;
  }
  @media (max-width: 60rem) {
    li {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
