import { alarmId } from '../../shared/alarm/record.ts';
import type { AlarmLive, IronLive, Live, ProbeLive } from '../../shared/messages/live.ts';
import { DAEMON_LOST_AFTER_MS, type StreamMessage } from '../../shared/messages/stream.ts';
import type { IronMark } from '../../shared/watch/input.ts';

/** What the page knows from the stream. Times are the page's own monotonic clock, ms. */
export interface StreamState {
  /** Null until the first snapshot. */
  readonly live: Live | null;
  readonly epoch: string | null;
  /** Of the last message applied: what a resumed stream goes on after. */
  readonly seq: number;
  /** When anything at all was last heard. */
  readonly heardAtMs: number | null;
  /** When each probe's latest was received: its age counts on from there. */
  readonly readAtMs: Readonly<Record<string, number>>;
  /** One moment of the daemon's wall clock, and when it was heard of. */
  readonly anchor: { readonly utcMs: number; readonly atMs: number } | null;
  /** True where the messages don't follow on what is known, so that a snapshot has to be asked for. */
  readonly needsSnapshot: boolean;
}

export const emptyStream: StreamState = {
  live: null,
  epoch: null,
  seq: 0,
  heardAtMs: null,
  readAtMs: {},
  anchor: null,
  needsSnapshot: false,
};

/** Applies one message that was received at `atMs`. One that is known already changes nothing. */
export function applyMessage(state: StreamState, message: StreamMessage, atMs: number): StreamState {
  const heard = { ...state, heardAtMs: atMs };
  if (message.kind === 'snapshot') return takeSnapshot(message, atMs);
  if (state.live === null || message.epoch !== state.epoch) return { ...heard, needsSnapshot: true };
  if (message.seq <= state.seq) return heard;
  return applyChange({ ...heard, seq: message.seq }, state.live, message, atMs);
}

function takeSnapshot(message: Extract<StreamMessage, { kind: 'snapshot' }>, atMs: number): StreamState {
  const { live } = message;
  return {
    live: { ...live, alarms: live.alarms.toSorted(byUrgency) },
    epoch: message.epoch,
    seq: message.seq,
    heardAtMs: atMs,
    readAtMs: Object.fromEntries(live.probes.map((probe) => [probe.id, atMs])),
    anchor: { utcMs: Date.parse(live.at), atMs },
    needsSnapshot: false,
  };
}

function applyChange(
  state: StreamState,
  live: Live,
  message: Exclude<StreamMessage, { kind: 'snapshot' }>,
  atMs: number,
): StreamState {
  switch (message.kind) {
    case 'beat':
      return state;
    case 'readings': {
      const received = Object.fromEntries(message.probes.map((probe) => [probe.id, atMs]));
      return {
        ...state,
        live: { ...live, probes: withProbes(live.probes, message.probes) },
        readAtMs: { ...state.readAtMs, ...received },
      };
    }
    case 'alarm':
      return {
        ...state,
        live: { ...live, alarms: withAlarm(live.alarms, message.alarm) },
        anchor: laterAnchor(state.anchor, Date.parse(message.alarm.since), atMs),
      };
    case 'mark':
      return { ...state, live: withMark(live, message.iron, message.mark) };
    case 'situation': {
      const { situation } = message;
      const known = new Set(situation.irons.flatMap((iron) => iron.probes));
      return {
        ...state,
        live: { ...live, situation, probes: live.probes.filter((probe) => known.has(probe.id)) },
      };
    }
  }
}

const byId = (a: ProbeLive, b: ProbeLive): number => (a.id < b.id ? -1 : Number(a.id > b.id));

/** The newest of each probe, always in the same order, whichever way they came. */
function withProbes(known: readonly ProbeLive[], newer: readonly ProbeLive[]): readonly ProbeLive[] {
  const ids = new Set(newer.map((probe) => probe.id));
  return [...known.filter((probe) => !ids.has(probe.id)), ...newer].sort(byId);
}

function withAlarm(known: readonly AlarmLive[], alarm: AlarmLive): readonly AlarmLive[] {
  const id = alarmId(alarm.iron, alarm);
  const others = known.filter((one) => alarmId(one.iron, one) !== id);
  return alarm.state === 'normal' ? others : [...others, alarm].sort(byUrgency);
}

const order = ['unacknowledged', 'returned-unacknowledged', 'acknowledged', 'normal'] as const;

/** Those that nobody has seen, those that are gone, the seen; then by priority, then the oldest; the name decides between equals. */
function byUrgency(a: AlarmLive, b: AlarmLive): number {
  return (
    order.indexOf(a.state) - order.indexOf(b.state) ||
    b.priority - a.priority ||
    Date.parse(a.since) - Date.parse(b.since) ||
    alarmId(a.iron, a).localeCompare(alarmId(b.iron, b))
  );
}

function withMark(live: Live, ironId: string, mark: IronMark): Live {
  // What was typed is told with the situation, with what it means.
  if (mark.kind === 'note' || mark.kind === 'typed') return live;
  const marked = (iron: IronLive): IronLive => {
    if (mark.kind === 'stage') return { ...iron, stageId: mark.stageId };
    if (mark.kind === 'place') return { ...iron, place: mark.place };
    return { ...iron, dial: mark.mark === null ? null : { mark: mark.mark, doubted: false } };
  };
  const irons = live.situation.irons.map((iron) => (iron.id === ironId ? marked(iron) : iron));
  return { ...live, situation: { ...live.situation, irons } };
}

type Anchor = NonNullable<StreamState['anchor']>;

/** A tablet that slept counts too little time: whatever the daemon has just said happened can't lie ahead of now. */
function laterAnchor(anchor: Anchor | null, utcMs: number, atMs: number): Anchor | null {
  if (anchor !== null && utcMs <= anchor.utcMs + (atMs - anchor.atMs)) return anchor;
  return { utcMs, atMs };
}

/** The daemon's wall clock at `nowMs`, ms since 1970: never the tablet's own, which may be wrong by hours. */
export const daemonUtcMs = (state: StreamState, nowMs: number): number | null =>
  state.anchor === null ? null : state.anchor.utcMs + Math.max(0, nowMs - state.anchor.atMs);

export type LinkView = 'connecting' | 'live' | 'lost';

/**
 * How the link to the daemon stands. A page that nothing was heard on yet is `connecting`, and `lost` after the same
 * time as one that falls silent.
 * @param open whether the socket is open; a closed one is lost at once
 * @param begunAtMs when the page began to look for the daemon
 */
export function linkView(state: StreamState, open: boolean, begunAtMs: number, nowMs: number): LinkView {
  if (state.heardAtMs === null) return nowMs - begunAtMs > DAEMON_LOST_AFTER_MS ? 'lost' : 'connecting';
  const follows = open && state.live !== null && !state.needsSnapshot;
  return follows && nowMs - state.heardAtMs <= DAEMON_LOST_AFTER_MS ? 'live' : 'lost';
}
