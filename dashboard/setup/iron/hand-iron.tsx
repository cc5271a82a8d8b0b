import { useRef } from 'preact/hooks';
import type { Iron } from '../../../shared/iron/iron.ts';
import { handIronWords } from '../../../shared/words/checks.ts';
import { viewOnly } from '../../link/daemon.ts';
import { randomId } from '../../link/ids.ts';
import { useFocusKept } from '../../parts/focus-kept.ts';
import { Target } from '../../parts/target.tsx';
import { addIron, removeIron } from '../changing.ts';
import { irons, schedules } from '../daemon-settings.ts';
import { SaidLine } from '../said-line.tsx';

const SUBJECT = 'hand iron';

/** Adds an iron that no probe is for, and says what came of that, or of taking one away. */
export function HandIron() {
  const sentence = useRef<HTMLParagraphElement>(null);
  useFocusKept((irons.value ?? []).map(({ id }) => id).join(' '), sentence);
  return viewOnly.value ? null : (
    <div>
      <Target onPress={add}>{handIronWords.add}</Target>
      <p class="quiet">{handIronWords.addMeans}</p>
      <SaidLine subject={SUBJECT} sentence={sentence} />
    </div>
  );
}

function add(): void {
  const scheduleId = schedules.peek()?.[0]?.id;
  if (scheduleId === undefined) return;
  const name = handIronWords.newName;
  const id = `iron-${randomId().slice(0, 12)}`;
  void addIron(SUBJECT, id, { name, probes: [], scheduleId }, handIronWords.added(name));
}

/** Takes such an iron away; its card goes with it, so the way back stands beneath the cards. */
export const TakeAway = ({ iron }: { readonly iron: Iron }) =>
  viewOnly.value ? null : (
    <Target onPress={() => void removeIron(SUBJECT, iron, handIronWords.removed(iron.name))}>
      {handIronWords.remove}
    </Target>
  );
