import type { IronLive, Live, ProbeLive } from '../../shared/messages/live.ts';
import { DAEMON_LOST_AFTER_MS } from '../../shared/messages/stream.ts';
import type { Seat } from '../../shared/thermometer/place.ts';
import type { Fault } from '../../shared/thermometer/reading.ts';
import type { StreamState } from '../link/stream.ts';

/** What may be shown of a plate. A number only where it is live; everything else names what is missing. */
export type PlateView =
  | { readonly kind: 'number'; readonly plateC: number }
  /** `lastMs`: how long ago the last valid reading was; null where there never was one. */
  | { readonly kind: 'fault'; readonly fault: Fault; readonly lastMs: number | null }
  /** The probe is not on the plate for good: `readC` is what it reads, which counts for no plate that is shown live. */
  | { readonly kind: 'apart'; readonly seat: Exclude<Seat, 'fitted'>; readonly readC: number | null }
  | { readonly kind: 'lost' };

/**
 * What to show of a probe.
 * @param elapsedMs how long ago its state was received, by the page's own clock
 * @param isLive whether the daemon is heard
 */
export function plateView(probe: ProbeLive | null, elapsedMs: number, isLive: boolean): PlateView {
  if (!isLive) return { kind: 'lost' };
  if (probe === null) return { kind: 'fault', fault: 'silent', lastMs: null };
  if (probe.seat !== 'fitted') return { kind: 'apart', seat: probe.seat, readC: probe.readC };
  const lastMs = probe.ageMs === null ? null : probe.ageMs + Math.max(0, elapsedMs);
  if (probe.quality !== 'ok') return { kind: 'fault', fault: probe.quality, lastMs };
  if (probe.plateC === null || lastMs === null || lastMs > DAEMON_LOST_AFTER_MS)
    return { kind: 'fault', fault: 'silent', lastMs };
  return { kind: 'number', plateC: probe.plateC };
}

/** One probe of an iron as the page shows it. */
export interface Plate {
  readonly id: string;
  readonly probe: ProbeLive | null;
  readonly view: PlateView;
}

/** One iron with its plates, the hottest that reads first. */
export interface IronView {
  readonly iron: IronLive;
  readonly plates: readonly [Plate, ...Plate[]];
  /** True until each of its probes that reads has been measured under the limit of touch, and while none reads. */
  readonly hot: boolean;
  /** True where it has lost its reading and nobody has acknowledged that yet. */
  readonly unseenFault: boolean;
}

export function ironViews(state: StreamState, isLive: boolean, nowMs: number): readonly IronView[] {
  const { live } = state;
  if (live === null) return [];
  return live.situation.irons.flatMap((iron) => {
    const plates = iron.probes.map((id) => plateOf(id, live, state, { isLive, nowMs }));
    const [first = byHand(iron, isLive), ...others] = plates.toSorted((a, b) => heatOf(b) - heatOf(a));
    const { kind } = first.view;
    const reads = kind === 'number' || kind === 'apart';
    return [
      {
        iron,
        plates: [first, ...others] as const,
        hot: !reads || iron.hot || plates.some((p) => p.probe?.hot === true),
        unseenFault: !reads && isUnseen(live, iron.id),
      },
    ];
  });
}

/** The views that are as they were before, as the same objects: what shows them is then left as it is. */
export const keepUnchanged = (before: readonly IronView[], views: readonly IronView[]): readonly IronView[] =>
  views.map((view) => before.find((one) => one.iron.id === view.iron.id && isSame(one, view)) ?? view);

const isSame = (a: IronView, b: IronView): boolean =>
  a.iron === b.iron &&
  a.hot === b.hot &&
  a.unseenFault === b.unseenFault &&
  a.plates.length === b.plates.length &&
  a.plates.every(
    (plate, i) => plate.probe === b.plates[i]?.probe && isSameView(plate.view, b.plates[i].view),
  );

/** A fault says for how long it has stood: its view changes with the clock. All others follow from the probe's state. */
const isSameView = (a: PlateView, b: PlateView): boolean => a.kind !== 'fault' && a.kind === b.kind;

/** In place of a probe, where an iron has none. */
const byHand = ({ id }: IronLive, isLive: boolean): Plate => ({
  id,
  probe: null,
  view: isLive ? { kind: 'apart', seat: 'loose', readC: null } : { kind: 'lost' },
});

function plateOf(
  id: string,
  live: Live,
  state: StreamState,
  at: { readonly isLive: boolean; readonly nowMs: number },
): Plate {
  const probe = live.probes.find((one) => one.id === id) ?? null;
  const elapsedMs = at.nowMs - (state.readAtMs[id] ?? at.nowMs);
  return { id, probe, view: plateView(probe, elapsedMs, at.isLive) };
}

const isUnseen = (live: Live, ironId: string): boolean =>
  !live.alarms.some((a) => a.iron === ironId && a.kind === 'no-reading' && a.state === 'acknowledged');

/** One that has lost its reading comes before those that are not read all the time. */
function heatOf({ view }: Plate): number {
  if (view.kind === 'number') return view.plateC;
  return view.kind === 'apart' ? Number.NEGATIVE_INFINITY : -Number.MAX_VALUE;
}

/** Hotter by less than this, K, is about alike. */
const ALIKE_K = 5;
/** A household thermostat swings through less than this, K: hotter by more is another heat. */
const SWING_K = 30;
/** Hotter for so long, ms, is no turn of a thermostat. */
const STEADILY_MS = 30_000;

/** The iron that is shown large, and another one that has been hotter than it without a break. */
export interface Lead {
  readonly view: IronView;
  readonly rival: { readonly id: string; readonly sinceMs: number } | null;
}

/**
 * The iron to show large: the hottest, but two whose thermostats take turns don't change places all the time. One that
 * was large and has lost its reading stays there until somebody has acknowledged that.
 * @param before what was shown so far
 */
export function leadingIron(before: Lead | null, views: readonly IronView[], atMs: number): Lead | null {
  const [first, ...rest] = views;
  if (first === undefined) return null;
  const hottest = rest.reduce(
    (best, one) => (heatOf(one.plates[0]) > heatOf(best.plates[0]) ? one : best),
    first,
  );
  const held = views.find((one) => one.iron.id === before?.view.iron.id);
  if (held === undefined) return { view: hottest, rival: null };
  const byK = heatOf(hottest.plates[0]) - heatOf(held.plates[0]);
  if (held.unseenFault || !(byK > ALIKE_K)) return { view: held, rival: null };
  if (byK > SWING_K || isOver(hottest)) return { view: hottest, rival: null };
  const { id } = hottest.iron;
  const rival = before?.rival?.id === id ? before.rival : { id, sinceMs: atMs };
  return atMs - rival.sinceMs >= STEADILY_MS ? { view: hottest, rival: null } : { view: held, rival };
}

const isOver = ({ plates: [{ probe }] }: IronView): boolean => probe?.standing.kind === 'over-limit';
