import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Visit } from '../../../shared/heat/work/visit.ts';
import { emptySample } from '../../../shared/thermometer/sample.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { Mark, WatchInput } from '../../../shared/watch/input.ts';
import { take } from '../../../shared/watch/replay.ts';
import type { WatchState } from '../../../shared/watch/state.ts';
import { resume } from '../../../shared/watch/watch.ts';
import { carried, PROBE, watchSettings } from '../../unit/watch/support/settings.ts';
import { undoable } from './inputs.ts';

/** Marks that are taken back, and whether any heat is lost or doubled by them. */

interface Said {
  readonly mark: Mark;
  readonly afterMs: number;
}

const undo: Mark = { kind: 'undo' };
const lapDone: Mark = { kind: 'lap-done' };
const afterMs = fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 30_000 }));
const said = (mark: fc.Arbitrary<Mark>): fc.Arbitrary<Said> => fc.record({ mark, afterMs });
const anyMarks = fc.array(
  said(
    fc.oneof({ weight: 4, arbitrary: undoable }, { weight: 1, arbitrary: fc.constantFrom(undo, lapDone) }),
  ),
  {
    maxLength: 25,
  },
);
const marksWithoutLaps = fc.array(
  said(fc.oneof({ weight: 3, arbitrary: undoable }, { weight: 1, arbitrary: fc.constant(undo) })),
  {
    minLength: 1,
    maxLength: 40,
  },
);

/** A watch with a hot plate, and all that it found. */
class Marked {
  state: WatchState = resume(carried(watchSettings()), 0, 0);
  readonly found: FoundEntry[] = [];
  /** How long the iron was on the work by the marks, ms, without what was taken back. */
  onWorkMs = 0;
  /** What stood before each mark that can be taken back. */
  readonly #before: { readonly touched: boolean; readonly onWorkMs: number }[] = [];

  constructor() {
    this.#give({ kind: 'device', device: 'board', link: 'connected', detail: '' }, 0);
    for (let i = 1; i <= 30; i++)
      this.#give({ kind: 'sample', sample: { ...emptySample(PROBE), tC: 120 + i } }, 1000);
  }

  say({ mark, afterMs }: Said): void {
    // A plate that is read once on the way.
    const halfMs = Math.floor(afterMs / 2);
    this.#give({ kind: 'sample', sample: { ...emptySample(PROBE), tC: 150 + (this.state.seq % 7) } }, halfMs);
    this.mark(mark, afterMs - halfMs);
  }

  mark(mark: Mark, laterMs = 0): void {
    const { work } = this.state;
    this.#give({ kind: 'mark', commandId: `m${this.state.seq}`, mark }, laterMs);
    if (mark.kind === 'undo') {
      const back = this.#before.pop();
      if (back !== undefined && !back.touched) this.onWorkMs = back.onWorkMs;
    } else if (this.state.work !== work) {
      this.#before.push({ touched: work.place === 'on-work', onWorkMs: this.onWorkMs });
      if (this.#before.length > 10) this.#before.shift();
    }
  }

  all(saids: readonly Said[]): this {
    for (const one of saids) this.say(one);
    return this;
  }

  #give(input: WatchInput, laterMs: number): void {
    const { tMs, work } = this.state;
    const step = take(this.state, input, tMs + laterMs);
    if (work.place === 'on-work') this.onWorkMs += step.state.tMs - tMs;
    this.state = step.state;
    this.found.push(...step.found);
  }

  /** Of each visit its last telling, where it counts; the open one as far as it has come. */
  get counted(): readonly Pick<Visit, 'n' | 'contactMs' | 'lapDone'>[] {
    const last = new Map<number, Pick<Visit, 'n' | 'contactMs' | 'lapDone' | 'takenBack'>>();
    for (const { finding } of this.found)
      if (finding.kind === 'visit') last.set(finding.visit.n, finding.visit);
    const { visit } = this.state.ironing;
    if (visit !== null) last.set(visit.n, { ...visit, takenBack: false });
    return [...last.values()].filter((v) => !v.takenBack);
  }
}

const heatOf = (visits: Marked['counted']): number => visits.reduce((sum, v) => sum + v.contactMs, 0);

/** Where it works and what is open, without when it was told. */
function standing({ work, ironing }: WatchState) {
  const untold = <T extends object>(visit: T | null) => (visit === null ? null : { ...visit, toldMs: null });
  // Of a lap nothing is followed while nothing touches: up to when it has been is said by the visit.
  const lap = ironing.lap === null ? null : { ...untold(ironing.lap), lastMs: 0 };
  return { place: work.place, at: work.at, visit: untold(ironing.visit), lap };
}

describe('undo', () => {
  test('of as many marks as were made at one moment gives what was before them, and no heat', () => {
    const marks = fc.array(
      fc.oneof({ weight: 4, arbitrary: undoable }, { weight: 1, arbitrary: fc.constant(lapDone) }),
      {
        minLength: 1,
        maxLength: 10,
      },
    );
    fc.assert(
      fc.property(anyMarks, marks, fc.integer({ min: 0, max: 25_000 }), (before, more, restMs) => {
        const marked = new Marked().all(before);
        // The last of what came before is followed up to this moment.
        marked.say({ mark: { kind: 'note', text: '' }, afterMs: restMs });
        const was = standing(marked.state);
        const had = heatOf(marked.counted);
        const backs = marked.state.work.back.length;
        let taken = 0;
        for (const mark of more) {
          const { work } = marked.state;
          marked.mark(mark);
          // A lap without a piece in hand is refused.
          if (marked.state.work !== work) taken += 1;
        }
        for (let i = 0; i < taken; i++) marked.mark(undo);
        expect(standing(marked.state)).toEqual(was);
        expect(heatOf(marked.counted)).toBe(had);
        expect(marked.state.work.back.length).toBe(Math.min(backs, 10 - taken));
      }),
      { numRuns: 300 },
    );
  });
});

describe('heat', () => {
  test('of all visits that count is the time marked on the work, without what undo took back', () => {
    fc.assert(
      fc.property(marksWithoutLaps, (marks) => {
        const marked = new Marked().all(marks);
        expect(heatOf(marked.counted)).toBe(marked.onWorkMs);
      }),
      { numRuns: 400 },
    );
  });
});
