import type { AlarmChange, AlarmState } from '../../shared/alarm/record.ts';
import type { Situation } from '../../shared/messages/live.ts';
import type { LiveChange } from '../web/desk.ts';

/** What changes with every line is not news of itself. */
const countsOn: ReadonlySet<string> = new Set(['linesAccepted', 'lastLine']);

/** Tells every change to whoever listens; the situation only where it has changed. */
export class Telling {
  readonly #situation: () => Situation;
  readonly #listeners = new Set<(change: LiveChange) => void>();
  #told = '';
  #dirty = false;

  constructor(situation: () => Situation) {
    this.#situation = situation;
  }

  /** Returns a function that ends it. */
  listen(listener: (change: LiveChange) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  tell(change: LiveChange): void {
    for (const listener of this.#listeners) listener(change);
  }

  /** Changes of one turn of the event loop are told together. */
  situationSoon(): void {
    if (this.#dirty) return;
    this.#dirty = true;
    setImmediate(() => this.situationNow());
  }

  situationNow(): void {
    this.#dirty = false;
    const situation = this.#situation();
    const text = JSON.stringify(situation, (key, value: unknown) => (countsOn.has(key) ? undefined : value));
    if (text === this.#told) return;
    this.#told = text;
    this.tell({ kind: 'situation', situation });
  }
}

/** How an alarm that stands from before is told: as the change that brought it into its state. */
export const changeInto: Readonly<Record<AlarmState, AlarmChange | null>> = {
  normal: null,
  unacknowledged: 're-alarmed',
  acknowledged: 'acknowledged',
  'returned-unacknowledged': 'cleared',
};
