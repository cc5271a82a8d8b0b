import type { Database } from 'better-sqlite3';
import { lowerLimitC, noCoats } from '../../../shared/cure/facts.ts';
import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { restingGuardBandK } from '../../../shared/thermometer/trust.ts';
import type { Finding } from '../../../shared/watch/finding.ts';
import type { WatchInput, WatchSettings } from '../../../shared/watch/input.ts';
import { completed } from '../../../shared/watch/older.ts';
import { type Crossing, type PlaceFrom, suspectCrossings } from '../../../shared/watch/suspect.ts';
import { newWork, stepWork } from '../../../shared/watch/work.ts';
import type { ItemClosing, SessionSummary, SuspectItem } from '../book.ts';
import { closingsIn } from '../store/closings.ts';
import { parseFinding, parseInput } from '../store/parse.ts';
import type { BookRows } from '../store/rows.ts';
import { summaryOf } from './summary.ts';

/** An item before it is known whether somebody has closed it. */
type Opened = Omit<SuspectItem, 'closing' | 'session'>;

interface Known {
  readonly seal: string;
  readonly items: readonly Opened[];
}

/**
 * The items of all sessions. What a session opened is looked for once and kept for as long as its seal is the same.
 */
export class ItemsOfBook {
  #known = new Map<string, Known>();

