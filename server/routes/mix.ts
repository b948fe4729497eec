import { mixRoutes } from '../api/mix.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { mixAdviceRoutes } from '../api/mix-advice.ts';
import { predictFrom } from '../mixing/predict.ts';
import { whiteNameOf } from '../mixing/views.ts';
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
  answer(mixAdviceRoutes.films, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'films', request: body }),
  );
  answer(mixAdviceRoutes.nudges, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'nudges', request: body }),
  );
  answer(mixAdviceRoutes.betweenTwo, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'between', request: body }),
  );
  answer(mixAdviceRoutes.wholeParts, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'whole parts', request: body }),
  );
  answer(mixAdviceRoutes.highlights, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'highlights', request: body }),
  );
  answer(mixAdviceRoutes.oneMoreTube, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'one more', request: body }),
  );
  answer(mixAdviceRoutes.reach, ({ body }) =>
    mixing.ask(profileFor(body.profileId).document, { kind: 'reach', request: body }),
  );
}
