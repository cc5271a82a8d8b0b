import { effect, signal } from '@preact/signals';
import { z } from 'zod';
import { tabKeep } from '../parts/browser.ts';
import { readKept } from '../parts/keep.ts';
import { nowMs, pageMs, tabletMs } from '../parts/now.ts';
import { type Asked, type Command, commandSchema, isSeenAlready, postOf } from './command.ts';
import { isLive, live } from './daemon.ts';
import { randomId } from './ids.ts';
import * as boxes from './outbox.ts';
import { send } from './post.ts';

/** Sends what the user asks for, one after the other, and holds what can't be sent until the daemon is back. */

export const outbox = signal(boxes.emptyOutbox);

const NAME = 'unsent';
const RETRY_MS = 3000;
let sending = false;
let retryAtMs = 0;

/**
 * Asks for something.
 * @param takesBack the command that it takes back, if it is for one that may come to nothing
 * @returns the id that it is sent under: of what waits already, where the same is on its way
 */
export function ask(asked: Asked, words: string, takesBack?: string): string {
  const back = takesBack === undefined ? {} : { takesBack };
  const command = { commandId: randomId(), asked, words, tabletMs: tabletMs(), ...back };
  const { commandId } = boxes.onItsWay(outbox.value, command) ?? command;
  outbox.value = boxes.ask(outbox.value, command, pageMs());
  void sendNext();
  return commandId;
}

export const discard = (commandId: string): void => {
  outbox.value = boxes.discard(outbox.value, commandId);
};

export const dismiss = (noticeId: number): void => {
  outbox.value = boxes.dismiss(outbox.value, noticeId);
};

/** Takes over what an earlier page held, keeps what is held, and tries again whenever the daemon can be reached. */
export function startSending(): void {
  const held = readKept(tabKeep.read(NAME), z.array(commandSchema)) ?? [];
  outbox.value = boxes.takeOver(outbox.value, held, pageMs());
  effect(() => {
    const commands = outbox.value.waiting.map((one) => one.command);
    tabKeep.write(NAME, JSON.stringify(commands));
  });
  effect(() => {
    const now = nowMs.value;
    // What is on its way is let be: its answer says what came of it.
    if (!sending) dropLate();
    if (isLive.value && now >= retryAtMs) void sendNext();
  });
}

function dropLate(): void {
  outbox.value = boxes.dropLate(outbox.peek(), pageMs(), tabletMs());
}

/** What was held waits for a live stream: only that tells whether its alarm is still the same one. */
async function sendNext(): Promise<void> {
  if (sending) return;
  sending = true;
  for (;;) {
    // A tablet may have slept since the last look, or while the one before was on its way.
    dropLate();
    const first = outbox.peek().waiting[0];
    if (first === undefined || (first.held && !isLive.peek())) break;
    const agoMs = boxes.waitedMs(first, pageMs(), tabletMs());
    const answer = await attempt(first.command, agoMs);
    outbox.value = boxes.answered(outbox.peek(), first.command.commandId, answer, agoMs);
    if (answer.kind === 'unsent') {
      retryAtMs = pageMs() + RETRY_MS;
      break;
    }
  }
  sending = false;
}

async function attempt(command: Command, agoMs: number): Promise<boxes.Answer> {
  if (isSeenAlready(live.peek(), command)) return { kind: 'done', kept: true };
  const post = postOf(command, live.peek(), agoMs);
  if (post === 'changed') return { kind: 'changed' };
  const answer = await send(post);
  // Of two pages that acknowledge one alarm the second is refused: what it asked for is so.
  return answer.kind === 'refused' && isSeenAlready(live.peek(), command)
    ? { kind: 'done', kept: true }
    : answer;
}
