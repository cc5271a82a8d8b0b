import { drifted, noReading, notRecording, outOfBand, overLimit, suspected } from '../alarm/conditions.ts';
import type { Condition } from '../alarm/machine.ts';
import type { AlarmKey, AlarmRecord } from '../alarm/record.ts';
import { alarmTable } from '../alarm/table.ts';
import type { BandSeen } from '../heat/band.ts';
import { type Drift, driftDetail } from '../iron/dial/drift.ts';
import { type HeadingFacts, headingForLimit, type Reach } from '../thermometer/lag/heading.ts';
import type { Quality } from '../thermometer/reading.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import { type Suspicion, suspicionDetail } from '../thermometer/suspect-probe.ts';

/** From facts to what is seen of each alarm's condition. */
export interface Seen extends AlarmKey {
  readonly condition: Condition;
  /** Why, in the kind's own words, while the condition is beyond; left out where the kind has none. */
  readonly detail?: string;
  readonly plateC?: number | null;
}

export interface ProbeFacts {
  readonly probe: ProbeId;
  readonly quality: Quality;
  /** The fabric limit with the guard band of this reading taken off, degC. */
  readonly limitC: number;
  /** The reading, or where a rising plate is ahead of it, degC; null where there is no valid reading. */
  readonly highestC: number | null;
  readonly heading: HeadingFacts;
  readonly reach: Reach;
  readonly suspicion: Suspicion | null;
  readonly mayBeHot: boolean;
}

/** The alarms of one probe. */
export const seenOfProbe = (facts: ProbeFacts): readonly Seen[] => {
  const { probe, quality, limitC, highestC, heading, reach, suspicion, mayBeHot } = facts;
  const plateC = heading.readC;
  const over = overLimit({ plateC: highestC, limitC }, alarmTable['over-limit'].deadbandK);
  return [
    { kind: 'over-limit', probe, condition: over, plateC },
    { kind: 'heading-for-limit', probe, condition: headingForLimit(heading, reach), plateC },
    { kind: 'no-reading', probe, condition: noReading(quality, mayBeHot), detail: quality },
    {
      kind: 'suspect-probe',
      probe,
      condition: suspected(suspicion),
      detail: suspicion === null ? '' : suspicionDetail(suspicion),
    },
  ];
};

export interface WholeFacts {
  readonly band: BandSeen;
  readonly keeping: { readonly kept: boolean; readonly detail: string };
  readonly drift: Drift | null;
}

/** The alarms that concern the whole iron. */
export const seenOfIron = ({ band, keeping, drift }: WholeFacts): readonly Seen[] => [
  outside(band, 'above'),
  outside(band, 'below'),
  { kind: 'drift', probe: null, condition: drifted(drift), detail: drift === null ? '' : driftDetail(drift) },
  { kind: 'not-recording', probe: null, condition: notRecording(keeping.kept), detail: keeping.detail },
];

function outside(band: BandSeen, side: 'above' | 'below'): Seen {
  const kind = `${side}-band` as const;
  return { kind, probe: null, condition: outOfBand(band, side, alarmTable[kind].deadbandK) };
}

/** A probe that was taken off this iron no longer tells anything of it: its alarms go. */
export const seenOfGone = (alarms: readonly AlarmRecord[], probes: readonly ProbeId[]): readonly Seen[] =>
  alarms
    .filter(({ probe }) => probe !== null && !probes.includes(probe))
    .map(({ kind, probe }) => ({ kind, probe, condition: 'inside' }));
