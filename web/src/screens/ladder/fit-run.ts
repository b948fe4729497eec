import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Fit } from '../../../../server/api/fits.ts';
import { call } from '../../api/call.ts';
import { listen } from '../../api/events.ts';

/** Starts a fit and follows it by events, with a look now and then in case one was missed. */
export class FitRun implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  running: Fit | undefined;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {}

  /** @throws ProblemError when the bench will not start one. */
  async start(): Promise<Fit> {
    let fit = await call('startFit', { body: {} });
    this.#show(fit);
    const ended = (f: Fit): boolean => f.state !== 'pending' && f.state !== 'running';
    if (!ended(fit)) {
      fit = await new Promise<Fit>((resolve) => {
        const done = (f: Fit): void => {
          stop();
          clearInterval(look);
          resolve(f);
        };
        const stop = listen('fit', ({ fit: f }) => {
          if (f.id !== fit.id) return;
          this.#show(f);
          if (ended(f)) done(f);
        });
        const look = setInterval(() => {
          void call('getFit', { params: { fitId: fit.id } }).then(
            (f) => (ended(f) ? done(f) : this.#show(f)),
            () => undefined,
          );
        }, 1500);
      });
    }
    this.running = undefined;
    this.#host.requestUpdate();
    return fit;
  }

  #show(fit: Fit): void {
    this.running = fit;
    this.#host.requestUpdate();
  }
}
