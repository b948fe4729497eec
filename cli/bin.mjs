#!/usr/bin/env node
import { builtProgram } from './built.mjs';

const program = await programOf();
process.exitCode = await program.main(process.argv.slice(2));
// Whatever still hangs, such as udevadm asked for a list of ports, must not keep a command alive that has said its last.
process.stdout.write('', () => process.exit());

/** @returns {Promise<typeof import('./main.ts')>} */
async function programOf() {
  let built;
  try {
    built = await builtProgram();
  } catch {
    // A checkout that cannot be written to runs its sources as they stand, a second later.
    const { register } = await import('tsx/esm/api');
    register();
    return await import('./main.ts');
  }
  return await import(built);
}
