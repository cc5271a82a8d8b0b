/** A command or setting that can't be taken, with the sentence that says why and what would be right. */
export class Refusal extends Error {
  readonly because: 'unknown' | 'conflict' | 'invalid';
  readonly where: string;

  constructor(because: 'unknown' | 'conflict' | 'invalid', message: string, where = '') {
    super(message);
    this.name = 'Refusal';
    this.because = because;
    this.where = where;
  }
}
