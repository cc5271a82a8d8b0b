import type { Outcome } from '../../shared/messages/command.ts';

/** So many commands are remembered; a client retries within seconds. */
const KEPT = 2000;

/** Remembers commands by their client's id, so that a retry gets the first one's outcome and never doubles it. */
export class CommandLog {
  readonly #outcomes = new Map<string, Promise<Outcome>>();

  /** Runs a command, unless one of this id has run: then that one's outcome. A refused command may be tried again. */
  once(commandId: string, run: () => Promise<Outcome>): Promise<Outcome> {
    const known = this.#outcomes.get(commandId);
    if (known !== undefined) return known;
    const outcome = run();
    this.#outcomes.set(commandId, outcome);
    outcome.catch(() => this.#outcomes.delete(commandId));
    const [oldest] = this.#outcomes.keys();
    if (this.#outcomes.size > KEPT && oldest !== undefined) this.#outcomes.delete(oldest);
    return outcome;
  }

  /** Takes over a command that the book has kept from before a restart. */
  remember(outcome: Outcome): void {
    this.#outcomes.set(outcome.commandId, Promise.resolve(outcome));
  }
}
