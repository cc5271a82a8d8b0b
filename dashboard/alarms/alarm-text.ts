import { readDriftDetail } from '../../shared/iron/dial/drift.ts';
import type { AlarmLive } from '../../shared/messages/live.ts';
import { faults } from '../../shared/thermometer/reading.ts';
import { readSuspicionDetail } from '../../shared/thermometer/suspect-probe.ts';
import { TYPED } from '../../shared/watch/seen.ts';
import { alarmWords } from '../../shared/words/alarms.ts';
import { typedWords } from '../../shared/words/checks.ts';
import { driftWords } from '../../shared/words/dial.ts';
import { faultWords, suspicionText } from '../../shared/words/faults.ts';
import { alarmPanelWords } from '../../shared/words/standing.ts';

/**
 * In plain words, how an alarm that stands does.
 * @param silencedUntil when its silence ends, as a time of day; null where it isn't silenced
 */
export function stateText(state: AlarmLive['state'], silencedUntil: string | null): string {
  if (state === 'acknowledged') return alarmPanelWords.seen;
  return silencedUntil === null
    ? alarmPanelWords.standing
    : `${alarmPanelWords.standing}, ${alarmPanelWords.silencedUntil(silencedUntil)}`;
}

/** Whether a plate that was heading for its limit has passed it: that alarm says then what is to be done. */
export const isOvertaken = (alarm: AlarmLive, all: readonly AlarmLive[]): boolean =>
  alarm.kind === 'heading-for-limit' &&
  all.some(
    ({ kind, iron, probe, state }) =>
      kind === 'over-limit' && iron === alarm.iron && probe === alarm.probe && !isGone({ state }),
  );

/** No longer so, and nobody has seen it yet. */
export const isGone = ({ state }: Pick<AlarmLive, 'state'>): boolean => state === 'returned-unacknowledged';

/** What is announced of an alarm: what it is, where, and what to do. */
export function announcement(alarm: AlarmLive, ironName: string): string {
  const { title, action } = alarmWords[alarm.kind];
  return `${title}: ${ironName}. ${action}`;
}

/** How a difference of temperatures and a moment are worded where they are shown. */
export interface DetailWording {
  readonly difference: (k: number) => string;
  readonly moment: (utc: string) => string;
}

/** Why it stands, as far as the daemon said: a fault by its name, a drift in words, anything else as it came. */
export function detailText(
  { kind, detail }: Pick<AlarmLive, 'kind' | 'detail'>,
  wording: DetailWording,
): string {
  const drift = kind === 'drift' ? readDriftDetail(detail) : null;
  if (drift !== null) {
    const words = drift.byK > 0 ? driftWords.hotter : driftWords.colder;
    return words(wording.difference(Math.abs(drift.byK)), wording.moment(drift.sinceAt));
  }
  const suspicion = kind === 'suspect-probe' ? readSuspicionDetail(detail) : null;
  if (suspicion !== null) return suspicionText(suspicion);
  if (detail === TYPED) return typedWords.alarm;
  const fault = faults.find((one) => one === detail);
  return fault === undefined ? detail : `${faultWords[fault].name}.`;
}
