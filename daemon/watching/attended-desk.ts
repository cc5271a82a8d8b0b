import type { UnattendedAfter } from '../../shared/watch/attended.ts';
import { withUnattended } from '../settings/pieces.ts';
import type { AttendedDesk as Asked } from '../web/desk.ts';
import type { Program } from './program.ts';
import { settle } from './settle.ts';

/** The part of the desk where it is settled after how long a hot iron that is left alone is told of. */
export class AttendedDesk implements Asked {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  after(): UnattendedAfter {
    return this.#program.options.settings.current.unattended;
  }

  async put(after: UnattendedAfter): Promise<UnattendedAfter> {
    return (await settle(this.#program, (s) => withUnattended(s, after))).settings.unattended;
  }
}
