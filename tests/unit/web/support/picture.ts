import type { LiveChange } from '../../../../daemon/web/desk.ts';
import type { AlarmLive, Live, ProbeLive, Situation } from '../../../../shared/messages/live.ts';
import { situation } from './samples.ts';

const alarmId = (alarm: AlarmLive): string => `${alarm.iron} ${alarm.kind} ${alarm.probe ?? ''}`;

/** What one has heard of, folded: the same for the desk itself and for a client of its stream. */
export class Picture {
  probes = new Map<string, ProbeLive>();
  alarms = new Map<string, AlarmLive>();
  situation: Situation = situation();

  static of(live: Pick<Live, 'probes' | 'alarms' | 'situation'>): Picture {
    const picture = new Picture();
    for (const one of live.probes) picture.probes.set(one.id, one);
    for (const alarm of live.alarms) picture.alarms.set(alarmId(alarm), alarm);
    picture.situation = live.situation;
    return picture;
  }

  take(change: LiveChange): void {
    switch (change.kind) {
      case 'readings':
        for (const one of change.probes) this.probes.set(one.id, one);
        return;
      case 'alarm':
        if (change.alarm.state === 'normal') this.alarms.delete(alarmId(change.alarm));
        else this.alarms.set(alarmId(change.alarm), change.alarm);
        return;
      case 'situation': {
        this.situation = change.situation;
        const known = new Set(change.situation.irons.flatMap((one) => one.probes));
        for (const id of this.probes.keys()) if (!known.has(id)) this.probes.delete(id);
        return;
      }
      case 'mark':
    }
  }

  /** In one order, for comparing. */
  get state(): unknown {
    return { probes: sorted(this.probes), alarms: sorted(this.alarms), situation: this.situation };
  }
}

const sorted = <T>(map: ReadonlyMap<string, T>): T[] =>
  [...map.keys()].sort().flatMap((key) => map.get(key) ?? []);
