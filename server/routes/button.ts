import { buttonRoutes } from '../api/button.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';

export function buttonAnswers(answer: Answering, { button }: Bench): void {
  answer(buttonRoutes.aimButton, async ({ body }) => {
    await button.aim(body);
    return undefined;
  });
  answer(buttonRoutes.freeButton, async () => {
    await button.free();
    return undefined;
  });
  answer(buttonRoutes.pressPracticeButton, async () => {
    await button.pressPractice();
    return undefined;
  });
}