  /** Newest first. */
  read(db: Database, rows: BookRows): readonly SuspectItem[] {
    const sessions = rows.sessionNumbers().map((number) => ({ number, summary: summaryOf(rows, number) }));
    const before = this.#known;
    const opened = openedItems(db);
    this.#known = new Map(
      sessions.map(({ number, summary }) => {
        const known = before.get(summary.id);
        const same = known?.seal === summary.seal;
        return [summary.id, same ? known : { seal: summary.seal, items: opened(number, summary) }];
      }),
    );
    const summaries = sessions.map(({ summary }) => summary);
    return closed(goneOnWith(summaries, this.#known), closingsIn(db));
  }
}

const closed = (
  items: readonly Omit<SuspectItem, 'closing'>[],
  closings: ReadonlyMap<string, ItemClosing>,
): readonly SuspectItem[] => items.map((item) => ({ ...item, closing: closings.get(item.id) ?? null }));

/** How an item is named: by its session and the number of what raised it. */
const itemId = (session: string, { seq, limit }: Pick<Crossing, 'seq' | 'limit'>): string =>
  `${session}-${limit === 'cement' ? 'c' : ''}${seq}`;

interface Told {
  readonly seq: number;
  readonly tMs: number;
  readonly json: string;
}

function openedItems(db: Database): (session: number, head: SessionSummary) => readonly Opened[] {
  const inputs = db.prepare<[number], Told>(
    `SELECT r.seq, r.t_ms AS tMs, r.json FROM link l CROSS JOIN input r ON r.link = l.n
     WHERE l.session = ? AND r.kind IN ('carried', 'settings', 'mark', 'coat-facts') ORDER BY l.idx, r.seq`,
  );
  const findings = db.prepare<[number], Told>(
    `SELECT r.seq, r.t_ms AS tMs, r.json FROM link l CROSS JOIN finding r ON r.link = l.n
     WHERE l.session = ? AND r.kind IN ('alarm', 'refused') ORDER BY l.idx, r.place`,
  );
  return (session, head) => {
    const found = findings.all(session).map((one) => ({ ...one, finding: parseFinding(one.json) }));
    const refused = refusedIn(found.map(({ finding }) => finding));
    const said = inputs
      .all(session)
      .map((one) => ({ tMs: one.tMs, input: parseInput(one.json) }))
      .filter(({ input }) => !('commandId' in input && refused.has(input.commandId)));
    const crossings = suspectCrossings({ ...head, carried: carriedIn(said), found, places: placesIn(said) });
    return crossings.map((crossing) => openedAt(head.id, crossing, said));
  };
}

const refusedIn = (findings: readonly Finding[]): ReadonlySet<string | null> =>
  new Set(findings.flatMap((finding) => (finding.kind === 'refused' ? [finding.commandId] : [])));

interface Said {
  readonly tMs: number;
  readonly input: WatchInput;
}

const carriedIn = (said: readonly Said[]) =>
  said.flatMap(({ input }) => (input.kind === 'carried' ? input.carried.alarms : []));

/** Where the iron was from when on, by the same slice that the watch has. */
function placesIn(said: readonly Said[]): readonly PlaceFrom[] {
  const places: PlaceFrom[] = [];
  let work = newWork;
  for (const { tMs: fromMs, input } of said) {
    if (input.kind === 'carried') {
      const { place, at = null } = input.carried;
      work = { ...work, place, at };
    } else if (input.kind === 'mark' && input.mark.kind !== 'stage') {
      work = stepWork(work, input, [], fromMs).work;
    } else continue;
    places.push({ fromMs, place: work.place, at: work.at });
  }
  return places;
}

function openedAt(session: string, crossing: Crossing, said: readonly Said[]): Opened {
  const before = said.filter(({ tMs }, i) => i === 0 || tMs <= crossing.fromMs).map(({ input }) => input);
  const settings = before.map(settingsIn).findLast((one) => one !== null) ?? undefined;
  const schedule = settings?.schedule;
  const stageId = before.map(stageIn).findLast((stage) => stage !== undefined);
  return {
    id: itemId(session, crossing),
    crossing,
    limitC: limitOf(schedule, before, crossing),
    guardBandK: settings === undefined ? null : guardBandOf(settings, crossing),
    stage: schedule?.stages.find((stage) => stage.id === stageId)?.name ?? null,
  };
}

/** @param before what was said until it began */
function limitOf(
  schedule: HeatSchedule | undefined,
  before: readonly WatchInput[],
  { limit, at }: Crossing,
): number | null {
  if (limit === 'fabric') return schedule?.fabricLimitC ?? null;
  const told = before.findLast((input) => input.kind === 'coat-facts');
  const ofSchedule = at === null || at.bonded ? (schedule?.cementLimitC ?? null) : null;
  return lowerLimitC(ofSchedule, told?.facts ?? noCoats);
}

/** How far off its peak may be: of the least sure of its probes, with the plate at rest, K. */
function guardBandOf({ probes, iron }: WatchSettings, { probes: saw, peakC }: Crossing): number | null {
  const own = probes.filter(({ id }) => saw.includes(id));
  return peakC === null || own.length === 0
    ? null
    : Math.max(...own.map((probe) => restingGuardBandK({ probe, iron }, peakC)));
}

const settingsIn = (input: WatchInput): WatchSettings | null =>
  input.kind === 'carried'
    ? completed(input.carried.settings)
    : input.kind === 'settings'
      ? completed(input.settings)
      : null;

/** The stage that an input chose, null for none; undefined where it says nothing of it. */
const stageIn = (input: WatchInput): string | null | undefined =>
  input.kind === 'carried'
    ? input.carried.stageId
    : input.kind === 'mark' && input.mark.kind === 'stage'
      ? input.mark.stageId
      : undefined;

/**
 * A crossing that a break of the program cut in two is one: what the next session took over at its begin belongs to the
 * item of the session before it. `sessions` stand newest first.
 */
function goneOnWith(
  sessions: readonly SessionSummary[],
  known: ReadonlyMap<string, Known>,
): readonly Omit<SuspectItem, 'closing'>[] {
  const items = new Map<string, Omit<SuspectItem, 'closing'>>();
  const goesOnIn = new Map<string, string>();
  for (const session of sessions.toReversed()) {
    for (const item of known.get(session.id)?.items ?? []) {
      const { crossing } = item;
      const before =
        crossing.seq === session.firstSeq
          ? items.get(goesOnIn.get(`${session.fromSession ?? ''} ${crossing.limit}`) ?? '')
          : undefined;
      const id = before?.id ?? item.id;
      items.set(id, before === undefined ? { ...item, session } : continued(before, session, crossing));
      if (crossing.toMs === null) goesOnIn.set(`${session.id} ${crossing.limit}`, id);
    }
  }
  return [...items.values()].sort((a, b) => beganUtcMs(b) - beganUtcMs(a));
}

const beganUtcMs = ({ session, crossing }: Pick<SuspectItem, 'session' | 'crossing'>): number =>
  session.originUtcMs + crossing.fromMs;

function continued<T extends Pick<SuspectItem, 'session' | 'crossing'>>(
  before: T,
  session: SessionSummary,
  { toMs, peakC, place, probes }: Crossing,
): T {
  const was = before.crossing;
  const peaks = [was.peakC, peakC].filter((c) => c !== null);
  return {
    ...before,
    crossing: {
      ...was,
      // On the clock of the session that it began in.
      toMs: toMs === null ? null : toMs + session.originUtcMs - before.session.originUtcMs,
      peakC: peaks.length === 0 ? null : Math.max(...peaks),
      probes: [...new Set([...was.probes, ...probes])],
      place: place === 'on-work' ? place : was.place,
    },
  };
}
