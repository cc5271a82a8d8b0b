import { Transform, type TransformCallback } from 'node:stream';

const NEWLINE = 0x0a;

/**
 * Stands ahead of the line parser, which has no length cap of its own and takes more than linear time over a long
 * run without a newline. Of each line it lets through at most `maxBytes` and drops the rest up to its newline, so that
 * whoever reads the lines sees one of full length where a line was too long, and the next line whole.
 */
export class LineGuard extends Transform {
  readonly #maxBytes: number;
  /** Bytes of the unfinished line that were let through. */
  #passed = 0;

  constructor(maxBytes: number) {
    super();
    this.#maxBytes = maxBytes;
  }

  override _transform(chunk: Buffer, _encoding: BufferEncoding, done: TransformCallback): void {
    // What is let through goes on in runs as long as can be: usually the chunk as it came.
    let runStart = 0;
    let from = 0;
    while (from < chunk.length) {
      const newline = chunk.indexOf(NEWLINE, from);
      const end = newline === -1 ? chunk.length : newline;
      const room = this.#maxBytes - this.#passed;
      if (end - from > room) {
        this.#passOn(chunk.subarray(runStart, from + room));
        runStart = end;
      }
      this.#passed = newline === -1 ? this.#passed + Math.min(room, end - from) : 0;
      from = end + 1;
    }
    this.#passOn(chunk.subarray(runStart));
    done();
  }

  #passOn(run: Buffer): void {
    if (run.length > 0) this.push(run);
  }
}
