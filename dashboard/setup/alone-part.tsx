import type { UnattendedAfter } from '../../shared/watch/attended.ts';
import { aloneWords, fieldWords, setupWords } from '../../shared/words/setup.ts';
import { viewOnly } from '../link/daemon.ts';
import { Note } from '../parts/note.tsx';
import { changeUnattended } from './changing.ts';
import { unattendedAfter } from './daemon-settings.ts';
import { KeptField } from './fields/kept-field.tsx';
import { figureTyped, readFigure } from './fields/number.ts';
import { SaidLine } from './said-line.tsx';

/** After how long a hot iron that is left alone is told of, and what that can't do. */
export function AlonePart() {
  const after = unattendedAfter.value;
  if (after === null) return null;
  return (
    <section class="card" aria-label={setupWords.alone} data-testid="alone">
      <p>{aloneWords.means}</p>
      <Note hatch="act-soon">
        <strong>{aloneWords.cannot}</strong>
      </Note>
      <Minutes after={after} field="reminderMin" />
      <Minutes after={after} field="alarmMin" />
      <SaidLine subject="unattended" />
    </section>
  );
}

/** As the schema has it. */
const LEAST_MIN = 1;
const MOST_MIN = 120;

const minutesOf = (text: string): number | null => readFigure(text, aloneWords.sign).value;
const said = (minutes: number): string => aloneWords.minutes(figureTyped(minutes).text);

/** What is wrong with a time; empty where nothing is. */
function minutesCheck(text: string, field: keyof UnattendedAfter, after: UnattendedAfter): string {
  const minutes = minutesOf(text);
  if (minutes === null || minutes < LEAST_MIN || minutes > MOST_MIN)
    return fieldWords.fromTo(String(LEAST_MIN), said(MOST_MIN));
  if (field === 'reminderMin')
    return minutes < after.alarmMin ? '' : aloneWords.beforeAlarm(said(after.alarmMin));
  return minutes > after.reminderMin ? '' : aloneWords.afterReminder(said(after.reminderMin));
}

interface MinutesProps {
  readonly after: UnattendedAfter;
  readonly field: keyof UnattendedAfter;
}

const Minutes = ({ after, field }: MinutesProps) => (
  <KeptField
    number
    id={`alone-${field}`}
    label={field === 'reminderMin' ? aloneWords.reminder : aloneWords.alarm}
    sign={aloneWords.sign}
    now={figureTyped(after[field]).text}
    check={(text) => minutesCheck(text, field, after)}
    keep={(text) => {
      const minutes = minutesOf(text) ?? after[field];
      const words = field === 'reminderMin' ? aloneWords.reminderIs : aloneWords.alarmIs;
      return changeUnattended(after, { [field]: minutes }, words(said(minutes)));
    }}
    disabled={viewOnly.value}
  />
);
