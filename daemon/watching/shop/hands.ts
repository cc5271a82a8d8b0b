import type { Sample } from '../../../shared/thermometer/sample.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import { newId } from '../../ids.ts';
import type { IronWatch } from '../iron-watch.ts';
import type { Program } from '../program.ts';

/** What hands tell without a page: an iron that is taken up, and the button on its handle. */
export class Hands {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  /** An iron that moves while the others stand was taken up, whether that was said or not. */
  follow(): void {
    const { bench, acts, options } = this.#program;
    const watch = bench.takenUp();
    if (watch === null) return;
    acts
      .act({ iron: watch.iron.id, act: { kind: 'in-hand' } }, newId())
      .catch((error: unknown) => options.complain('An iron that was taken up could not be marked.', error));
  }

  /** A press that an alarm took marks nothing. */
  pressed(watch: IronWatch, { button }: Sample, found: readonly FoundEntry[]): void {
    if (button === null) return;
    const { presence, acts, options } = this.#program;
    presence.sign();
    if (found.some(({ finding }) => finding.kind === 'alarm' && finding.change === 'silenced')) return;
    acts
      .press(watch, button, newId())
      .catch((error: unknown) => options.complain('A press of the button could not be taken.', error));
  }
}
