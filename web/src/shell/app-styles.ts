import { css } from 'lit';

/** The frame's layout: a rail at the side, or a bar under the thumb. */
export const appStyles = css`
  :host {
    display: grid;
    grid-template-columns: 13.5rem minmax(0, 1fr);
    min-block-size: 100dvh;
  }
  .skip {
    position: absolute;
    inset-inline-start: 8px;
    inset-block-start: -80px;
    background: var(--ground);
    z-index: 9;
  }
  .skip:focus-within {
    inset-block-start: 8px;
  }
  .rail {
    display: flex;
    flex-direction: column;
    gap: var(--s3);
    padding: var(--s3) var(--s2) var(--s3) var(--s3);
    padding-inline: var(--s3) var(--s2);
    position: sticky;
    inset-block-start: 0;
    block-size: 100dvh;
    overflow-y: auto;
  }
  .name {
    display: flex;
    align-items: center;
    gap: 10px;
    font-weight: 750;
    font-size: var(--t-lead);
    letter-spacing: -0.015em;
    text-decoration: none;
  }
  .mark {
    inline-size: 34px;
    block-size: 34px;
    flex: none;
  }
  .act h2 {
    font-size: var(--t-small);
    font-weight: 450;
    margin-block-end: 2px;
  }
  .place {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 8px;
    min-block-size: 40px;
    font-size: 1.1875rem;
    font-weight: 550;
    text-decoration: none;
  }
  .place:hover {
    text-decoration: underline;
    text-decoration-thickness: 2px;
  }
  .place[aria-current] {
    font-weight: 800;
  }
  .here {
    inline-size: 26px;
    block-size: 18px;
    flex: none;
  }
  .head {
    display: grid;
    line-height: 1.25;
    margin-block-start: auto;
    padding-block: 8px;
    border-block-start: var(--rule);
    text-decoration: none;
    font-size: var(--t-small);
  }
  .head:hover span {
    text-decoration: underline;
  }
  .rail .quiet {
    padding-inline: 0;
    font-size: var(--t-small);
  }
  main {
    min-inline-size: 0;
    border-inline-start: var(--edge);
    display: flex;
    flex-direction: column;
    min-block-size: 100dvh;
  }
  main:focus-visible {
    outline: none;
    box-shadow: none;
  }
  main > :not(.status):not(.away) {
    flex: 1;
  }
  .away,
  .failed {
    margin: var(--s3) clamp(16px, 4vw, 56px) 0;
  }
  .status {
    position: sticky;
    inset-block-end: 0;
    z-index: 3;
    pointer-events: none;
  }
  .failed h1 {
    margin-block-end: var(--s3);
  }
  .thumb {
    display: none;
  }
  .sheet {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: var(--s2);
  }
  .sheet .place {
    min-block-size: var(--target);
  }
  @media (max-width: 56rem) {
    :host {
      grid-template-columns: minmax(0, 1fr);
      padding-block-end: calc(64px + env(safe-area-inset-bottom));
    }
    .rail {
      display: none;
    }
    main {
      border: 0;
    }
    .status {
      position: fixed;
      inset-inline: 0;
      inset-block-end: calc(62px + env(safe-area-inset-bottom));
      z-index: 4;
    }
    .thumb {
      position: fixed;
      inset-inline: 0;
      inset-block-end: 0;
      z-index: 5;
      display: grid;
      grid-template-columns: repeat(4, minmax(0, 1fr));
      background: var(--ground);
      border-block-start: var(--edge);
      padding-block-end: env(safe-area-inset-bottom);
    }
    .thumb .place,
    .thumb button {
      display: grid;
      place-content: center;
      justify-items: center;
      gap: 4px;
      min-block-size: 62px;
      padding: 4px;
      border: 0;
      font-size: var(--t-body);
      font-weight: 600;
      text-align: center;
    }
    .thumb .here {
      inline-size: 40px;
      block-size: 10px;
    }
  }
  @media (max-width: 26rem) {
    .sheet {
      grid-template-columns: 1fr 1fr;
    }
  }
  @media print {
    :host {
      display: block;
      padding: 0;
    }
    .thumb {
      display: none;
    }
    main {
      display: block;
      border: 0;
    }
  }
`;
