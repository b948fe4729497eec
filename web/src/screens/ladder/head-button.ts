/** The head's own button reads what stands in the far letters: the bench is told what that is as long as it is shown. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { ButtonTarget } from '../../../../server/api/button.ts';
import type { Ladder } from '../../../../server/api/ladders.ts';
import { call } from '../../api/call.ts';
import type { Target } from './target.ts';

export function buttonTarget(ladder: Ladder, target: Target | undefined): ButtonTarget | undefined {
  if (!target) return undefined;
  return target.kind === 'card'
    ? { ladderId: ladder.id, on: { side: target.side }, over: 'opaque' }
    : { ladderId: ladder.id, on: { rungId: target.rung.id }, over: target.over };
}

/** Aims the button after each drawing, if anything else is asked for than before; frees it when the host leaves. */
export class HeadButton implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #target: () => ButtonTarget | undefined;
  #asked = '';
  /** What the bench has said the button is armed for. */
  #aimed = '';
  #told: Promise<unknown> = Promise.resolve();

  constructor(host: ReactiveControllerHost, target: () => ButtonTarget | undefined) {
    this.#host = host;
    this.#target = target;
    host.addController(this);
  }

  /** A press counts for what is asked for now. Until the bench has said so it may still count for what was before. */
  get ready(): boolean {
    return this.#asked !== '' && this.#aimed === this.#asked;
  }

  hostUpdated(): void {
    this.#aim(this.#target());
  }

  hostDisconnected(): void {
    this.#aim(undefined);
  }

  #aim(target: ButtonTarget | undefined): void {
    const asked = target ? JSON.stringify(target) : '';
    if (asked === this.#asked) return;
    this.#asked = asked;
    // One after the other: the last that was asked for is the one that stands. A bench that is away is said elsewhere.
    this.#told = this.#told
      .then(() => (target ? call('aimButton', { body: target }) : call('freeButton')))
      .then(() => {
        this.#aimed = asked;
        this.#host.requestUpdate();
      })
      .catch(() => undefined);
  }
}
