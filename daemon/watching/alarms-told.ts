import { alarmId } from '../../shared/alarm/record.ts';
import type { AlarmLive } from '../../shared/messages/live.ts';

/** An alarm that stays the same one is told anew at most this often, ms: a plate that rises does so with every reading. */
const AGAIN_MS = 1000;

/** Alarms as they were told last: what of one changes while it stands is told too, though that is no change of its state. */
export class AlarmsTold {
  readonly #told = new Map<string, { readonly alarm: AlarmLive; readonly atMs: number }>();

  tell(alarm: AlarmLive, atMs: number): void {
    const key = alarmId(alarm.iron, alarm);
    if (alarm.state === 'normal') this.#told.delete(key);
    else this.#told.set(key, { alarm, atMs });
  }

  /** Whether an alarm is shown wrongly by whoever heard of it last. */
  isStale(now: AlarmLive, nowMs: number): boolean {
    const told = this.#told.get(alarmId(now.iron, now));
    if (told === undefined) return false;
    const { alarm, atMs } = told;
    if (now.priority !== alarm.priority) return true;
    return nowMs - atMs >= AGAIN_MS && (now.peakC !== alarm.peakC || now.detail !== alarm.detail);
  }
}
