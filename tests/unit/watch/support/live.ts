import type { AlarmKind, AlarmRecord } from '../../../../shared/alarm/record.ts';
import type { Place } from '../../../../shared/iron/place.ts';
import type { ProbeId, Sample } from '../../../../shared/thermometer/sample.ts';
import type { FoundEntry } from '../../../../shared/watch/finding.ts';
import type { Carried, Entry, Mark, WatchInput } from '../../../../shared/watch/input.ts';
import { advance, take } from '../../../../shared/watch/replay.ts';
import type { WatchState } from '../../../../shared/watch/state.ts';
import { resume } from '../../../../shared/watch/watch.ts';
import { PROBE, reads } from './settings.ts';

/** A watch as it runs live: keeps what it took and what it found. */
export class Live {
  state: WatchState;
  readonly entries: Entry[] = [];
  readonly found: FoundEntry[] = [];
  tMs: number;
  /** Somebody is there and touches something every few minutes, while the iron is read. */
  attended = true;

  constructor(carried: Carried, tMs = 0, link: 'connected' | null = 'connected') {
    this.tMs = tMs;
    this.state = resume(carried, 0, tMs);
    if (link !== null) this.give({ kind: 'device', device: 'board', link, detail: '' });
  }

  /** Gives one input now. */
  give(input: WatchInput): this {
    const step = take(this.state, input, this.tMs);
    this.state = step.state;
    this.entries.push(step.entry);
    this.found.push(...step.found);
    return this;
  }

  /** Lets time go on without an input. */
  wait(s: number): this {
    this.tMs += s * 1000;
    const step = advance(this.state, this.tMs);
    this.state = step.state;
    this.found.push(...step.found);
    return this;
  }

  /** One probe reads for so long: about `tC`, or what the function gives for the seconds since. */
  read(s: number, tC: number | ((s: number) => number), probe: ProbeId = PROBE): this {
    return this.readAll(s, { [probe]: tC });
  }

  /**
   * Several probes read ten times a second for so long, twice a second where that is over half a minute; `null`: an open
   * junction.
   */
  readAll(s: number, plates: Readonly<Record<ProbeId, number | null | ((s: number) => number)>>): this {
    const everyS = s > 30 ? 0.5 : 0.1;
    for (let i = 1; i <= Math.round(s / everyS); i++) {
      this.tMs += everyS * 1000;
      if (this.attended && this.tMs - this.state.attended.seenMs > 300_000) this.give({ kind: 'presence' });
      for (const [probe, plate] of Object.entries(plates)) {
        // No real number stands still to the last digit.
        const steady = typeof plate === 'number' ? plate + 0.01 * (i % 2) : plate;
        const tC = typeof steady === 'function' ? steady(i * everyS) : steady;
        this.sample(tC === null ? { faults: ['open'], tC: null } : { tC }, probe);
      }
    }
    return this;
  }

  sample(more: Partial<Sample>, probe: ProbeId = PROBE): this {
    return this.give({ kind: 'sample', sample: { ...reads(0), ...more, probe } });
  }

  /** Goes evenly from where the first probe read last. */
  ramp(toC: number, kPerS: number, probe: ProbeId = PROBE): this {
    const reading = this.state.readings[probe];
    const fromC = reading?.quality === 'ok' ? reading.plateC : 20;
    const s = Math.abs(toC - fromC) / kPerS;
    return this.read(s, (t) => fromC + ((toC - fromC) * t) / s, probe);
  }

  /** Cycles of a thermostat around `meanC`, 28 K (50 degF) from trough to peak, 115 s each. */
  swing(meanC: number, cycles: number, probe: ProbeId = PROBE): this {
    for (let i = 0; i < cycles; i++) this.ramp(meanC + 14, 0.8, probe).ramp(meanC - 14, 0.35, probe);
    return this;
  }

  mark(mark: Mark): this {
    return this.give({ kind: 'mark', commandId: `m${this.tMs}`, mark });
  }

  stage(stageId: string | null): this {
    return this.mark({ kind: 'stage', stageId });
  }

  place(place: Place): this {
    return this.mark({ kind: 'place', place });
  }

  dial(mark: number | string | null): this {
    return this.mark({ kind: 'dial', mark });
  }

  acknowledge(kind: AlarmKind, probe: ProbeId | null = null): this {
    return this.give({ kind: 'acknowledge', commandId: `a${this.tMs}`, alarm: { kind, probe } });
  }

  silence(kind: AlarmKind, probe: ProbeId | null, forMs = 60_000): this {
    return this.give({ kind: 'silence', commandId: `s${this.tMs}`, alarm: { kind, probe }, forMs });
  }

  alarm(kind: AlarmKind, probe: ProbeId | null = PROBE): AlarmRecord | undefined {
    return this.state.alarms[probe === null ? kind : `${kind}:${probe}`];
  }

  /** Changes of alarms so far, in words: "over-limit raised". */
  get changes(): string[] {
    return this.found.flatMap(({ finding: f }) =>
      f.kind === 'alarm' ? [`${f.alarm.kind} ${f.change}`] : [],
    );
  }

  /** Forgets what was found so far. */
  afresh(): this {
    this.found.length = 0;
    return this;
  }
}
