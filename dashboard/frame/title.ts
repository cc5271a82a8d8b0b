import { alarmWords } from '../../shared/words/alarms.ts';
import { linkWords, pageWords } from '../../shared/words/page.ts';
import { lead } from '../iron/irons.ts';
import { shownStanding, standingText, workedStage } from '../iron/sentence.tsx';
import { link, live } from '../link/daemon.ts';

/**
 * The window's title: simulated or not, then the most urgent thing, then the name. It holds no number: a browser slows a
 * hidden page's clock down, and an old number must never stand as a live one.
 */
export function titleText(): string {
  const simulated = live.value?.situation.simulated === true ? pageWords.simulated : '';
  return [simulated, urgent(), pageWords.name].filter((part) => part !== '').join(' · ');
}

function urgent(): string {
  if (link.value === 'lost') return linkWords.lostName;
  const alarm = live.value?.alarms.find((one) => one.state !== 'acknowledged');
  if (alarm !== undefined) return `! ${alarmWords[alarm.kind].title}`;
  const view = lead.value;
  return view === null ? '' : standingText(shownStanding(view.plates[0]), workedStage(view.iron));
}
