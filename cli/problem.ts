/** What a command cannot do, in one sentence for its user. */
export class CommandProblem extends Error {
  override readonly name = 'CommandProblem';
  /** 1: it could not be done. 2: it was asked for in the wrong way. */
  readonly exitCode: 1 | 2;

  constructor(sentence: string, exitCode: 1 | 2 = 1) {
    super(sentence);
    this.exitCode = exitCode;
  }
}
