import { settingsWords } from '../../shared/words/settings.ts';
import { Refusal } from '../web/desk.ts';
import type { Settings } from './settings.ts';

/** Holds the settings of a running program; one change at a time, written before it takes effect. */
export class SettingsKeeper {
  #current: Settings;
  #last: Promise<unknown> = Promise.resolve();
  readonly #write: (settings: Settings) => Promise<void>;

  constructor(settings: Settings, write: (settings: Settings) => Promise<void>) {
    this.#current = settings;
    this.#write = write;
  }

  get current(): Settings {
    return this.#current;
  }

  /**
   * Carries out a user's change: written durably first, then in effect.
   * @throws Refusal where the change is not allowed, or can't be written; nothing has changed then
   */
  change<T extends { readonly settings: Settings }>(make: (settings: Settings) => T): Promise<T> {
    const turn = this.#last.then(() => this.#carryOut(make));
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  /** Takes in what the program itself has seen (a new probe): in effect at once, written when its turn comes. */
  notice(settings: Settings): Promise<void> {
    this.#current = settings;
    const turn = this.#last.then(() => this.#write(this.#current));
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  async #carryOut<T extends { readonly settings: Settings }>(make: (settings: Settings) => T): Promise<T> {
    for (;;) {
      const base = this.#current;
      const made = make(base);
      try {
        await this.#write(made.settings);
      } catch (error) {
        throw new Refusal('conflict', settingsWords.notWritten(String(error)));
      }
      // A new probe may have come in while the file was being written: then the change is made again on top of it.
      if (this.#current === base) {
        this.#current = made.settings;
        return made;
      }
    }
  }
}
