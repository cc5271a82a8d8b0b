import { settingsWords } from '../../shared/words/settings.ts';
import { Refusal } from '../refusal.ts';
import type { Settings } from './settings.ts';

/** What the program has seen itself and could not write is tried again after so long, ms. */
const RETRY_MS = 3000;

/** Holds the settings of a running program; one change at a time, written before it takes effect. */
export class SettingsKeeper {
  #current: Settings;
  #revision = 0;
  /** What the file holds. */
  #written: Settings;
  #last: Promise<unknown> = Promise.resolve();
  #retry: NodeJS.Timeout | null = null;
  readonly #write: (settings: Settings) => Promise<void>;

  constructor(settings: Settings, write: (settings: Settings) => Promise<void>) {
    this.#current = settings;
    this.#written = settings;
    this.#write = write;
  }

  get current(): Settings {
    return this.#current;
  }

  /** Rises with every change, for whoever shows the settings to know that they are others now. */
  get revision(): number {
    return this.#revision;
  }

  /**
   * Carries out a user's change: written durably first, then in effect.
   * @throws Refusal where the change is not allowed, or can't be written; nothing has changed then
   */
  change<T extends { readonly settings: Settings }>(make: (settings: Settings) => T): Promise<T> {
    return this.#inTurn(() => this.#carryOut(make));
  }

  /**
   * Takes in what the program itself has seen (a new probe): in effect at once, written when its turn comes. Rejects
   * where that fails; it is then tried again until it is written.
   */
  notice(settings: Settings): Promise<void> {
    this.#setCurrent(settings);
    return this.#inTurn(() => this.#writeCurrent());
  }

  #setCurrent(settings: Settings): void {
    this.#current = settings;
    this.#revision += 1;
  }

  #inTurn<T>(act: () => Promise<T>): Promise<T> {
    const turn = this.#last.then(act);
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  async #carryOut<T extends { readonly settings: Settings }>(make: (settings: Settings) => T): Promise<T> {
    for (;;) {
      const base = this.#current;
      const made = make(base);
      try {
        await this.#put(made.settings);
      } catch (error) {
        throw new Refusal('conflict', settingsWords.notWritten(String(error)));
      }
      // A new probe may have come in while the file was being written: then the change is made again on top of it.
      if (this.#current === base) {
        this.#setCurrent(made.settings);
        return made;
      }
    }
  }

  async #writeCurrent(): Promise<void> {
    if (this.#written === this.#current) return;
    try {
      await this.#put(this.#current);
    } catch (error) {
      this.#tryAgainLater();
      throw error;
    }
  }

  async #put(settings: Settings): Promise<void> {
    await this.#write(settings);
    this.#written = settings;
  }

  #tryAgainLater(): void {
    this.#retry ??= setTimeout(() => {
      this.#retry = null;
      // That it fails has been said the first time.
      this.#inTurn(() => this.#writeCurrent()).catch(() => undefined);
    }, RETRY_MS);
    this.#retry.unref();
  }
}
