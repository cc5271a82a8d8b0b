import { isSameMark, markNumber } from '../iron/dial/mark.ts';
import { ENOUGH_CYCLES, type StretchFound } from '../iron/dial/stretch.ts';
import { seatOf } from '../thermometer/place.ts';
import { conversionOf } from '../thermometer/probe.ts';
import type { Reading } from '../thermometer/reading.ts';
import type { ProbeId, Sample } from '../thermometer/sample.ts';
import {
  type Standing,
  type Suspicion,
  suspectType,
  watchForReversed,
} from '../thermometer/suspect-probe.ts';
import { COLD_C } from '../thermometer/thermometer.ts';
import type { Finding } from './finding.ts';
import type { WatchInput, WatchSettings } from './input.ts';

/** What is suspected of one probe: that its wires are swapped, or that it is read as another type. */
export interface Doubt {
  readonly standing: Standing | null;
  /** The last one told, degC; null where the device tells none. */
  readonly coldJunctionC: number | null;
  readonly suspicion: Suspicion | null;
}

/** The slice of the doubts: probes of which nothing has been heard have none. */
export type Doubts = Readonly<Record<ProbeId, Doubt>>;

export interface DoubtFacts {
  readonly settings: WatchSettings;
  /** What was settled before this input. */
  readonly before: WatchSettings | null;
  readonly tMs: number;
  readonly readings: Readonly<Record<ProbeId, Reading>>;
  readonly leader: ProbeId | null;
  /** Means of the last whole cycles since the plate began to be regulated, as the leading probe reads them, degC. */
  readonly meansC: readonly number[];
  readonly found: readonly Finding[];
}

const none: Doubt = { standing: null, coldJunctionC: null, suspicion: null };

/** Folds one input into the slice. */
export function stepDoubts(before: Doubts, input: WatchInput, facts: DoubtFacts): Doubts {
  if (input.kind === 'settings') return stillRight(before, facts);
  if (input.kind !== 'sample') return before;
  const { probe } = input.sample;
  const was = before[probe] ?? none;
  const followed = followReading(was, input.sample, facts);
  const doubt = probe === facts.leader ? followCycles(followed, facts) : followed;
  return doubt === was ? before : { ...before, [probe]: doubt };
}

/** A probe that is read in another way now, or that has gone, is doubted no more. */
function stillRight(before: Doubts, { settings, before: settledBefore }: DoubtFacts): Doubts {
  const kept = Object.entries(before).filter(([id]) => {
    const now = settings.probes.find((p) => p.id === id);
    const then = settledBefore?.probes.find((p) => p.id === id);
    return now !== undefined && then !== undefined && conversionOf(now) === conversionOf(then);
  });
  return kept.length === Object.keys(before).length ? before : Object.fromEntries(kept);
}

function followReading(was: Doubt, sample: Sample, { settings, tMs, readings }: DoubtFacts): Doubt {
  const reading = readings[sample.probe];
  if (reading?.quality !== 'ok') return was;
  // In ice, in the air or on its pad it falls by its nature.
  if (!isOnPlate(settings, sample.probe)) return was.standing === null ? was : { ...was, standing: null };
  const { plateC } = reading;
  // Adding 0 takes the sign off a negative zero, which JSON would lose.
  const coldJunctionC = sample.coldJunctionC === null ? null : sample.coldJunctionC + 0;
  const { standing, suspicion } = watchForReversed(was.standing, { tMs, plateC, coldJunctionC });
  if (suspicion !== null) return { standing, coldJunctionC, suspicion };
  // A plate that was seen to warm up is read the right way round.
  const righted = was.suspicion?.kind === 'reversed' && plateC >= COLD_C;
  const same = standing === was.standing && coldJunctionC === was.coldJunctionC && !righted;
  return same ? was : { standing, coldJunctionC, suspicion: righted ? null : was.suspicion };
}

function isOnPlate({ iron, probes }: WatchSettings, id: ProbeId): boolean {
  const own = probes.find((p) => p.id === id);
  return own !== undefined && own.dipped !== true && seatOf(own, iron.id) === 'fitted';
}

function followCycles(was: Doubt, facts: DoubtFacts): Doubt {
  const { settings, leader, meansC, found } = facts;
  const own = settings.probes.find((p) => p.id === leader);
  const stretch = found.find((f) => f.kind === 'stretch');
  const isJudged = stretch !== undefined || found.some((f) => f.kind === 'cycle');
  if (own === undefined || !isJudged || (stretch === undefined && meansC.length < ENOUGH_CYCLES)) return was;
  const meanC =
    stretch?.stretch.figures.meanC ?? meansC.reduce((sum, c) => sum + c, 0) / Math.max(1, meansC.length);
  const chartC = stretch === undefined ? null : chartedC(stretch.stretch, settings);
  // What a chart has told stands until a chart tells otherwise.
  if (chartC === null && was.suspicion?.kind === 'type' && was.suspicion.likely !== null) return was;
  const { coldJunctionC } = was;
  const suspicion = suspectType({ type: own.thermocouple, meanC, coldJunctionC, chartC });
  return { ...was, suspicion };
}

/** What is known of this mark from elsewhere: typed from a hand thermometer, or by another probe. */
function chartedC({ mark }: StretchFound, { charted = [] }: WatchSettings): number | null {
  const at = markNumber(mark, []);
  return at === null ? null : (charted.find((p) => isSameMark(p.mark, at))?.meanC ?? null);
}
