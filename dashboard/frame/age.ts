import { effect, signal } from '@preact/signals';
import { outbox } from '../link/commands.ts';
import { programVersion } from '../link/daemon.ts';
import { reloadStep } from '../link/reload.ts';
import { tabKeep } from '../parts/browser.ts';

/** Whether this page is of the same version as the program it talks to. */

export const ownVersion = __PROGRAM_VERSION__;

/** The program's version where it is another and a reload has not helped; else null. */
export const staleFor = signal<string | null>(null);

const NAME = 'reloaded-for';

/** Reloads the page when the program has become another one; what is unsent is kept in the tab and sent afterwards. */
export function followVersion(): void {
  effect(() => {
    const version = programVersion.value;
    if (version === null) return;
    const tried = tabKeep.read(NAME);
    const step = reloadStep({
      ownVersion,
      programVersion: version,
      triedFor: tabKeep.refused ? undefined : tried,
      wouldLose: tabKeep.refused && outbox.value.waiting.length > 0,
    });
    staleFor.value = step === 'stale' ? version : null;
    if (step === 'reload' && tabKeep.write(NAME, version)) location.reload();
  });
}
