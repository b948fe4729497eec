import { spawn } from 'node:child_process';
import type { ChildProcessWithoutNullStreams } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

/** A busy machine may take seconds to start Python; only a hang is meant to be caught. */
const PATIENCE_MS = 30_000;

const script = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/** A Python script that puts one end of a real pseudo-terminal at `path` and takes commands on stdin. */
export class TerminalScript {
  readonly path: string;
  readonly folder: string;
  readonly #process: ChildProcessWithoutNullStreams;
  readonly #answers: string[] = [];
  readonly #waiting: ((line: string) => void)[] = [];
  readonly #refusals: ((error: Error) => void)[] = [];
  #errors = '';
  #failed = false;

  constructor(name: string, args: readonly string[]) {
    this.folder = mkdtempSync(join(tmpdir(), 'head-'));
    this.path = join(this.folder, 'port');
    this.#process = spawn('python3', ['-I', '-S', script(name), this.path, ...args]);
    this.#process.on('error', (error) => {
      this.#failed = true;
      const sentence = `These tests need python3 for their pseudo-terminals; install it and run them again (${error.message}).`;
      for (const reject of this.#refusals) reject(new Error(sentence));
    });
    this.#process.stderr.on('data', (chunk: Buffer) => (this.#errors += chunk.toString()));
    createInterface(this.#process.stdout).on('line', (line) => {
      const next = this.#waiting.shift();
      if (next) next(line);
      else this.#answers.push(line);
    });
  }

  /** Sends one command and resolves with its one line of answer. */
  async command(text: string): Promise<string> {
    this.#process.stdin.write(`${text}\n`);
    return this.line();
  }

  line(): Promise<string> {
    const ready = this.#answers.shift();
    if (ready !== undefined) return Promise.resolve(ready);
    return new Promise((resolve, reject) => {
      this.#refusals.push(reject);
      const late = setTimeout(
        () => reject(new Error(`The simulated head is silent. ${this.#errors}`)),
        PATIENCE_MS,
      );
      this.#waiting.push((line) => {
        clearTimeout(late);
        resolve(line);
      });
    });
  }

  async stop(): Promise<void> {
    const ended = new Promise((resolve) => this.#process.once('exit', resolve));
    if (this.#process.exitCode === null && !this.#failed) {
      this.#process.stdin.end();
      await ended;
    }
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** The simulated head of head.py, ready to be opened. */
export async function simulatedHead(...args: readonly string[]): Promise<TerminalScript> {
  const head = new TerminalScript('head.py', args);
  await head.line();
  return head;
}

export type Pair = readonly [sent: string, answered: string | null];

/** Plays a wire transcript; `finish` gives what was not used and what was not expected. */
export async function transcript(pairs: readonly Pair[]) {
  const terminal = new TerminalScript('transcript.py', [JSON.stringify(pairs)]);
  await terminal.line();
  const finish = async (): Promise<unknown> => {
    const left: unknown = JSON.parse(await terminal.command('end'));
    await terminal.stop();
    return left;
  };
  return { path: terminal.path, finish };
}
