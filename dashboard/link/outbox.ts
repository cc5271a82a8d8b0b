import {
  addsUp,
  type Command,
  holdsFromNowOn,
  isForTheMoment,
  isInTurn,
  lateWhy,
  MOMENT_MS,
} from './command.ts';

/** The commands on their way, in the order in which they were asked, and what came of the ones that failed. Pure. */
export interface Outbox {
  readonly waiting: readonly Waiting[];
  readonly notices: readonly Notice[];
  readonly nextNotice: number;
}

export interface Waiting {
  readonly command: Command;
  readonly askedAtMs: number;
  /** True once it, or one before it, could not be sent; it is tried again, under the same id. */
  readonly held: boolean;
}

export type Notice = NoticeHead & Outcome;

interface NoticeHead {
  readonly id: number;
  /** The command that it tells of. */
  readonly commandId: string;
  readonly words: string;
}

type Outcome =
  | {
      readonly kind: 'refused' | 'too-late';
      /** The daemon's own sentence, or why it would mean something else later; empty where there is none. */
      readonly why: string;
    }
  | { readonly kind: 'not-kept' | 'changed' }
  /** Of all marks that were: how late the latest was, ms, and how many there were before this one. */
  | { readonly kind: 'sent-late'; readonly byMs: number; readonly before: number };

/** What came of an attempt to send. */
export type Answer =
  | { readonly kind: 'done'; readonly kept: boolean }
  | { readonly kind: 'refused'; readonly why: string }
  | { readonly kind: 'changed' }
  | { readonly kind: 'unsent' };

export const emptyOutbox: Outbox = { waiting: [], notices: [], nextNotice: 1 };

/** More than these are never held; the oldest notices make room. */
const MOST_WAITING = 50;
const MOST_NOTICES = 5;

/** Takes a command in. The same thing asked again while it is on its way is one command, not two. */
export function ask(box: Outbox, command: Command, atMs: number): Outbox {
  if (onItsWay(box, command) !== null) return box;
  if (box.waiting.length >= MOST_WAITING) return withNotice(box, command, { kind: 'too-late', why: '' });
  const held = box.waiting.some((one) => one.held);
  return { ...box, waiting: [...box.waiting, { command, askedAtMs: atMs, held }] };
}

/** The command that asks for the same thing already; null: none does. */
export function onItsWay({ waiting }: Outbox, { asked }: Command): Command | null {
  if (addsUp(asked)) return null;
  const text = JSON.stringify(asked);
  const among = isInTurn(asked) ? waiting.filter((one) => isInTurn(one.command.asked)).slice(-1) : waiting;
  return among.find((one) => JSON.stringify(one.command.asked) === text)?.command ?? null;
}

/**
 * What came of an attempt to send is taken in.
 * @param agoMs how long ago it was asked when it was sent
 */
export function answered(box: Outbox, commandId: string, answer: Answer, agoMs = 0): Outbox {
  const one = box.waiting.find((each) => each.command.commandId === commandId);
  if (one === undefined) return box;
  if (answer.kind === 'unsent') return { ...box, waiting: box.waiting.map(hold) };
  if (answer.kind === 'refused')
    return withNotice(dropped(box, [commandId]), one.command, { kind: 'refused', why: answer.why });
  if (answer.kind === 'changed')
    return withNotice(dropped(box, [commandId]), one.command, { kind: 'changed' });
  const without = { ...box, waiting: box.waiting.filter((w) => w !== one) };
  const told = answer.kept ? without : withNotice(without, one.command, { kind: 'not-kept' });
  return holdsFromNowOn(one.command.asked) && agoMs > MOMENT_MS
    ? withSentLate(told, one.command, agoMs)
    : told;
}

/** Without these, which came to nothing, and without what would have taken them back. */
const dropped = (box: Outbox, ids: readonly string[]): Outbox => ({
  ...box,
  waiting: box.waiting.filter(
    ({ command }) => !ids.includes(command.commandId) && !ids.includes(command.takesBack ?? ''),
  ),
});

/**
 * How long ago it was asked, ms. The page's clock stands still while a tablet sleeps, and begins anew with the page; the
 * tablet's own may be set back: the longer of the two.
 * @param tabletMs the tablet's own clock
 */
export const waitedMs = ({ command, askedAtMs }: Waiting, nowMs: number, tabletMs: number): number =>
  Math.max(0, nowMs - askedAtMs, tabletMs - (command.tabletMs ?? tabletMs));

const hold = (waiting: Waiting): Waiting => ({ ...waiting, held: true });

/** Drops what was meant for a moment that has passed, with a notice; nothing of it may be on its way. Clocks as in `waitedMs`. */
export function dropLate(box: Outbox, nowMs: number, tabletMs: number): Outbox {
  const late = box.waiting.filter(
    (w) => isForTheMoment(w.command.asked) && waitedMs(w, nowMs, tabletMs) > MOMENT_MS,
  );
  if (late.length === 0) return box;
  const kept = dropped(
    box,
    late.map((w) => w.command.commandId),
  );
  return late.reduce<Outbox>((next, w) => withLate(next, w.command), kept);
}

/** Takes over what an earlier page could not send. What was meant for the moment is told of and not sent. */
export function takeOver(box: Outbox, commands: readonly Command[], atMs: number): Outbox {
  return commands.reduce<Outbox>(
    (next, command) =>
      isForTheMoment(command.asked)
        ? withLate(next, command)
        : { ...next, waiting: [...next.waiting, { command, askedAtMs: atMs, held: true }] },
    box,
  );
}

export const discard = (box: Outbox, commandId: string): Outbox => dropped(box, [commandId]);

export const dismiss = (box: Outbox, id: number): Outbox => ({
  ...box,
  notices: box.notices.filter((notice) => notice.id !== id),
});

const withLate = (box: Outbox, command: Command): Outbox =>
  withNotice(box, command, { kind: 'too-late', why: lateWhy(command.asked) });

/** One notice for all of them: after an outage of an hour there may be many. */
function withSentLate(box: Outbox, command: Command, agoMs: number): Outbox {
  const earlier = box.notices.find((notice) => notice.kind === 'sent-late');
  const others = { ...box, notices: box.notices.filter((notice) => notice !== earlier) };
  return withNotice(others, command, {
    kind: 'sent-late',
    byMs: Math.max(agoMs, earlier?.byMs ?? 0),
    before: earlier === undefined ? 0 : earlier.before + 1,
  });
}

function withNotice(box: Outbox, { commandId, words }: Command, outcome: Outcome): Outbox {
  const notice: Notice = { id: box.nextNotice, commandId, words, ...outcome };
  return { ...box, notices: [...box.notices, notice].slice(-MOST_NOTICES), nextNotice: box.nextNotice + 1 };
}
