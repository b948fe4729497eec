/**
 * 100 000 readings through a wire that damages one answer or question each time (tests/device/faulty-wire.ts), with
 * and without checksums: how many wrong readings are accepted.
 *
 *   npm run bench -- fault-trials
 */
import { faultTrials } from '../tests/device/fault-trials.ts';

const TRIALS = 100_000;
const SEED = 20_261_125;

for (const checksum of [true, false]) {
  const count = await faultTrials(TRIALS, checksum, SEED);
  console.log(`\nchecksums ${checksum ? 'on' : 'off'}: ${TRIALS} damaged exchanges, seed ${SEED}`);
  console.log(`  wrong readings accepted   ${count.wrong}`);
  for (const [damage, wrong] of Object.entries(count.wrongBy)) console.log(`    ${damage}: ${wrong}`);
  console.log(`  right at once             ${count.rightAtOnce}`);
  console.log(`  right after one repeat    ${count.rightAfterRepeat}`);
  for (const [kind, times] of Object.entries(count.faults)) console.log(`  refused, ${kind}: ${times}`);
  console.log(`  reconnections             ${count.reconnects}`);
}
