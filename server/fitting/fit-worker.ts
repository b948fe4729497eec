import { parentPort, workerData } from 'node:worker_threads';
import { problemOf } from '../problem-of.ts';
import { FAULT_SENTENCE, type FitJob, type FitMessage } from './fit-job.ts';
import { runFit } from './run-fit.ts';

const tell = (message: FitMessage): void => parentPort!.postMessage(message);
try {
  const { profile, result } = runFit(workerData as FitJob, (done, sentence) =>
    tell({ kind: 'progress', done, sentence }),
  );
  tell({ kind: 'complete', profile, result });
} catch (error) {
  const problem = problemOf(error);
  if (!problem) console.error(error);
  tell({ kind: 'failed', fault: !problem, sentence: problem?.message ?? FAULT_SENTENCE });
}
