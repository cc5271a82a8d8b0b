import { commandWords } from '../../shared/words/commands.ts';
import { Refusal } from '../refusal.ts';
import type { Settings } from '../settings/settings.ts';
import type { IronWatch } from './iron-watch.ts';

/** An iron that goes would take with it what nobody has seen yet. */
export function refuseUnseen(watches: readonly IronWatch[], next: Settings): void {
  const gone = watches.filter((w) => !next.irons.some((i) => i.id === w.iron.id));
  const unseen = gone.find((w) =>
    Object.values(w.state.alarms).some((a) => a.state !== 'normal' && a.state !== 'acknowledged'),
  );
  if (unseen !== undefined) throw new Refusal('conflict', commandWords.unseen(unseen.iron.name), 'probes');
}
