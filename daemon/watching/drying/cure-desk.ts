import { setTimeout as delay } from 'node:timers/promises';
import type { AirFrom } from '../../../shared/cure/air.ts';
import type { Cement, CementDraft } from '../../../shared/cure/cement.ts';
import type { Outcome } from '../../../shared/messages/command.ts';
import type {
  AirAnswer,
  AirSaid,
  CementList,
  CoatAct,
  CoatsAnswer,
  Forecast,
} from '../../../shared/messages/cure.ts';
import type { ShopHappened } from '../../../shared/shop/entry.ts';
import { coatRefusals } from '../../../shared/words/drying.ts';
import { newId } from '../../ids.ts';
import { Refusal } from '../../refusal.ts';
import { withAirFrom } from '../../settings/air.ts';
import { cementOf, withCement } from '../../settings/cements.ts';
import type { CureDesk as Asked } from '../../web/desk.ts';
import type { Program } from '../program.ts';
import { coatHappened } from './coat-acts.ts';

/** So long a command waits for what the book has of before, ms: without a book the clocks run all the same. */
const BOOK_AT_MOST_MS = 3000;

export interface CureDeskParts {
  readonly program: Program;
  /** Runs a command, unless one of this id has run: then that one's outcome. */
  readonly once: (commandId: string, run: () => Promise<Outcome>) => Promise<Outcome>;
}

/** The part of the desk that is about cements, coats and the air. */
export class CureDesk implements Asked {
  readonly #parts: CureDeskParts;

  constructor(parts: CureDeskParts) {
    this.#parts = parts;
  }

  cements(): CementList {
    return this.#drying.cements();
  }

  async putCement(id: string, draft: CementDraft, basedOn: number): Promise<Cement> {
    const { options } = this.#parts.program;
    const madeAt = new Date(options.utcNowMs()).toISOString();
    const made = await options.settings.change((s) => withCement(s, draft, { id, basedOn, madeAt }));
    this.#drying.keeper.clocks.touch();
    await this.#parts.program.applySettings();
    return made.cement;
  }

  async learnAnew(id: string, commandId: string): Promise<Outcome> {
    cementOf(this.#parts.program.options.settings.current, id);
    return this.#say(() => ({ kind: 'learn-anew', cement: id }), commandId);
  }

  coats(): CoatsAnswer {
    return this.#drying.coats();
  }

  act(act: CoatAct, commandId: string): Promise<Outcome> {
    const { options } = this.#parts.program;
    return this.#say(
      () =>
        coatHappened(act, {
          keeper: this.#drying.keeper,
          settings: options.settings.current,
          nowUtcMs: options.utcNowMs(),
          newId,
        }),
      commandId,
    );
  }

  air(): AirAnswer {
    return this.#drying.air();
  }

  sayAir({ airC, rhPct }: AirSaid, commandId: string): Promise<Outcome> {
    return this.#once(commandId, () => this.#drying.typed({ airC, rhPct }, commandId));
  }

  async sayForecast({ points }: Forecast, commandId: string): Promise<Outcome> {
    const told = points.map(({ at, ...air }) => ({ ...air, atUtcMs: Date.parse(at) }));
    const wrong = told.findIndex(({ atUtcMs }, i) => atUtcMs <= (told[i - 1]?.atUtcMs ?? -Infinity));
    if (wrong !== -1) throw new Refusal('invalid', coatRefusals.forecastOrder, `points.${wrong}.at`);
    return this.#say(() => ({ kind: 'forecast', points: told }), commandId);
  }

  async putAirFrom(from: AirFrom): Promise<AirFrom> {
    const { settings, simulated } = this.#parts.program.options;
    await settings.change((s) => withAirFrom(s, from, simulated()));
    this.#drying.refresh();
    return from;
  }

  get #drying(): Program['drying'] {
    return this.#parts.program.drying;
  }

  #say(happened: () => ShopHappened, commandId: string): Promise<Outcome> {
    return this.#once(commandId, () => this.#drying.keeper.happened(happened(), commandId));
  }

  /** What was said before the program was started anew counts too: the book has it. */
  #once(commandId: string, run: () => Promise<boolean>): Promise<Outcome> {
    return this.#parts.once(commandId, async () => {
      const { keeper } = this.#drying;
      await Promise.race([keeper.read, delay(BOOK_AT_MOST_MS, undefined, { ref: false })]);
      this.#parts.program.lookAtClocks();
      const kept = keeper.has(commandId) || (await run());
      this.#drying.refresh();
      return { commandId, session: null, kept };
    });
  }
}
