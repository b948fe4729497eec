import type { HeadTest } from '../../src/calibrate/linearity/superposition.ts';
import { instrumentRoutes, type Instrument } from '../api/instrument.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { testAperture, testGain } from '../instrument/head-tests.ts';
import { listedPorts } from '../instrument/ports.ts';

export function instrumentAnswers(answer: Answering, bench: Bench): void {
  const { instrument } = bench;
  answer(instrumentRoutes.listPorts, () => listedPorts());
  answer(instrumentRoutes.getInstrument, () => instrument.view());
  answer(instrumentRoutes.connectInstrument, ({ body }) => instrument.connect(body));
  answer(instrumentRoutes.disconnectInstrument, () => instrument.disconnect());
  answer(instrumentRoutes.setInstrument, ({ body }) => instrument.configure(body.gain, body.apertureMs));
  answer(instrumentRoutes.readDark, () => instrument.readDark());
  answer(instrumentRoutes.readWhiteTile, ({ body }): Promise<Instrument> =>
    instrument.readWhiteTile(body.reflectance),
  );
  answer(instrumentRoutes.readBlackTrap, () => instrument.readBlackTrap());
  answer(instrumentRoutes.readCheckTile, () => instrument.readCheckTile());
  answer(instrumentRoutes.readOnce, async () => (await instrument.read()).live);
  const plain = ({ passed, worst, channel, sentence }: HeadTest) => ({ passed, worst, channel, sentence });
  answer(instrumentRoutes.testAperture, async () => plain(await testAperture(instrument)));
  answer(instrumentRoutes.testGain, async () => plain(await testGain(instrument)));
}
