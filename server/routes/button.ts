import { buttonRoutes } from '../api/button.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { conflict } from '../problem.ts';

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
      throw conflict(
        'The practice head is not in use; press the button of the head that is, or start the practice instrument.',
      );
    }
    await practice.press();
    return undefined;
  });
}
