import { drifted, noReading, notRecording, outOfBand, overLimit, suspected } from '../alarm/conditions.ts';
import { type HeadingFacts, headingForLimit, type Reach } from '../alarm/heading.ts';
import type { Condition } from '../alarm/machine.ts';
import type { AlarmKey, AlarmRecord } from '../alarm/record.ts';
import { alarmTable } from '../alarm/table.ts';
import type { BandSeen } from '../heat/band.ts';
import { type Drift, driftDetail } from '../iron/dial/drift.ts';
import type { Quality } from '../thermometer/reading.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import { type Suspicion, suspicionDetail } from '../thermometer/suspect-probe.ts';
import type { Typed } from './checks.ts';

/** From facts to what is seen of each alarm's condition. */
export interface Seen extends AlarmKey {
  readonly condition: Condition;
  /** Why, in the kind's own words, while the condition is beyond; left out where the kind has none. */
  readonly detail?: string;
  readonly plateC?: number | null;
}

export interface ProbeFacts {
  readonly probe: ProbeId;
  /** In a check pad: its slope is the pad's, not the plate's. */
  readonly onPad: boolean;
  readonly quality: Quality;
  /** The fabric limit with the guard band of this reading taken off, degC. */
  readonly limitC: number;
  /** The same of the cement limit, while the iron is on a bonded edge or tape; null: it doesn't hold. */
  readonly cementLimitC: number | null;
  /** The reading, or where a rising plate is ahead of it, degC; null where there is no valid reading. */
  readonly highestC: number | null;
  readonly heading: HeadingFacts;
  readonly reach: Reach;
  readonly suspicion: Suspicion | null;
  readonly mayBeHot: boolean;
}

/** The alarms of one probe. */
export const seenOfProbe = (facts: ProbeFacts): readonly Seen[] => {
  const { probe, onPad, quality, limitC, cementLimitC, highestC, heading, reach, suspicion, mayBeHot } =
    facts;
  const plateC = heading.readC;
  const over = overLimit({ plateC: highestC, limitC }, alarmTable['over-limit'].deadbandK);
  return [
    { kind: 'over-limit', probe, condition: over, plateC },
    { kind: 'over-cement-limit', probe, condition: overCement(highestC, cementLimitC), plateC },
    {
      kind: 'heading-for-limit',
      probe,
      condition: onPad ? 'inside' : headingForLimit(heading, reach),
      plateC,
    },
    { kind: 'no-reading', probe, condition: noReading(quality, mayBeHot), detail: quality },
    {
      kind: 'suspect-probe',
      probe,
      condition: suspected(suspicion),
      detail: suspicion === null ? '' : suspicionDetail(suspicion),
    },
  ];
};

/** Off the edge, or where none is set, nothing is over it. */
const overCement = (plateC: number | null, limitC: number | null): Condition =>
  limitC === null ? 'inside' : overLimit({ plateC, limitC }, alarmTable['over-cement-limit'].deadbandK);

export interface WholeFacts {
  readonly band: BandSeen;
  readonly keeping: { readonly kept: boolean; readonly detail: string };
  readonly drift: Drift | null;
  /** What was typed last, while it counts; null: nothing, or it has been overtaken. */
  readonly typed: Pick<Typed, 'plateC' | 'guardBandK'> | null;
  readonly fabricLimitC: number;
}

/** The alarms that concern the whole iron. */
export const seenOfIron = ({ band, keeping, drift, typed, fabricLimitC }: WholeFacts): readonly Seen[] => [
  { kind: 'over-limit', probe: null, ...typedOver(typed, fabricLimitC), detail: TYPED },
  outside(band, 'above'),
  outside(band, 'below'),
  { kind: 'drift', probe: null, condition: drifted(drift), detail: drift === null ? '' : driftDetail(drift) },
  { kind: 'not-recording', probe: null, condition: notRecording(keeping.kept), detail: keeping.detail },
];

/** How an alarm says that a reading was typed. */
export const TYPED = 'typed';

/** What was typed stands until something else has been read: nobody knows what the plate has done since. */
function typedOver(
  typed: WholeFacts['typed'],
  fabricLimitC: number,
): Pick<Seen, 'condition'> & { readonly plateC?: number } {
  if (typed === null) return { condition: 'inside' };
  const { plateC, guardBandK } = typed;
  const facts = { plateC, limitC: fabricLimitC - guardBandK };
  return { condition: overLimit(facts, alarmTable['over-limit'].deadbandK), plateC };
}

function outside(band: BandSeen, side: 'above' | 'below'): Seen {
  const kind = `${side}-band` as const;
  return { kind, probe: null, condition: outOfBand(band, side, alarmTable[kind].deadbandK) };
}

/** A probe that was taken off this iron no longer tells anything of it: its alarms go. */
export const seenOfGone = (alarms: readonly AlarmRecord[], probes: readonly ProbeId[]): readonly Seen[] =>
  alarms
    .filter(({ probe }) => probe !== null && !probes.includes(probe))
    .map(({ kind, probe }) => ({ kind, probe, condition: 'inside' }));
