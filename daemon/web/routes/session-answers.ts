import type { AlarmRecord } from '../../../shared/alarm/record.ts';
import { placeName } from '../../../shared/heat/work/at.ts';
import type { Item } from '../../../shared/messages/items.ts';
import type {
  FindingAnswer,
  FindingList,
  Moment,
  Session,
  VerificationAnswer,
} from '../../../shared/messages/sessions.ts';
import type { Trace } from '../../../shared/messages/trace.ts';
import { visitPlaceOf } from '../../../shared/messages/visit.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { SessionSummary, SuspectItem, TraceRead, Verification } from '../../book/book.ts';
import { utcText } from '../../book/utc.ts';

/** How what the book knows of a session is told: times by the wall clock and in ms of the session. */

export const sessionOf = (summary: SessionSummary): Session => ({
  id: summary.id,
  iron: { id: summary.ironId, name: summary.ironName },
  simulated: summary.simulated,
  watched: summary.watched ?? 'monitored',
  startedAt: summary.startedAtUtc,
  startedBecause: summary.why,
  endedAt: summary.endedAtUtc,
  endedBecause: summary.endWhy,
  lengthMs: summary.untilMs - summary.firstMs,
  zone: summary.zone,
  continues: summary.fromSession,
  samples: summary.samples,
  findings: summary.findings,
  peakC: summary.peakC,
  programVersion: summary.programVersion,
  foldVersion: summary.foldVersion,
  seal: summary.seal,
});

export function traceOf(summary: SessionSummary, read: TraceRead): Trace {
  const { found, foundLeftOut, ...rest } = read;
  const moment = momentsOf(summary);
  return {
    session: summary.id,
    ...rest,
    findings: found.map((entry) => findingOf(entry, moment)),
    findingsLeftOut: foundLeftOut,
  };
}

export function itemOf({ id, session, crossing, guardBandK, limitC, stage, closing }: SuspectItem): Item {
  const moment = momentsOf(session);
  const { fromMs, toMs, peakC, limit, place, at, probes } = crossing;
  return {
    id,
    session: session.id,
    iron: { id: session.ironId, name: session.ironName },
    simulated: session.simulated,
    over: moment(fromMs),
    back: toMs === null ? null : moment(toMs),
    standing: toMs === null && session.endWhy === null,
    lengthMs: Math.max(0, (toMs ?? session.untilMs) - fromMs),
    peakC,
    guardBandK,
    limit,
    limitC,
    stage,
    place,
    probes,
    where: visitPlaceOf(at),
    whereName: at === null ? '' : placeName(at),
    closing: closing && { by: closing.by, found: closing.found, at: closing.atUtc },
  };
}

export function findingListOf(summary: SessionSummary, found: readonly FoundEntry[]): FindingList {
  const moment = momentsOf(summary);
  return { session: summary.id, findings: found.map((entry) => findingOf(entry, moment)) };
}

export function verificationOf(summary: SessionSummary, verification: Verification): VerificationAnswer {
  const moment = momentsOf(summary);
  const bad = verification.firstBadCommit;
  const finding = (entry: FoundEntry | null) => (entry === null ? null : findingOf(entry, moment));
  return {
    session: verification.id,
    exact: bad === null && verification.differences.length === 0,
    firstBadCommit: bad && {
      index: bad.index,
      from: moment(bad.fromMs),
      to: moment(bad.toMs),
      what: bad.what,
    },
    foldVersion: verification.foldVersion,
    sameFoldVersion: verification.sameFoldVersion,
    samples: verification.samples,
    findings: verification.findings,
    differences: verification.differences.map((one) => ({
      seq: one.seq,
      subject: one.subject,
      stored: finding(one.stored),
      replayed: finding(one.replayed),
    })),
  };
}

/** From ms of the watch's clock. */
type ToMoment = (watchMs: number) => Moment;

const momentsOf =
  (summary: SessionSummary): ToMoment =>
  (watchMs) => ({
    utc: utcText(summary.originUtcMs + watchMs),
    sessionMs: watchMs - summary.firstMs,
  });

function findingOf({ seq, tMs, finding }: FoundEntry, moment: ToMoment): FindingAnswer {
  const caused = { seq, at: moment(tMs) };
  if (finding.kind === 'alarm') return { ...caused, ...finding, alarm: alarmOf(finding.alarm, moment) };
  if (finding.kind === 'stretch') {
    const { fromMs, toMs, cycles: _, ...stretch } = finding.stretch;
    const { kind, probe } = finding;
    return { ...caused, kind, probe, from: moment(fromMs), to: moment(toMs), ...stretch };
  }
  if (finding.kind === 'load') {
    const { fromMs, toMs, ...load } = finding.load;
    return { ...caused, kind: 'load', from: moment(fromMs), to: moment(toMs), ...load };
  }
  if (finding.kind === 'check') {
    const { fromMs, toMs, settledMs, ...check } = finding.check;
    const settled = settledMs === null ? null : moment(settledMs);
    return { ...caused, kind: 'check', from: moment(fromMs), to: moment(toMs), settled, ...check };
  }
  if (finding.kind === 'visit') {
    const { fromMs, toMs, spot, ...visit } = finding.visit;
    const place = visitPlaceOf(spot);
    return { ...caused, kind: 'visit', from: moment(fromMs), to: moment(toMs), place, ...visit };
  }
  if (finding.kind === 'typed') {
    const { atMs: _, ...typed } = finding.typed;
    return { ...caused, kind: 'typed', ...typed };
  }
  if (finding.kind !== 'cycle') return { ...caused, ...finding };
  const { fromMs, toMs, peakC, troughC, meanC } = finding.cycle;
  return { ...caused, kind: 'cycle', from: moment(fromMs), to: moment(toMs), peakC, troughC, meanC };
}

function alarmOf(alarm: AlarmRecord, moment: ToMoment): Extract<FindingAnswer, { kind: 'alarm' }>['alarm'] {
  const at = (watchMs: number | null): Moment | null => (watchMs === null ? null : moment(watchMs));
  return {
    kind: alarm.kind,
    probe: alarm.probe,
    state: alarm.state,
    raised: at(alarm.raisedAtMs),
    acknowledged: at(alarm.acknowledgedAtMs),
    silencedUntil: at(alarm.silencedUntilMs),
    reAlarms: alarm.reAlarms,
    peakC: alarm.peakC,
    detail: alarm.detail,
  };
}
