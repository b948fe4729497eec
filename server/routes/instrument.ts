import type { HeadTest } from '../../src/calibrate/linearity/superposition.ts';
import { headRecordRoutes } from '../api/head-record.ts';
import { instrumentRoutes, type Instrument } from '../api/instrument.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { testLift, testLightLeak, testSuperposition } from '../instrument/guided-tests.ts';
import { headRecord, tileHistory } from '../instrument/head-record.ts';
import type { HeadSession } from '../instrument/head-session.ts';
import { testAperture, testGain } from '../instrument/head-tests.ts';
import { listedPorts } from '../instrument/ports.ts';
import { setCheckTile, setDark, setTrap, setWhite, watchWhite } from '../instrument/set-head.ts';
import { addHeadTest, type HeadTestName, type KeptGainStep } from '../store/head-tests.ts';

export function instrumentAnswers(answer: Answering, bench: Bench): void {
  const { instrument } = bench;
  answer(instrumentRoutes.listPorts, () => listedPorts());
  answer(instrumentRoutes.getInstrument, () => instrument.view());
  answer(instrumentRoutes.connectInstrument, ({ body }) => instrument.connect(body));
  answer(instrumentRoutes.disconnectInstrument, () => instrument.disconnect());
  answer(instrumentRoutes.setInstrument, ({ body }) => instrument.configure(body.gain, body.apertureMs));
  answer(instrumentRoutes.readDark, () => instrument.set(setDark));
  answer(instrumentRoutes.readWhiteTile, ({ body }): Promise<Instrument> =>
    instrument.set((session, options) => setWhite(session, options, body.reflectance)),
  );
  answer(instrumentRoutes.readBlackTrap, () => instrument.set(setTrap));
  answer(instrumentRoutes.readCheckTile, () => instrument.set(setCheckTile));
  answer(instrumentRoutes.readOnce, async () => (await instrument.read()).live);
  recordAnswers(answer, bench);
}

function recordAnswers(answer: Answering, { db, now, instrument, tiles }: Bench): void {
  const keep = (name: string, test: HeadTestName, found: HeadTest, more: Partial<KeptGainStep> = {}) => {
    addHeadTest(db, name, test, found, more, now());
    return plain(found);
  };
  const guided = async (test: HeadTestName, work: (session: HeadSession) => ReturnType<typeof testLift>) => {
    const { name } = instrument.holdSession();
    const { verdict, next } = await instrument.alone(work);
    return { verdict: verdict && keep(name, test, verdict), next };
  };
  answer(headRecordRoutes.getHeadRecord, () => headRecord(db, tiles, instrument.holdSession()));
  answer(headRecordRoutes.getTileHistory, () => {
    const { name, channelNames } = instrument.holdSession();
    return tileHistory(tiles, name, channelNames);
  });
  answer(headRecordRoutes.watchWarmUp, () => instrument.set(watchWhite));
  answer(headRecordRoutes.testSuperposition, ({ body }) =>
    guided('superposition', (session) => testSuperposition(session, body.secondLight)),
  );
  answer(headRecordRoutes.testLift, ({ body }) =>
    guided('lift', (session) => testLift(session, body.shimMm)),
  );
  answer(headRecordRoutes.testLightLeak, async () => {
    const { name } = instrument.holdSession();
    return keep(name, 'light leak', await instrument.alone(testLightLeak));
  });
  answer(instrumentRoutes.testAperture, async () => {
    const { name } = instrument.holdSession();
    return keep(name, 'aperture', await instrument.trial(testAperture));
  });
  answer(instrumentRoutes.testGain, async () => {
    const { name, channelNames } = instrument.holdSession();
    const found = await instrument.trial(testGain);
    const { fromGain, toGain, ratios } = found;
    return keep(name, 'gain', found, { fromGain, toGain, channels: channelNames, ratios: [...ratios] });
  });
}

const plain = ({ passed, worst, channel, sentence }: HeadTest) => ({ passed, worst, channel, sentence });
