import { noCoats } from '../../../../shared/cure/facts.ts';
import type { Drift } from '../../../../shared/iron/dial/drift.ts';
import { emptySample, type Sample } from '../../../../shared/thermometer/sample.ts';
import type { FoundEntry } from '../../../../shared/watch/finding.ts';
import type { Entry } from '../../../../shared/watch/input.ts';
import { replay } from '../../../../shared/watch/replay.ts';
import { FOLD_VERSION } from '../../../../shared/watch/watch.ts';
import { Live } from './live.ts';
import { lapDone, onArea, piece, turned, undo } from './places.ts';
import { carried, LIMIT_C, PROBE, probeSettings, watchSettings } from './settings.ts';

/** A stored session with its findings; of a sample only what it carries is written. */
export interface Golden {
  readonly foldVersion: number;
  readonly untilMs: number;
  readonly entries: readonly unknown[];
  readonly found: readonly FoundEntry[];
}

/** One number a second, in quarters of a degree, as small boards send them. */
class SlowBoard extends Live {
  #deviceMs = 4_294_900_000;

  goTo(toC: number, kPerS: number): this {
    const reading = this.state.readings[PROBE];
    const fromC = reading?.quality === 'ok' ? reading.plateC : 21;
    const s = Math.max(1, Math.round(Math.abs(toC - fromC) / kPerS));
    for (let i = 1; i <= s; i++) this.second({ tC: Math.round(4 * (fromC + ((toC - fromC) * i) / s)) / 4 });
    return this;
  }

