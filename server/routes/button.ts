import { buttonRoutes } from '../api/button.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { conflict } from '../problem.ts';
import { say } from '../api/sentences/instrument.ts';

export function buttonAnswers(answer: Answering, { button, instrument }: Bench): void {
  answer(buttonRoutes.aimButton, ({ body }) => {
    button.aim(body);
    return undefined;
  });
  answer(buttonRoutes.freeButton, () => {
    button.free();
    return undefined;
  });
  answer(buttonRoutes.pressPracticeButton, async () => {
    const { practice } = instrument;
    if (!practice) {
      throw conflict(say('practice-not-in-use'));
    }
    await practice.press();
    return undefined;
  });
}
