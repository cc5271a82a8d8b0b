import { settledCycle, type TrueCycle } from '../../../../daemon/probe/simulated/cycle.ts';
import { drawOf } from '../../../../daemon/probe/simulated/draw.ts';
import type { IronTraits } from '../../../../daemon/probe/simulated/irons.ts';
import type { IronBody } from '../../../../daemon/probe/simulated/physics.ts';
import type { Seed } from '../../../../daemon/probe/simulated/random.ts';
import type { Scenario, Turn } from '../../../../daemon/probe/simulated/scenario.ts';
import { simulateIron } from '../../../../daemon/probe/simulated/simulated-iron.ts';
import { parseLine } from '../../../../daemon/probe/wire/line.ts';
import type { AlarmChange, AlarmRecord } from '../../../../shared/alarm/record.ts';
import type { Mark, WatchInput, WatchSettings } from '../../../../shared/watch/input.ts';
import { advance, take } from '../../../../shared/watch/replay.ts';
import type { WatchState } from '../../../../shared/watch/state.ts';
import { resume } from '../../../../shared/watch/watch.ts';
import { carried } from './settings.ts';

/** A simulated iron, worked by a seeded hand and watched: its wire's lines through the parser into the fold. */

const DEVICE = 'board';

export interface Heard {
  readonly tMs: number;
  readonly change: AlarmChange;
  readonly alarm: AlarmRecord;
}

export interface Watched {
  readonly alarms: readonly Heard[];
  /** When the second whole cycle was found, ms; null: never. */
  readonly cyclesKnownMs: number | null;
  readonly state: WatchState;
  /** The highest true plate temperature, and when the plate truly first passed `watchOver.limitC`. */
  readonly highestC: number;
  readonly passedLimitMs: number | null;
  /** Since when every number read was at or over it, up to the alarm, ms. */
  readonly readLimitMs: number | null;
}

export interface Session {
  readonly traits: IronTraits;
  readonly scenario: Scenario;
  readonly settings: WatchSettings;
  readonly stageId: string | null;
  readonly seed: Seed;
  readonly lastsS: number;
  /** True: each change between work and rest is marked; a lift is not. */
  readonly marksPlace: boolean;
  /** For the truth: the plate temperature that counts as over the limit. */
  readonly limitC: number;
}

/** Watches a session from a cold iron on. */
export function watchOver(session: Session): Watched {
  const { traits, scenario, settings, stageId, seed, lastsS, marksPlace, limitC } = session;
  const iron = simulateIron(traits, scenario, seed);
  let state = resume(carried(settings, { stageId }), 0, 0);
  const alarms: Heard[] = [];
  let cycles = 0;
  let cyclesKnownMs: number | null = null;
  let highestC = -Infinity;
  let passedLimitMs: number | null = null;
  let readLimitMs: number | null = null;
  let place: Mark | null = null;
  const give = (input: WatchInput, tMs: number): void => {
    const step = take(state, input, tMs);
    state = step.state;
    for (const { tMs: foundMs, finding } of step.found) {
      if (finding.kind === 'alarm')
        alarms.push({ tMs: foundMs, change: finding.change, alarm: finding.alarm });
      if (finding.kind === 'cycle' && ++cycles === 2) cyclesKnownMs = foundMs;
    }
  };
  give({ kind: 'device', device: DEVICE, link: 'connected', detail: '' }, 0);
  for (let at = iron.start; at.tMs < lastsS * 1000; ) {
    const { said, state: next } = iron.next(at);
    at = next;
    const { truth, tMs } = said;
    // Whoever works touches something every few minutes.
    if (tMs - state.attended.seenMs > 300_000) give({ kind: 'presence' }, tMs);
    highestC = Math.max(highestC, truth.plateC);
    if (passedLimitMs === null && truth.plateC >= limitC) passedLimitMs = tMs;
    const now = truth.place === 'on-work' ? 'on-work' : truth.place === 'on-rest' ? 'on-rest' : null;
    if (marksPlace && now !== null && (place?.kind !== 'place' || place.place !== now)) {
      place = { kind: 'place', place: now };
      give({ kind: 'mark', commandId: `m${tMs}`, mark: place }, tMs);
    }
    for (const line of said.lines) {
      const parsed = parseLine(line, DEVICE);
      if (parsed.kind === 'rejected') give({ kind: 'rejected', device: DEVICE, count: 1 }, tMs);
      if (parsed.kind !== 'sample') continue;
      give({ kind: 'sample', sample: parsed.sample }, tMs);
      const over = (parsed.sample.tC ?? limitC) >= limitC;
      if (over) readLimitMs ??= tMs;
      else if (!alarms.some((a) => a.alarm.kind === 'over-limit')) readLimitMs = null;
    }
  }
  state = advance(state, lastsS * 1000).state;
  return { alarms, cyclesKnownMs, state, highestC, passedLimitMs, readLimitMs };
}

/** A stream of seeded numbers between two bounds. */
export const drawer = (seed: Seed): ((low: number, high: number) => number) => drawOf(seed).between;

/** An hour's work as a hand does it: strokes with lifts between them, then a rest, and so on. */
export function work(
  fromS: number,
  toS: number,
  draw: (low: number, high: number) => number,
): readonly Turn[] {
  const turns: Turn[] = [];
  for (let atS = fromS; atS < toS; ) {
    for (let strokes = Math.round(draw(1, 8)); strokes > 0 && atS < toS; strokes--) {
      turns.push({ atS, place: 'on-work' });
      atS += draw(8, 45);
      turns.push({ atS, place: 'lifted' });
      atS += draw(1, 10);
    }
    turns.push({ atS, place: 'on-rest' });
    atS += draw(10, 240);
  }
  return turns;
}

/** The same iron with a board that sends a line every `periodMs`. */
export const paced = (traits: IronTraits, periodMs: number): IronTraits => ({
  ...traits,
  wire: { ...traits.wire, periodMs },
});

const AROUND = { ambientC: 21, onWork: false, runaway: false };

/** The thermostat's true cycle on its rest with the dial at `dialC`. */
export const restCycle = (body: IronBody, dialC: number): TrueCycle =>
  settledCycle(body, { ...AROUND, dialC });

/** The iron with the hysteresis that makes its plate swing by `swingK` on its rest at a mean of `meanC`, and its dial. */
export function swingingBy(
  traits: IronTraits,
  swingK: number,
  meanC: number,
): { readonly traits: IronTraits; readonly dialC: number; readonly cycle: TrueCycle } {
  let body = { ...traits.body, hysteresisK: swingK };
  let dialC = meanC;
  for (let i = 0; i < 30; i++) {
    const cycle = restCycle(body, dialC);
    const shortK = swingK - (cycle.peakC - cycle.troughC);
    const offK = meanC - cycle.meanC;
    if (Math.abs(shortK) < 0.4 && Math.abs(offK) < 0.4) return { traits: { ...traits, body }, dialC, cycle };
    body = { ...body, hysteresisK: Math.max(0.2, body.hysteresisK + shortK) };
    dialC += offK;
  }
  throw new RangeError(`no setting makes this iron swing by ${swingK} K around ${meanC} degC`);
}
