import type { Database } from 'better-sqlite3';
import { type AlarmRecord, alarmKeyText } from '../../../shared/alarm/record.ts';
import type { Finding } from '../../../shared/watch/finding.ts';
import type { Carried, WatchInput } from '../../../shared/watch/input.ts';
import { newWork, type Stages, stepWork, type Work } from '../../../shared/watch/work.ts';
import type { Commit, InterruptedSession, SessionHead } from '../book.ts';
import { utcText } from '../utc.ts';
import { BookDamaged } from './failure.ts';
import { parseFinding, parseHead, parseInput } from './parse.ts';
import { bookRows, type Tail } from './rows.ts';

/**
 * Finds the sessions that nobody ended, newest first: what has to be gone on with, and for each the last link of its
 * chain, which says that it was interrupted.
 */
export function findInterrupted(db: Database): { interrupted: InterruptedSession[]; endings: Commit[] } {
  const rows = bookRows(db);
  const inputs = sessionRows(db, INPUTS, parseInput);
  const findings = sessionRows(db, FINDINGS, parseFinding);
  const interrupted: InterruptedSession[] = [];
  const endings: Commit[] = [];
  for (const number of rows.sessionNumbers()) {
    const tail = rows.tail(number);
    if (tail === null) throw new BookDamaged('a session without its newest commit');
    if (tail.ending !== null) continue;
    const head = parseHead(rows.head(number));
    const { id, ironId, originUtcMs } = head;
    interrupted.push({ id, ironId, originUtcMs, ...standing(inputs(number), findings(number)) });
    endings.push(endingOf(head, tail));
  }
  return { interrupted, endings };
}

const endingOf = (head: SessionHead, { untilSeq, untilMs, peakC }: Tail): Commit => ({
  session: head.id,
  begin: null,
  entries: [],
  found: [],
  untilSeq,
  untilMs,
  peakC,
  end: { why: 'interrupted', atUtc: utcText(head.originUtcMs + untilMs) },
});

const INPUTS = `SELECT r.json FROM link l CROSS JOIN input r ON r.link = l.n
  WHERE l.session = ? AND r.kind IN ('carried', 'mark', 'acknowledge', 'silence', 'start') ORDER BY l.idx, r.seq`;
const FINDINGS = `SELECT r.json FROM link l CROSS JOIN finding r ON r.link = l.n
  WHERE l.session = ? AND r.kind IN ('alarm', 'heat', 'refused') ORDER BY l.idx, r.place`;

function sessionRows<T>(db: Database, sql: string, parse: (json: string) => T): (session: number) => T[] {
  const statement = db.prepare<[number], string>(sql).pluck();
  return (session) => statement.all(session).map(parse);
}

type Standing = Omit<InterruptedSession, 'id' | 'ironId' | 'originUtcMs'>;

/** What stood at a session's end, from its inputs and findings. */
function standing(inputs: readonly WatchInput[], findings: readonly Finding[]): Standing {
  const refused = new Set(findings.flatMap((f) => (f.kind === 'refused' ? [f.commandId] : [])));
  const taken = inputs.filter((i) => !('commandId' in i && i.commandId !== null && refused.has(i.commandId)));
  const carried = taken.find((i) => i.kind === 'carried')?.carried ?? null;
  return {
    ...workInHand(carried, taken),
    alarms: standingAlarms(carried, findings),
    commandIds: taken.flatMap((i) => ('commandId' in i && i.commandId !== null ? [i.commandId] : [])),
    hot: mayBeHot(carried, findings),
  };
}

function workInHand(
  carried: Carried | null,
  inputs: readonly WatchInput[],
): Pick<InterruptedSession, 'stageId' | 'place' | 'dial' | 'at'> {
  const { stageId, place, dial = null, at = null } = carried ?? { stageId: null, place: 'unknown' as const };
  const none: Stages = [];
  let work: Work = { ...newWork, stageId, place, at };
  let told = dial;
  for (const input of inputs) {
    if (input.kind !== 'mark') continue;
    if (input.mark.kind === 'stage') work = { ...work, stageId: input.mark.stageId };
    else if (input.mark.kind === 'dial') told = input.mark.mark;
    else work = stepWork(work, input, none, 0).work;
  }
  return { stageId: work.stageId, place: work.place, at: work.at, dial: told };
}

function standingAlarms(carried: Carried | null, findings: readonly Finding[]): AlarmRecord[] {
  const found = findings.flatMap((f) => (f.kind === 'alarm' ? [f.alarm] : []));
  const last = new Map([...(carried?.alarms ?? []), ...found].map((alarm) => [alarmKeyText(alarm), alarm]));
  return [...last.values()].filter((alarm) => alarm.state !== 'normal');
}

/** Only a plate that was measured cold is not to be treated as hot. */
function mayBeHot(carried: Carried | null, findings: readonly Finding[]): boolean {
  const heat = findings.filter((f) => f.kind === 'heat').at(-1);
  return heat === undefined ? carried?.hot !== false : heat.change !== 'cold';
}
