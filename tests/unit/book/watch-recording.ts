import type { Commit, SessionHead } from '../../../daemon/book/book.ts';
import { emptySample, type ProbeId } from '../../../shared/thermometer/sample.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { Carried, Entry, WatchInput } from '../../../shared/watch/input.ts';
import { advance, take } from '../../../shared/watch/replay.ts';
import type { WatchState } from '../../../shared/watch/state.ts';
import { FOLD_VERSION, resume } from '../../../shared/watch/watch.ts';
import { carriedOf, headOf } from './recording.ts';

/** A session as the program itself would keep it: the real fold, four probes, ten samples a second each. */

export const FOUR_PROBES: readonly ProbeId[] = [
  'usb-demo-0001/heel',
  'usb-demo-0001/toe',
  'usb-demo-0001/left',
  'usb-demo-0001/right',
];

export interface WatchRecordingOptions {
  readonly seconds?: number;
  readonly ended?: boolean;
  readonly head?: Partial<SessionHead>;
  /** Whether recording begins while the watch already runs: its whole state is carried over then. */
  readonly running?: boolean;
}

/** Warms up past the fabric limit, with a mark and an acknowledgement on the way. A commit a second. */
export function* watchRecording(id: string, options: WatchRecordingOptions = {}): Generator<Commit> {
  const { seconds = 60, ended = true } = options;
  const head = headOf(id, { foldVersion: FOLD_VERSION, ...options.head });
  const { firstSeq: seq, firstMs: tMs } = head;
  const carried = carriedWithFour(seq, tMs, options.running ?? false);
  const session = new Folding(resume(carried, seq, tMs), { seq, tMs, input: { kind: 'carried', carried } });
  const wire = new Wire();
  for (let second = 0; second < seconds; second++) {
    if (second === 2)
      session.take({ kind: 'mark', commandId: `${id}-rest`, mark: { kind: 'place', place: 'on-rest' } });
    for (let tenth = 0; tenth < 10; tenth++) {
      const atMs = tMs + second * 1000 + tenth * 100;
      for (const probe of FOUR_PROBES)
        session.take(wire.sample(probe, second + tenth / 10, atMs), atMs + wire.jitterMs());
    }
    const isLast = second === seconds - 1;
    if (second === 30)
      session.take({
        kind: 'acknowledge',
        commandId: `${id}-ack`,
        alarm: { kind: 'over-limit', probe: FOUR_PROBES[0] ?? '' },
      });
    if (isLast && ended) session.take({ kind: 'stop', commandId: null, why: 'by-hand' });
    yield session.commit(id, second === 0 ? head : null, isLast && ended);
  }
}

class Folding {
  #state: WatchState;
  #entries: Entry[];
  #found: FoundEntry[] = [];
  #peakC: number | null = null;

  constructor(state: WatchState, carried: Entry) {
    this.#state = state;
    this.#entries = [carried];
  }

  take(input: WatchInput, tMs = this.#state.tMs): void {
    const step = take(this.#state, input, tMs);
    this.#state = step.state;
    this.#entries.push(step.entry);
    this.#found.push(...step.found);
    if (input.kind !== 'sample') return;
    const reading = step.state.readings[input.sample.probe];
    if (reading?.quality === 'ok') this.#peakC = Math.max(reading.plateC, this.#peakC ?? reading.plateC);
  }

  commit(session: string, begin: SessionHead | null, ends: boolean): Commit {
    const { state, found } = advance(this.#state, this.#state.tMs);
    const [entries, all] = [this.#entries, [...this.#found, ...found]];
    this.#state = state;
    this.#entries = [];
    this.#found = [];
    const end = ends ? ({ why: 'by-hand', atUtc: '2026-03-01T08:01:00.000+00:00' } as const) : null;
    const { seq: untilSeq, tMs: untilMs } = state;
    return { session, begin, entries, found: all, untilSeq, untilMs, peakC: this.#peakC, end };
  }
}

/** What four thermocouples on one plate might say: to 0.01 degC, with noise; lines arrive up to 5 ms late. */
class Wire {
  #seed = 1;

  sample(probe: ProbeId, s: number, deviceMs: number): WatchInput {
    const place = FOUR_PROBES.indexOf(probe);
    const plateC = 20 + Math.min(190, s * 9) + 5 * Math.sin(s / 15 + place) + this.#noise();
    const sample = { ...emptySample(probe), tC: Math.round(plateC * 100) / 100, deviceMs: deviceMs + 40_000 };
    return { kind: 'sample', sample };
  }

  jitterMs(): number {
    return Math.floor((this.#noise() + 0.5) * 5);
  }

  /** -0.5 to 0.5, the same in each run (Lehmer's generator). */
  #noise(): number {
    this.#seed = (this.#seed * 48_271) % 2_147_483_647;
    return this.#seed / 2_147_483_647 - 0.5;
  }
}

function carriedWithFour(seq: number, tMs: number, running: boolean): Carried {
  const { settings: two, ...rest } = carriedOf();
  const [probe] = two.probes;
  if (probe === undefined) throw new Error('no probe to take after');
  const settings = {
    ...two,
    iron: { ...two.iron, probes: [...FOUR_PROBES] },
    probes: FOUR_PROBES.map((id) => ({ ...probe, id })),
  };
  const carried = { ...rest, settings };
  return running ? { ...carried, state: resume(carried, seq, tMs) } : carried;
}
