#!/usr/bin/env node
// The command line is TypeScript: the loader is registered first, then the program itself is read.
import { register } from 'tsx/esm/api';

register();
/** @type {typeof import('./main.ts')} */
const program = await import('./main.ts');
process.exitCode = await program.main(process.argv.slice(2));
// Whatever still hangs, such as udevadm asked for a list of ports, must not keep a command alive that has said its last.
process.stdout.write('', () => process.exit());
