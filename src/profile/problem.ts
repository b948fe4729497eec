/** A profile that cannot be taken, in one sentence: what was seen, what is allowed, what to do next. */
export class ProfileProblem extends Error {
  /** Where in the document, `tubes[2].K` style; empty for the whole document. */
  readonly at: string;

  constructor(sentence: string, at = '') {
    super(sentence);
    this.name = 'ProfileProblem';
    this.at = at;
  }
}
