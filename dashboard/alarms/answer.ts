import type { AlarmLive } from '../../shared/messages/live.ts';
import { alarmWords } from '../../shared/words/alarms.ts';
import { commandWords } from '../../shared/words/page.ts';
import { ask } from '../link/commands.ts';
import { situation } from '../link/daemon.ts';

/** How the user answers an alarm. */

const SILENCE_S = 60;

export const ironName = (ironId: string): string =>
  situation.value?.irons.find((iron) => iron.id === ironId)?.name ?? ironId;

export const canAcknowledge = (alarm: AlarmLive): boolean => alarm.state !== 'acknowledged';

export const canSilence = (alarm: AlarmLive): boolean =>
  alarm.state === 'unacknowledged' && alarm.silencedUntil === null;

export function acknowledge({ iron, kind, probe, since }: AlarmLive): void {
  const words = commandWords.acknowledge(alarmWords[kind].title, ironName(iron));
  ask({ what: 'acknowledge', iron, kind, probe, since }, words);
}

export function silence({ iron, kind, probe, since }: AlarmLive): void {
  const words = commandWords.silence(alarmWords[kind].title, ironName(iron));
  ask({ what: 'silence', iron, kind, probe, since, forS: SILENCE_S }, words);
}
