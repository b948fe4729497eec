import { mixRoutes } from '../api/mix.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { predictFrom, whiteNameOf } from '../mixing/predict.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { currentProfileOr404, profileIn, profileOr404 } from './profiles.ts';

export function mixAnswers(answer: Answering, bench: Bench): void {
  const { db } = bench;
  const profileFor = (id: string | undefined): PaletteProfile =>
    profileIn(id === undefined ? currentProfileOr404(db) : profileOr404(db, id));
  answer(mixRoutes.predict, ({ body }) =>
    predictFrom(profileFor(body.profileId), body.masses, whiteNameOf(body.white)),
  );
}
