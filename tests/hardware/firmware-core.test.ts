/** The C tests of the firmware's core, with the address and undefined-behaviour sanitizers. */
import { expect, it } from 'vitest';
import { buildFirmware } from './bench/build.ts';

it('passes every check of the core, and random bytes for good measure', async () => {
  const build = await buildFirmware('test');
  build.remove();
  const [, checks, failures] = /(\d+) checks, (\d+) failures/.exec(build.output)!;
  console.log(`${checks} checks of the firmware's core, ${failures} failures.`);
  expect(Number(failures)).toBe(0);
  expect(Number(checks)).toBeGreaterThan(600_000);
}, 120_000);
