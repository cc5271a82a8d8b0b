import { alarmWords } from '../../shared/words/alarms.ts';
import { watchedWords } from '../../shared/words/checks.ts';
import { linkWords, pageWords } from '../../shared/words/page.ts';
import { titleWords } from '../../shared/words/sound.ts';
import { lead } from '../iron/irons.ts';
import { shownStanding, standingText, workedStage } from '../iron/sentence.tsx';
import { alarms, link, situation } from '../link/daemon.ts';
import { isHidden } from '../parts/now.ts';

/**
 * The window's title: simulated or not, then the most urgent thing, then the name. It holds no number: a browser slows a
 * hidden page's clock down, and an old number must never stand as a live one. Out of sight, it begins with how urgent an
 * alarm is: of a narrow tab no more can be read.
 */
export function titleText(): string {
  const simulated = situation.value?.simulated === true ? pageWords.simulated : '';
  return [simulated, urgent(), pageWords.name].filter((part) => part !== '').join(' · ');
}

function urgent(): string {
  if (link.value === 'lost') return linkWords.lostName;
  const alarm = unseenAlarm();
  if (alarm !== undefined)
    return `${isHidden.value ? titleWords[alarm.priority] : '!'} ${alarmWords[alarm.kind].title}`;
  const view = lead.value;
  if (view === null) return '';
  const [plate] = view.plates;
  // An age would be a number, and old soon.
  if (plate.view.kind === 'apart') return watchedWords[view.iron.watched];
  return standingText(shownStanding(plate), workedStage(view.iron));
}

const unseenAlarm = () => alarms.value.find((one) => one.state !== 'acknowledged');

/** The window's icon: another one, by its shape too, while an alarm stands that nobody has seen, or the daemon is lost. */
export const iconAddress = (): string =>
  link.value === 'lost' || unseenAlarm() !== undefined ? '/icon-alarm.svg' : '/icon.svg';
