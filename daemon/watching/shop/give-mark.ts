import type { Outcome } from '../../../shared/messages/command.ts';
import type { Mark } from '../../../shared/watch/input.ts';
import { Refusal } from '../../refusal.ts';
import type { IronWatch } from '../iron-watch.ts';

/**
 * Gives one mark to a watch, and answers once it is kept. A watch that records nothing begins to: what was marked is
 * never without a session to stand in. Rejects with `Refusal` where the watch refuses it.
 */
export async function giveMark(
  watch: IronWatch,
  mark: Mark,
  { commandId, nowMs }: { readonly commandId: string; readonly nowMs: number },
): Promise<Outcome> {
  if (watch.session === null) watch.start('by-hand', nowMs, null);
  for (const { finding } of watch.take({ kind: 'mark', commandId, mark }, nowMs)) {
    if (finding.kind === 'refused' && finding.commandId === commandId)
      throw new Refusal('conflict', finding.reason);
  }
  return { commandId, session: watch.session, kept: await watch.kept() };
}
