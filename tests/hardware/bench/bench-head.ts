import { spawn } from 'node:child_process';
import type { ChildProcessWithoutNullStreams } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

const PATIENCE_MS = 10_000;

/** A simulated head as a running program: a pseudo-terminal at `path`, and bench words on its standard input. */
export class BenchHead {
  readonly path: string;
  readonly #folder: string;
  readonly #process: ChildProcessWithoutNullStreams;
  readonly #lines: string[] = [];
  #wake: (() => void) | undefined;
  #errors = '';

  private constructor(program: string, args: (path: string) => readonly string[]) {
    this.#folder = mkdtempSync(join(tmpdir(), 'head-'));
    this.path = join(this.#folder, 'port');
    this.#process = spawn(program, args(this.path));
    this.#process.stderr.on('data', (chunk: Buffer) => (this.#errors += chunk.toString()));
    createInterface(this.#process.stdout).on('line', (line) => {
      this.#lines.push(line);
      this.#wake?.();
    });
  }

  /** The firmware's core as a program of this computer. */
  static async native(folder: string, ...options: readonly string[]): Promise<BenchHead> {
    const head = new BenchHead(join(folder, 'head-sim'), (path) => [path, ...options]);
    await head.#said((line) => line.startsWith('ready'));
    return head;
  }

  /** The ATmega328P binary in a simulated chip. */
  static async simavr(folder: string, ...options: readonly string[]): Promise<BenchHead> {
    const elf = join(folder, 'avr', 'head.elf');
    const head = new BenchHead(join(folder, 'head-simavr'), (path) => [elf, path, ...options]);
    await head.#said((line) => line.startsWith('ready'));
    return head;
  }

  /** Sets the scene; resolves when the bench has done it. */
  async tell(words: string): Promise<void> {
    this.#process.stdin.write(`${words}\n`);
    await this.#said((line) => line === `ok ${words}`);
  }

  /** Bytes of RAM that the stack of the simulated chip never reached since its last reset. */
  async stackLeft(): Promise<number> {
    this.#process.stdin.write('stack\n');
    return Number((await this.#said((line) => line.startsWith('stack '))).split(' ')[1]);
  }

  /** What falls on the sensor from the lamp, counts per ms at gain 1: F1..F8, clear, near infrared. */
  light(values: readonly number[]): Promise<void> {
    return this.tell(`light ${values.map((value) => value.toPrecision(9)).join(' ')}`);
  }

  async stop(): Promise<void> {
    if (this.#process.exitCode === null) {
      const ended = new Promise((resolve) => this.#process.once('exit', resolve));
      this.#process.stdin.end();
      await ended;
    }
    rmSync(this.#folder, { recursive: true, force: true });
  }

  async #said(wanted: (line: string) => boolean): Promise<string> {
    const end = Date.now() + PATIENCE_MS;
    for (;;) {
      for (let line = this.#lines.shift(); line !== undefined; line = this.#lines.shift()) {
        if (wanted(line)) return line;
      }
      if (Date.now() > end) throw new Error(`The bench is silent. ${this.#errors}`);
      await new Promise<void>((resolve) => {
        const look = setTimeout(resolve, 100);
        this.#wake = () => (clearTimeout(look), resolve());
      });
    }
  }
}