  second(more: Partial<Sample>, count = 1): this {
    for (let i = 0; i < count; i++) {
      this.tMs += 1000;
      this.#deviceMs = (this.#deviceMs + 1000) % 2 ** 32;
      this.sample({ tC: null, deviceMs: this.#deviceMs, ...more });
    }
    return this;
  }

  /** A check pad of 6 s under a plate of `plateC`. */
  parked(plateC: number, s: number): this {
    for (let i = 1; i <= s; i++)
      this.second({ tC: Math.round(4 * (plateC - (plateC - 24) * Math.exp(-i / 6))) / 4 });
    return this;
  }

  typed(plateC: number): this {
    return this.mark({ kind: 'typed', plateC });
  }

  cycles(meanC: number, count: number): this {
    for (let i = 0; i < count; i++) this.goTo(meanC + 14, 0.8).goTo(meanC - 14, 0.35);
    return this;
  }
}

const drift: Drift = {
  sinceAt: '2026-03-01T08:00:00Z',
  byK: 6,
  stretches: 4,
  sigmaK: 1.5,
  sigmaFrom: 'floor',
};

const motion = { stillG: 0.01, movingG: 0.03, checkedAt: '2026-03-01T09:00:00Z' };

const onPad = watchSettings([
  probeSettings(PROBE, {
    place: { probe: PROBE, iron: 'iron', toldAt: '2026-03-01T09:00:00Z', is: { kind: 'check-pad' } },
  }),
]);

/** A session that meets every kind of finding: see the changes that it lists. */
export function makeGolden(): Golden {
  const start = carried(watchSettings());
  const live = new SlowBoard(start);
  live.goTo(24, 0.5).stage('initial').stage('no such stage').goTo(140, 1.2).place('on-work').cycles(121, 3);
  live.stage('intermediate').cycles(121, 3).goTo(164, 0.8).cycles(149, 3).acknowledge('below-band');
  live
    .goTo(LIMIT_C + 4, 0.8)
    .second({ button: 1 })
    .goTo(170, 0.5)
    .acknowledge('over-limit', PROBE);
  live
    .goTo(150, 0.5)
    .second({ faults: ['open'] }, 6)
    .silence('no-reading', PROBE, 5000)
    .second({ faults: ['open'] }, 7);
  live.goTo(148, 0.5).give({ kind: 'device', device: 'board', link: 'lost', detail: 'pulled' }).wait(3);
  live.give({ kind: 'device', device: 'board', link: 'starting', detail: '' }).wait(2);
  live.give({ kind: 'device', device: 'board', link: 'connected', detail: '' }).second({ tC: 147 }, 4);
  live.give({ kind: 'settings', settings: watchSettings(undefined, { fabricLimitC: 140 }) }).goTo(120, 0.5);
  live.give({ kind: 'keeping', kept: false, detail: 'The disk is full.' }).goTo(100, 1);
  live
    .give({ kind: 'keeping', kept: true, detail: '' })
    .place('on-rest')
    .second({ tC: 20 }, 8)
    .goTo(20.5, 0.01);
  live
    .give({ kind: 'settings', settings: { ...watchSettings(), drift } })
    .dial(4)
    .second({ tC: 21 }, 20);
  // With its wires swapped, and then the right way round.
  live.goTo(0, 0.5).acknowledge('suspect-probe', PROBE).goTo(21, 0.5);
  live.goTo(150, 1.2).cycles(135, 6).place('on-work').cycles(128, 4).place('on-rest').goTo(120, 0.4);
  live.acknowledge('drift').give({ kind: 'settings', settings: watchSettings() }).goTo(24, 0.5);
  live
    .give({ kind: 'settings', settings: onPad })
    .second({ tC: 24 }, 8)
    .second({ tC: 70 })
    .second({ tC: 26 }, 20)
    .parked(150, 45)
    .typed(200)
    .second({ tC: 24 }, 20)
    .typed(140)
    .wait(8);
  live.give({ kind: 'settings', settings: watchSettings(undefined, { cementLimitC: 140 }) });
  // On a piece: a wrong order, an edge over the cement limit, long on one area, a lap, undo, and nobody there.
  live
    .goTo(120, 1.2)
    .stage('initial')
    .mark(piece)
    .mark(onArea('end', { limitMs: 20_000 }))
    .second({ tC: 121 }, 24);
  live
    .give({ kind: 'piece-facts', facts: { capC: 150, imbalance: 'Upper is ahead.' } })
    .goTo(152, 1.2)
    .second({ tC: 152 }, 5)
    .mark(onArea('edge', { bonded: true }))
    .second({ tC: 151 }, 4)
    .mark(lapDone)
    .second({ tC: 150 }, 3)
    .mark(undo)
    .mark(turned)
    .give({ kind: 'piece-facts', facts: { capC: null, imbalance: '' } })
    .place('on-rest');
  for (let i = 0; i < 90; i++) live.goTo(130, 2).goTo(120, 2);
  live.give({ kind: 'presence' }).second({ tC: 121 }, 2);
  live
    .give({ kind: 'settings', settings: watchSettings([probeSettings(PROBE, { motion })]) })
    .second({ tC: 122, motionG: 0.09 }, 3)
    .mark(onArea('end'))
    .second({ tC: 122, motionG: 0.09 }, 5)
    .second({ tC: 121, motionG: 0.004 }, 9)
    .second({ tC: 122, motionG: 0.08 }, 4);
  live
    .give({ kind: 'coat-facts', facts: { ...noCoats, wet: 'Edge: demo cement', fire: 'Edge: demo cement' } })
    .second({ tC: 122, motionG: 0.08 }, 24)
    .give({ kind: 'coat-facts', facts: noCoats })
    .second({ tC: 122, motionG: 0.08 }, 5);
  live.give({ kind: 'time' });
  const first: Entry = { seq: 0, tMs: 0, input: { kind: 'carried', carried: start } };
  return {
    foldVersion: FOLD_VERSION,
    untilMs: live.tMs,
    entries: [first, ...live.entries].map(written),
    found: live.found,
  };
}

/** A sample is written without what it doesn't carry. */
function written({ seq, tMs, input }: Entry): unknown {
  if (input.kind !== 'sample') return { seq, tMs, input };
  const empty: Readonly<Record<string, unknown>> = { ...emptySample(input.sample.probe), probe: null };
  const carries = Object.entries(input.sample).filter(
    ([name, value]) => JSON.stringify(value) !== JSON.stringify(empty[name]),
  );
  return { seq, tMs, sample: Object.fromEntries(carries) };
}

const read = (entry: unknown): Entry => {
  const { seq, tMs, input, sample } = entry as Entry & { readonly sample?: Sample };
  if (sample === undefined) return { seq, tMs, input };
  return { seq, tMs, input: { kind: 'sample', sample: { ...emptySample(sample.probe), ...sample } } };
};

export function replayGolden({ entries, untilMs }: Golden): FoundEntry[] {
  return [...replay(entries.map(read), untilMs)].flatMap((step) => step.found);
}

/** Another processor may differ in the last bits of a double. */
export const rounded = (found: readonly FoundEntry[]): unknown =>
  JSON.parse(JSON.stringify(found), (_, value: unknown) =>
    typeof value === 'number' ? Number(value.toFixed(6)) : value,
  );
