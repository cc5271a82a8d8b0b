import type { IronLive } from '../../../shared/messages/live.ts';
import { formatDuration } from '../../../shared/units/time.ts';
import { checkWords, seatWords, typedWords } from '../../../shared/words/checks.ts';

/** An age as it is said: to the second while it is young, to the minute afterwards, so that it stands still. */
export const ageText = (ageMs: number): string =>
  ageMs < 60_000 ? formatDuration(ageMs) : formatDuration(ageMs).replace(/ \d\d s$/, '');

/** What stands behind an iron that is not read all the time, with its age: "checked 4 min ago". */
export function momentText({ watched, check, typed }: IronLive): string {
  switch (watched) {
    case 'monitored':
      return '';
    case 'checked':
      if (check?.last == null) return check?.pad === 'settling' ? checkWords.settlingShort : checkWords.none;
      return check.pad === 'settled' ? checkWords.now : checkWords.ago(ageText(check.last.ageMs));
    case 'typed':
      return typed === null ? typedWords.none : typedWords.ago(ageText(typed.ageMs));
    case 'not-told':
      return seatWords['not-told'];
  }
}

/** The temperature that it is about; null where there is none. */
export function momentC({ watched, check, typed }: IronLive): number | null {
  if (watched === 'checked') return check?.last?.plateC ?? null;
  return watched === 'typed' ? (typed?.plateC ?? null) : null;
}
