import { followReach, headingForLimit, noReach, type Reach } from '../../../shared/alarm/heading.ts';
import { type Condition, normalAlarm, observeCondition } from '../../../shared/alarm/machine.ts';
import type { AlarmRecord } from '../../../shared/alarm/record.ts';
import { alarmTable } from '../../../shared/alarm/table.ts';
import {
  type KnownProbe,
  type LagFilter,
  plateEstimate,
  trackPlate,
} from '../../../shared/thermometer/lag/filter.ts';
import { addToSlope, type SlopeState, slopeKPerS } from '../../../shared/thermometer/slope.ts';
import { headingBySlope } from './slope-rule.ts';

/** The rules that are compared, each behind the alarm's own delays. */

export interface Read {
  readonly tMs: number;
  readonly readC: number;
  readonly limitC: number;
  readonly expectedPeakC: number | null;
}

/** What one rule makes of a reading; a rule remembers what it needs. */
export type Rule = (read: Read) => Condition;

export function slopeRule(): Rule {
  let slope: SlopeState | null = null;
  return ({ tMs, readC, limitC, expectedPeakC }) => {
    slope = addToSlope(slope, tMs, readC);
    return headingBySlope({ plateC: readC, slopeKPerS: slopeKPerS(slope), limitC, expectedPeakC });
  };
}

export function lagRule(probe: KnownProbe): Rule {
  let filter: LagFilter | null = null;
  let reach: Reach = noReach;
  return ({ tMs, readC, limitC, expectedPeakC }) => {
    filter = trackPlate(filter, tMs, readC, probe);
    const estimate = plateEstimate(filter, probe);
    const facts = { readC, estimate, limitC, expectedPeakC };
    const condition = headingForLimit(facts, reach);
    reach = followReach(reach, facts);
    return condition;
  };
}

const TICK_MS = 250;

/** From when to when a warning stood; without an end while it stands. */
export interface Warning {
  readonly raisedMs: number;
  clearedMs: number;
}

/** The alarm of one rule, with its delays, looked at as often as the watch does. */
export class Warner {
  readonly warnings: Warning[] = [];
  readonly #rule: Rule;
  #alarm: AlarmRecord = normalAlarm({ kind: 'heading-for-limit', probe: null });
  #condition: Condition = 'unknown';
  #tickMs = 0;

  constructor(rule: Rule) {
    this.#rule = rule;
  }

  hear(read: Read): void {
    for (; this.#tickMs < read.tMs; this.#tickMs += TICK_MS) this.#look(this.#tickMs);
    this.#condition = this.#rule(read);
    this.#look(read.tMs);
  }

  #look(tMs: number): void {
    const { alarm, change } = observeCondition(
      this.#alarm,
      this.#condition,
      alarmTable['heading-for-limit'],
      tMs,
    );
    this.#alarm = alarm;
    const last = this.warnings.at(-1);
    if (change === 'raised') this.warnings.push({ raisedMs: tMs, clearedMs: Number.POSITIVE_INFINITY });
    if (change === 'cleared' && last !== undefined) last.clearedMs = tMs;
  }
}
