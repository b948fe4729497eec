import { said, saidReady } from '../text/said.ts';

/** A refusal of the server (RFC 9457 problem details) or of the way to it, as an error with one clear sentence. */
export class ProblemError extends Error {
  readonly status: number;
  readonly title: string;
  /** Members of the problem beyond the standard's, such as `field`. */
  readonly more: Readonly<Record<string, unknown>>;

  constructor(status: number, title: string, detail: string, more: Readonly<Record<string, unknown>> = {}) {
    super(said(detail || title));
    this.name = 'ProblemError';
    this.status = status;
    this.title = title;
    this.more = more;
  }
}

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** Reads the problem an answer carries; an answer without one is described by its status. */
export async function problemOf(answer: Response): Promise<ProblemError> {
  let body: unknown;
  await saidReady();
  try {
    body = await answer.json();
  } catch {
    body = undefined;
  }
  const record = body && typeof body === 'object' ? (body as Record<string, unknown>) : {};
  const title = text(record['title']) || `${answer.status} ${answer.statusText}`.trim();
  return new ProblemError(answer.status, title, text(record['detail']), record);
}
