import { airFromSchema } from '../../../shared/cure/air.ts';
import { type AirAnswer, airSaidSchema, forecastSchema } from '../../../shared/messages/cure.ts';
import type { Answer } from './fake-pieces.ts';

/** The stand-in's air of the shop. What is said of it is taken; what follows from that is for the daemon. */

export const NO_AIR: AirAnswer = {
  now: null,
  concerns: [],
  history: [],
  forecast: [],
  chosen: null,
  probes: [],
};

const refused = (message: string): Answer => ({ status: 400, body: { error: { message, where: '' } } });

export class FakeAir {
  answer: AirAnswer = NO_AIR;
  /** When the stand-in says that what was typed came. */
  at = '2026-03-04T13:20:00Z';
  /** Whether what is said of it comes into the book. */
  kept = true;

  /** Null: not an address of the air. */
  get(path: string): Answer | null {
    return path === '/api/air' ? { status: 200, body: this.answer } : null;
  }

  post({ path, body }: { readonly path: string; readonly body: unknown }): Answer | null {
    if (path !== '/api/air') return null;
    const read = airSaidSchema.safeParse(body);
    if (!read.success) return refused(read.error.message);
    const { airC, rhPct } = read.data;
    const said = { at: this.at, airC, rhPct, how: 'typed', probe: '' } as const;
    this.answer = { ...this.answer, now: { ...said, dewPointC: null, marginK: null, old: false } };
    return this.#done(read.data);
  }

  put(path: string, body: unknown): Answer | null {
    if (path === '/api/air/from') return this.#putFrom(body);
    if (path !== '/api/air/forecast') return null;
    const read = forecastSchema.safeParse(body);
    if (!read.success) return refused(read.error.message);
    const forecast = read.data.points.map((point) => ({ ...point, how: 'forecast' as const }));
    this.answer = { ...this.answer, forecast };
    return this.#done(read.data);
  }

  #putFrom(body: unknown): Answer {
    const read = airFromSchema.safeParse(body);
    if (!read.success) return refused(read.error.message);
    this.answer = { ...this.answer, chosen: read.data.probe };
    return { status: 200, body: read.data };
  }

  #done({ commandId = '' }: { readonly commandId?: string | undefined }): Answer {
    return { status: 200, body: { commandId, session: null, kept: this.kept } };
  }
}
