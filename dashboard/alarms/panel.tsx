import { computed } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { alarmId } from '../../shared/alarm/record.ts';
import type { AlarmLive } from '../../shared/messages/live.ts';
import { linkWords } from '../../shared/words/page.ts';
import { alarmPanelWords } from '../../shared/words/standing.ts';
import { FireQuestion, fireCoats, fireText } from '../coats/fire-question.tsx';
import { LinkLine } from '../frame/link-line.tsx';
import { PlatesNow } from '../frame/nav-now.tsx';
import { SimulatedBand } from '../frame/simulated-band.tsx';
import { isRaised, RaisedPlate } from '../iron/raised.tsx';
import { outbox } from '../link/commands.ts';
import { alarms, isLive, link, stream, viewOnly } from '../link/daemon.ts';
import { useFocusKept } from '../parts/focus-kept.ts';
import { Hatch } from '../parts/hatch.tsx';
import { useSettling } from '../parts/settled.ts';
import { NextNote } from '../piece/next-note.tsx';
import { AlarmCard } from './alarm-card.tsx';
import { announcement, isGone } from './alarm-text.ts';
import { canAcknowledge, ironName } from './answer.ts';
import { GoneAlarms } from './gone-alarms.tsx';
import './alarms.css';
import './over.css';

/**
 * What is wrong, over everything: the daemon lost, the alarms with the most urgent first, and what is asked: beneath
 * the first alarm that nobody has seen yet (or beside it, where there is room), and before those that were seen.
 */
export function Alarms() {
  const standing = alarms.value;
  const lost = link.value === 'lost';
  const isBeside = standing.some(canAcknowledge);
  const isAsked = fireCoats.value.length > 0;
  const isCalm = !isBeside && !lost && !isAsked;
  const takesFocus = !viewOnly.value && (isBeside || isAsked);
  const isSettling = useSettling(whatStands.value);
  const panel = useRoomForFocus();
  // To no other button: a key that is held would answer one alarm after the other.
  useFocusKept(whatStands.value, panel);
  const gone = standing.filter(isGone);
  const unseen = standing.filter(({ state }) => state === 'unacknowledged');
  const seen = standing.filter(({ state }) => state === 'acknowledged');
  const cards = (some: readonly AlarmLive[]) =>
    some.map((alarm) => (
      <AlarmCard
        key={alarmId(alarm.iron, alarm)}
        alarm={alarm}
        brief={alarm !== standing[0]}
        all={standing}
      />
    ));
  return (
    <div class="over-all" ref={panel} tabIndex={-1} data-testid="over-all">
      <SimulatedBand />
      <PlatesNow />
      <NextNote />
      <Announcer />
      <div
        class={[
          'over-parts',
          isBeside ? 'over-parts--asked-beside' : '',
          isCalm ? 'over-parts--calm' : '',
          isSettling ? 'over-parts--settling' : '',
        ].join(' ')}
        {...(takesFocus || (standing.length === 0 && !isAsked) ? {} : scrolledByKeys)}
      >
        {isRaised.value ? <RaisedPlate /> : null}
        <div class="alarms">
          {lost ? <DaemonLost /> : null}
          {isBeside ? null : <FireQuestion />}
          {standing.length === 0 ? null : (
            <section class="alarms-standing" aria-label={alarmPanelWords.title}>
              {lost ? <p class="alarms-old">{linkWords.lastHeard}</p> : null}
              <ul class="alarms-list">
                {cards(unseen)}
                {gone.length === 0 ? null : <GoneAlarms gone={gone} />}
                {cards(seen)}
              </ul>
            </section>
          )}
        </div>
        {isBeside ? <FireQuestion /> : null}
      </div>
    </div>
  );
}

/** What can be answered, in its order: when it changes, something else comes to stand under a finger. */
const whatStands = computed(() =>
  [
    link.value === 'lost' ? 'lost' : '',
    fireCoats.value[0]?.id ?? '',
    ...alarms.value.map((alarm) => `${alarmId(alarm.iron, alarm)} ${alarm.since} ${canAcknowledge(alarm)}`),
  ].join('|'),
);

/** Where nothing in it takes the focus, the panel does, so that it can be scrolled by keys. */
const scrolledByKeys = { tabIndex: 0, role: 'region', 'aria-label': alarmPanelWords.panel } as const;

/** How much was pressed and could not be sent: where it stands is below, out of sight maybe. */
const unsent = computed(() => outbox.value.waiting.filter(({ held }) => held).length);

const DaemonLost = () => (
  <section class="alarm alarm--lost" data-testid="daemon-lost" aria-label={linkWords.lostName}>
    <span class="alarm-edge">
      <Hatch name="missing" />
    </span>
    <div class="alarm-text">
      <LinkLine />
      {stream.value.live === null ? null : (
        <>
          <p class="alarm-action">{linkWords.lostAction}</p>
          <p>{linkWords.lostMeans}</p>
          {unsent.value === 0 ? null : <p data-testid="unsent-count">{linkWords.unsent(unsent.value)}</p>}
        </>
      )}
    </div>
  </section>
);

/** Tells a screen reader of each alarm and question as it is raised; readings and running times are not announced. */
const Announcer = () => (
  <div class="unseen" role="alert" aria-atomic="false" aria-relevant="additions">
    {isLive.value ? null : link.value === 'lost' ? (
      <p>{`${linkWords.lostName}. ${linkWords.lostMeans}`}</p>
    ) : null}
    {alarms.value
      .filter((alarm) => alarm.state === 'unacknowledged')
      .map((alarm) => (
        <p key={`${alarmId(alarm.iron, alarm)} ${alarm.since}`}>
          {announcement(alarm, ironName(alarm.iron))}
        </p>
      ))}
    {fireCoats.value.map((coat) => (
      <p key={`fire ${coat.id}`}>{fireText(coat)}</p>
    ))}
  </div>
);

/** The panel stays in sight while the page scrolls; what gets the focus must not end up beneath it. */
function useRoomForFocus() {
  const panel = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = panel.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(() => {
      document.documentElement.style.setProperty('--covered', `${element.offsetHeight}px`);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return panel;
}
