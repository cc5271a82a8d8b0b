import {
  type AirAnswer,
  airAnswerSchema,
  type CementList,
  type CoatsAnswer,
  cementListSchema,
  coatsAnswerSchema,
} from '../../../shared/messages/cure.ts';
import { air, cementList, coatsAnswer } from '../../fixtures/coats.ts';
import type { Answer } from './fake-pieces.ts';

/** The stand-in's coats, cements and air: what the daemon tells of them, as far as a page needs it. */
export class FakeCoats {
  coats: CoatsAnswer = coatsAnswer([]);
  cements: CementList = cementList;
  air: AirAnswer = air;
  /** How often the coats were read. */
  reads = 0;

  /** Null: not an address of these. */
  get(path: string): Answer | null {
    switch (path) {
      case '/api/coats':
        this.reads += 1;
        return { status: 200, body: coatsAnswerSchema.parse(this.coats) };
      case '/api/cements':
        return { status: 200, body: cementListSchema.parse(this.cements) };
      case '/api/air':
        return { status: 200, body: airAnswerSchema.parse(this.air) };
      default:
        return null;
    }
  }
}
