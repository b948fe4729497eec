/** A swatch set that cannot be taken, in one sentence: what was seen, what is allowed, what to do next. */
export class SwatchSetProblem extends Error {
  /** Where in the document, `swatches[2].readings` style; empty for the whole document. */
  readonly at: string;

  constructor(sentence: string, at = '') {
    super(sentence);
    this.name = 'SwatchSetProblem';
    this.at = at;
  }
}
