import { css } from 'lit';

export const rackStyles = css`
  .shelf {
    list-style: none;
    padding: 0;
    max-inline-size: none;
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 28rem), 1fr));
    gap: var(--s4) var(--s4);
  }
  .shelf:empty {
    display: none;
  }
  .tube {
    display: grid;
    grid-template-columns: 10rem minmax(0, 1fr);
    gap: var(--s3);
    align-items: start;
    align-content: start;
    border-block-start: var(--edge);
    padding-block-start: var(--s2);
  }
  .written {
    display: grid;
    gap: 8px;
    min-inline-size: 0;
    overflow-wrap: anywhere;
  }
  .known b {
    font-weight: 700;
  }
  .actions {
    gap: 8px 16px;
    margin-block-start: 4px;
  }
  .action + .action {
    margin-inline-start: -8px;
  }
  .action {
    display: grid;
    align-content: center;
    min-block-size: var(--target);
    padding: 6px 16px;
    border: var(--edge);
    font-weight: 650;
    text-decoration: none;
  }
  .action:hover {
    background: var(--sunk);
  }
  @media (max-width: 34rem) {
    .tube {
      grid-template-columns: 6.5rem minmax(0, 1fr);
      gap: var(--s2);
    }
  }
`;
