import { pairingRoutes } from '../api/pairing.ts';
import type { Answering } from '../answer.ts';
import type { Events } from '../events.ts';
import { COOKIE, PAIR_PAGE } from '../pairing/guard.ts';
import { PAIRED_DAYS, type Pairing } from '../pairing/pairing.ts';
import { qrPath } from '../pairing/qr-path.ts';
import { conflict, HttpProblem } from '../problem.ts';
import { say } from '../api/sentences/bench.ts';

/**
 * @param pairing absent when the program was not asked to pair
 * @param fromNetwork this app answers phones; the guard has kept them from every route but `pairPhone`
 */
export function pairingAnswers(
  answer: Answering,
  { events }: { readonly events: Events },
  pairing: Pairing | undefined,
  fromNetwork: boolean,
): void {
  const changed = (): void => events.send({ type: 'changed', what: 'pairing' });
  const on = (): Pairing => {
    if (pairing) return pairing;
    throw conflict(say('pairing-off'));
  };
  const view = () => {
    const shown = pairing?.code.shown;
    const url = shown ? `${pairing?.address}${PAIR_PAGE}#${shown.code}` : '';
    return {
      on: pairing !== undefined,
      address: pairing?.address ?? '',
      code: shown
        ? {
            code: shown.code,
            expiresAt: new Date(shown.expiresAt).toISOString(),
            triesLeft: shown.triesLeft,
            url,
            qr: qrPath(url),
          }
        : null,
      phones: pairing?.phones() ?? [],
    };
  };
  answer(pairingRoutes.getPairing, view);
  answer(pairingRoutes.showPairingCode, () => {
    on().code.renew();
    return view();
  });
  answer(pairingRoutes.endPairingCode, () => {
    on().code.end();
    return view();
  });
  answer(pairingRoutes.letGoOfPhone, ({ params }) => {
    on().letGo(params.phoneId);
    changed();
    return view();
  });
  answer(pairingRoutes.pairPhone, ({ body, req, res }) => {
    if (!fromNetwork) {
      throw new HttpProblem(403, say('computer-itself'));
    }
    let token: string;
    try {
      token = on().pair(body.code);
    } finally {
      // Also after a wrong try: the computer shows how many are left.
      changed();
    }
    res.cookie(COOKIE, token, {
      httpOnly: true,
      sameSite: 'strict',
      secure: req.secure,
      path: '/',
      maxAge: PAIRED_DAYS * 86_400_000,
    });
    return undefined;
  });
}
