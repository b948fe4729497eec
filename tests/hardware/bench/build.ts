import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const run = promisify(execFile);
const FIRMWARE = fileURLToPath(new URL('../../../hardware-notes/firmware/', import.meta.url));

/** What `make` says and where its products are; `remove` when done. */
export interface Build {
  readonly folder: string;
  readonly output: string;
  remove(): void;
}

/** Builds targets of the firmware's Makefile into a folder of their own, so that test files do not meet. */
export async function buildFirmware(...targets: readonly string[]): Promise<Build> {
  const folder = mkdtempSync(join(tmpdir(), 'head-build-'));
  const remove = (): void => rmSync(folder, { recursive: true, force: true });
  try {
    const { stdout } = await run('make', ['-C', FIRMWARE, `B=${folder}`, ...targets]);
    return { folder, output: stdout, remove };
  } catch (error) {
    remove();
    const { code, stderr } = error as { code?: unknown; stderr?: string };
    const what =
      code === 'ENOENT'
        ? 'There is no "make" on this computer'
        : `"make ${targets.join(' ')}" failed (${(stderr ?? '').trim().split('\n')[0]})`;
    throw new Error(
      `${what}; the head's firmware is built by make with a C compiler; install both (on Debian: build-essential) and run the tests again.`,
      { cause: error },
    );
  }
}

/** Why the AVR firmware cannot be run in a simulator here; `undefined` where it can. */
export function simavrMissing(): string | undefined {
  const onPath = (name: string): boolean =>
    (process.env['PATH'] ?? '').split(delimiter).some((folder) => existsSync(join(folder, name)));
  const wanted = ['avr-gcc', 'avr-objcopy', 'pkg-config'].filter((name) => !onPath(name));
  if (!existsSync('/usr/include/simavr/sim_avr.h')) wanted.push('libsimavr-dev');
  return wanted.length === 0 ? undefined : `${wanted.join(', ')} not installed`;
}
