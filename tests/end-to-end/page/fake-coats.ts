import { type CoatsAnswer, coatsAnswerSchema } from '../../../shared/messages/cure.ts';
import { coatsAnswer } from '../../fixtures/coats.ts';
import type { Answer } from './fake-pieces.ts';

/** The stand-in's coats: what the daemon tells of them, as far as a page needs it. */
export class FakeCoats {
  coats: CoatsAnswer = coatsAnswer([]);
  /** How often they were read. */
  reads = 0;

  /** Null: not the address of coats. */
  get(path: string): Answer | null {
    if (path !== '/api/coats') return null;
    this.reads += 1;
    return { status: 200, body: coatsAnswerSchema.parse(this.coats) };
  }
}
