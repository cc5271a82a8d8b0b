/** So often it is looked by itself, ms, whatever else asks for a look. */
const LOOK_MS = 500;

/**
 * Looks again and again: twice a second, and at once when asked. One timer, and one look at a time; what asks while
 * one goes on gets one more after it.
 */
export class Looker {
  readonly #look: () => Promise<void>;
  #timer: NodeJS.Timeout | null = null;
  #current: Promise<void> | null = null;
  #again = false;
  #pause = 0;

  /** `look` tells of its own failures: it must not reject. */
  constructor(look: () => Promise<void>) {
    this.#look = look;
  }

  start(): void {
    this.#timer = setInterval(() => {
      if (this.#pause > 0) this.#pause -= 1;
      else this.soon();
    }, LOOK_MS);
    this.soon();
  }

  soon(): void {
    if (this.#timer === null) return;
    if (this.#current !== null) {
      this.#again = true;
      return;
    }
    this.#current = this.#look().finally(() => {
      this.#current = null;
      const again = this.#again;
      this.#again = false;
      if (again) this.soon();
    });
  }

  /** Leaves out the next looks that nobody asks for. */
  pause(looks: number): void {
    this.#pause = looks;
  }

  /** Settles when no look goes on any more. */
  async stop(): Promise<void> {
    if (this.#timer !== null) clearInterval(this.#timer);
    this.#timer = null;
    await this.#current;
  }
}
