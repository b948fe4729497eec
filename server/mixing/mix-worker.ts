import { parentPort } from 'node:worker_threads';
import { readProfile } from '../../src/profile/read.ts';
import { problemOf } from '../problem-of.ts';
import type { MixMessage, MixQuestion } from './mix-runner.ts';
import { runMix } from './run-mix.ts';

parentPort!.on('message', ({ id, profile, job }: MixQuestion) => {
  let message: MixMessage;
  try {
    message = { id, answer: runMix(readProfile(profile), job) };
  } catch (error) {
    const problem = problemOf(error);
    if (!problem) console.error(error);
    message = { id, sentence: problem?.message ?? null };
  }
  parentPort!.postMessage(message);
});
