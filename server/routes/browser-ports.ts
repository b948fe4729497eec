import { browserPortRoutes } from '../api/browser-ports.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';

export function browserPortAnswers(answer: Answering, { browserPorts }: Bench): void {
  answer(browserPortRoutes.announceBrowserPort, ({ body }) => ({
    connection: browserPorts.announce(body.name),
  }));
  answer(browserPortRoutes.hearBrowserPort, ({ params, body }) => {
    browserPorts.hear(params.connection, body);
    return undefined;
  });
}
