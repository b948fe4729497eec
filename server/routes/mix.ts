import { mixRoutes } from '../api/mix.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { predictFrom, whiteNameOf } from '../mixing/predict.ts';
import type { ProfileRow } from '../store/profiles.ts';
import { currentProfileOr404, profileIn, profileOr404 } from './profiles.ts';

export function mixAnswers(answer: Answering, bench: Bench): void {
  const { db, mixing } = bench;
  const profileFor = (id: string | undefined): ProfileRow =>
    id === undefined ? currentProfileOr404(db) : profileOr404(db, id);
  answer(mixRoutes.predict, ({ body }) =>
    predictFrom(profileIn(profileFor(body.profileId)), body.masses, whiteNameOf(body.white)),
  );
  answer(mixRoutes.match, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'match', request: body }),
  );
  answer(mixRoutes.addition, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'addition', request: body }),
  );
  answer(mixRoutes.limits, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'limits', request: body }),
  );
  answer(mixRoutes.valueString, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'value string', request: body }),
  );
}
