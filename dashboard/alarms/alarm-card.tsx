import type { AlarmLive } from '../../shared/messages/live.ts';
import { formatDuration } from '../../shared/units/time.ts';
import { alarmWords } from '../../shared/words/alarms.ts';
import { alarmPanelWords } from '../../shared/words/standing.ts';
import { stream, viewOnly } from '../link/daemon.ts';
import { daemonUtcMs } from '../link/stream.ts';
import { dayAndTime } from '../parts/day.ts';
import { Hatch, type HatchName } from '../parts/hatch.tsx';
import { nowMs } from '../parts/now.ts';
import { Opening } from '../parts/opening.tsx';
import { Target } from '../parts/target.tsx';
import { timeOfDay } from '../parts/times.ts';
import { difference, temperature } from '../parts/unit.ts';
import { detailText, isOvertaken, stateText } from './alarm-text.ts';
import { acknowledge, canAcknowledge, canSilence, ironName, silence } from './answer.ts';

export const hatchOf: Readonly<Record<AlarmLive['priority'], HatchName>> = {
  3: 'act-now',
  2: 'act-soon',
  1: 'know',
};

interface AlarmCardProps {
  readonly alarm: AlarmLive;
  /** Whether it takes less room: smaller, and what happens otherwise only one tap away. */
  readonly brief: boolean;
  /** All that are there: the first says how many, since the others may be out of sight. */
  readonly all: readonly AlarmLive[];
}

/** One alarm that stands: what it is, why, what happens otherwise, what to do, since when, whether it was seen. */
export function AlarmCard({ alarm, brief, all }: AlarmCardProps) {
  const words = alarmWords[alarm.kind];
  const overtaken = isOvertaken(alarm, all);
  const classes = [
    'alarm',
    `alarm--${hatchOf[alarm.priority]}`,
    alarm.state === 'acknowledged' ? 'alarm--seen' : '',
    brief ? 'alarm--brief' : '',
  ];
  return (
    <li class={classes.join(' ')} data-testid="alarm" data-kind={alarm.kind} data-state={alarm.state}>
      <span class="alarm-edge">
        <Hatch name={hatchOf[alarm.priority]} />
      </span>
      <div class="alarm-text">
        <h2 class="alarm-title">
          {words.title}
          <small>
            {alarmPanelWords.priority[alarm.priority]} · {ironName(alarm.iron)}
            {brief || all.length < 2 ? '' : ` · ${alarmPanelWords.count(all.length)}`}
          </small>
        </h2>
        <p class="alarm-action">{overtaken ? alarmPanelWords.overtaken : words.action}</p>
      </div>
      {viewOnly.value || !canAcknowledge(alarm) ? null : <Answers alarm={alarm} title={words.title} />}
      <div class="alarm-more">
        <p>
          {overtaken ? null : words.cause} {detailText(alarm, { difference, moment: dayAndTime })}{' '}
          {peakText(alarm)}{' '}
          {brief || overtaken ? null : (
            <>
              <b>{alarmPanelWords.otherwise}</b> {words.consequence}
            </>
          )}
        </p>
        <p class="alarm-state">
          <strong>{stateText(alarm.state, silencedUntil(alarm))}</strong> <Since since={alarm.since} />
        </p>
        {brief && !overtaken ? (
          <Opening summary={alarmPanelWords.whatOtherwise}>{() => <p>{words.consequence}</p>}</Opening>
        ) : null}
      </div>
    </li>
  );
}

const peakText = ({ peakC }: AlarmLive): string =>
  peakC === null ? '' : alarmPanelWords.peak(temperature(peakC));

const silencedUntil = ({ silencedUntil }: AlarmLive): string | null =>
  silencedUntil === null ? null : timeOfDay(Date.parse(silencedUntil));

/** How long ago a moment of the daemon's clock was, to the second; empty while that clock isn't known. */
function agoText(utcMs: number): string {
  const now = daemonUtcMs(stream.value, nowMs.value);
  return now === null ? '' : formatDuration(now - utcMs);
}

const Since = ({ since }: { readonly since: string }) => {
  const utcMs = Date.parse(since);
  return <span>{alarmPanelWords.since(timeOfDay(utcMs), agoText(utcMs))}</span>;
};

const Answers = ({ alarm, title }: { readonly alarm: AlarmLive; readonly title: string }) => (
  <div class="alarm-answers">
    <Target main label={`${alarmPanelWords.acknowledge}: ${title}`} onPress={() => acknowledge(alarm)}>
      {alarmPanelWords.acknowledge}
    </Target>
    {canSilence(alarm) ? (
      <Target label={`${alarmPanelWords.silence}: ${title}`} onPress={() => silence(alarm)}>
        {alarmPanelWords.silence}
      </Target>
    ) : null}
  </div>
);
