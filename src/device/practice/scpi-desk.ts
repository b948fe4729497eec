import { withChecksum } from '../framing/checked-line.ts';
import { splitOutsideQuotes } from '../framing/fields.ts';
import { QueuedError, headerPattern, queuedError } from './scpi-words.ts';

const QUEUE_DEPTH = 16;
const LONGEST_PROGRAM_MESSAGE = 255;
const POWER_ON = 1 << 7;

/** Answers; throws QueuedError. */
export type QueryRun = (parameters: readonly string[]) => string | Promise<string>;
/** Sets, and answers nothing; throws QueuedError. */
export type SetRun = (parameters: readonly string[]) => void | Promise<void>;

/**
 * The head's side of the line: takes program messages, finds the command, joins the answers, keeps the error queue
 * and the event register. Knows no light; commands.ts fills the table.
 */
export class ScpiDesk {
  checksum = false;
  eventRegister = POWER_ON;
  readonly #commands: {
    readonly pattern: RegExp;
    readonly run: (parameters: readonly string[]) => Promise<string | undefined>;
  }[] = [];
  readonly #errors: QueuedError[] = [];

  query(words: string, run: QueryRun): void {
    this.#commands.push({ pattern: headerPattern(words), run: async (parameters) => run(parameters) });
  }

  set(words: string, run: SetRun): void {
    const silent = async (parameters: readonly string[]): Promise<undefined> => {
      await run(parameters);
      return undefined;
    };
    this.#commands.push({ pattern: headerPattern(words), run: silent });
  }

  /** @returns the response message without its LF, or `undefined` when nothing is to be answered */
  async execute(message: string): Promise<string | undefined> {
    if (message.length > LONGEST_PROGRAM_MESSAGE) {
      this.queue(queuedError(-363));
      return undefined;
    }
    const answers: string[] = [];
    for (const unit of splitOutsideQuotes(message, ';') ?? [message]) {
      const answer = unit.trim() === '' ? undefined : await this.#unit(unit.trim());
      if (answer !== undefined) answers.push(answer);
    }
    if (answers.length === 0) return undefined;
    const response = answers.join(';');
    return this.checksum ? withChecksum(response) : response;
  }

  queue(error: QueuedError): void {
    this.eventRegister |= eventBit(error.code);
    if (this.#errors.length < QUEUE_DEPTH) this.#errors.push(error);
    else this.#errors[QUEUE_DEPTH - 1] = queuedError(-350);
  }

  get errorCount(): number {
    return this.#errors.length;
  }

  nextError(): string {
    const error = this.#errors.shift();
    return error ? `${error.code},"${error.message}"` : '0,"No error"';
  }

  clear(): void {
    this.#errors.length = 0;
    this.eventRegister = 0;
  }

  async #unit(unit: string): Promise<string | undefined> {
    const cut = unit.search(/[ \t]/);
    const header = cut < 0 ? unit : unit.slice(0, cut);
    const rest = cut < 0 ? '' : unit.slice(cut + 1).trim();
    try {
      if (!/^[:*]?[A-Z][A-Z0-9:]*\??$/i.test(header)) throw queuedError(-102);
      const found = this.#commands.find(({ pattern }) => pattern.test(header));
      if (!found) throw queuedError(-113);
      return await found.run(rest === '' ? [] : rest.split(',').map((parameter) => parameter.trim()));
    } catch (error) {
      if (!(error instanceof QueuedError)) throw error;
      this.queue(error);
      return undefined;
    }
  }
}

function eventBit(code: number): number {
  if (code <= -400) return 1 << 2;
  if (code <= -300 || code > 0) return 1 << 3;
  return code <= -200 ? 1 << 4 : 1 << 5;
}
