import { alarmId } from '../../shared/alarm/record.ts';
import type { AlarmLive } from '../../shared/messages/live.ts';
import { alarmWords } from '../../shared/words/alarms.ts';
import { alarmPanelWords } from '../../shared/words/standing.ts';
import { viewOnly } from '../link/daemon.ts';
import { dayAndTime } from '../parts/day.ts';
import { Hatch } from '../parts/hatch.tsx';
import { Target } from '../parts/target.tsx';
import { timeOfDay } from '../parts/times.ts';
import { difference, temperature } from '../parts/unit.ts';
import { hatchOf } from './alarm-card.tsx';
import { detailText } from './alarm-text.ts';
import { acknowledge, ironName } from './answer.ts';

/** Alarms that are gone before anybody has seen them: a line each, with what is left to do, and one press for all. */
export function GoneAlarms({ gone }: { readonly gone: readonly AlarmLive[] }) {
  const answer = gone.length === 1 ? alarmPanelWords.acknowledge : alarmPanelWords.acknowledgeAll;
  const titles = gone.map(({ kind }) => alarmWords[kind].title).join('; ');
  return (
    <li class="alarm alarm--gone" data-testid="alarms-gone">
      <span class="alarm-edge">
        <Hatch name={hatchOf[mostUrgent(gone)]} />
      </span>
      <div class="alarm-text">
        <h2 class="alarm-title">{alarmPanelWords.goneTitle}</h2>
        <ul class="alarms-gone">
          {gone.map((alarm) => (
            <GoneLine key={alarmId(alarm.iron, alarm)} alarm={alarm} />
          ))}
        </ul>
      </div>
      {viewOnly.value ? null : (
        <div class="alarm-answers">
          <Target main label={`${answer}: ${titles}`} onPress={() => gone.forEach(acknowledge)}>
            {answer}
          </Target>
        </div>
      )}
    </li>
  );
}

const mostUrgent = (gone: readonly AlarmLive[]): AlarmLive['priority'] =>
  gone.reduce<AlarmLive['priority']>((most, { priority }) => (priority > most ? priority : most), 1);

function GoneLine({ alarm }: { readonly alarm: AlarmLive }) {
  const { title, afterwards } = alarmWords[alarm.kind];
  return (
    <li data-testid="alarm" data-kind={alarm.kind} data-state={alarm.state}>
      <strong>{title}</strong> · {ironName(alarm.iron)} ·{' '}
      {alarmPanelWords.raised(timeOfDay(Date.parse(alarm.since)))}{' '}
      {detailText(alarm, { difference, moment: dayAndTime })}{' '}
      {alarm.peakC === null ? null : alarmPanelWords.peakWas(temperature(alarm.peakC))}{' '}
      {afterwards === undefined ? null : <b>{afterwards}</b>}
    </li>
  );
}
