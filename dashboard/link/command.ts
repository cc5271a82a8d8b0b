import { z } from 'zod';
import { type AlarmKey, alarmId, alarmKinds } from '../../shared/alarm/record.ts';
import { chooseSourceSchema, markSchema } from '../../shared/messages/command.ts';
import { type CoatAct, coatActSchema, LONGEST_AGO_S } from '../../shared/messages/cure.ts';
import type { Live } from '../../shared/messages/live.ts';
import { workActSchema } from '../../shared/messages/piece.ts';
import { pieceNoteDraftSchema } from '../../shared/shop/note.ts';
import { coatCommandWords } from '../../shared/words/coats.ts';

/** What the user asked for, as the page keeps it until the daemon has answered. */
const id = z.string().min(1).max(300);
const alarm = { iron: id, kind: z.enum(alarmKinds), probe: z.string().nullable(), since: z.string() };

const askedSchema = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('start'), iron: id }),
  z.strictObject({ what: z.literal('stop'), iron: id, session: id }),
  z.strictObject({ what: z.literal('mark'), iron: id, session: id, mark: markSchema }),
  z.strictObject({ what: z.literal('typed'), iron: id, plateC: z.number() }),
  z.strictObject({ what: z.literal('acknowledge'), ...alarm }),
  z.strictObject({ what: z.literal('silence'), ...alarm, forS: z.number() }),
  z.strictObject({ what: z.literal('choose'), choice: chooseSourceSchema }),
  /** `iron`: the one that was in hand when it was said; null: none was. */
  z.strictObject({ what: z.literal('work'), iron: id.nullable(), act: workActSchema }),
  z.strictObject({ what: z.literal('piece-note'), piece: id, note: pieceNoteDraftSchema }),
  z.strictObject({ what: z.literal('coat'), act: coatActSchema }),
]);

export const commandSchema = z.strictObject({
  commandId: id,
  asked: askedSchema,
  /** What it is, in the words of the moment at which it was asked. */
  words: z.string(),
  /** The command that it takes back: it goes with that one where that one came to nothing. */
  takesBack: id.optional(),
  /** When it was asked by the tablet's own clock, ms: that may be wrong, so only the time since then counts. */
  tabletMs: z.number().optional(),
});

export type Asked = z.infer<typeof askedSchema>;
export type Command = z.infer<typeof commandSchema>;

/**
 * A silence, a choice or a typed reading is meant for the moment, as are "next", "undo", and what a finger found of a coat
 * or was answered about its vapour: later than this it would mean something else, ms.
 */
export const MOMENT_MS = 60_000;

export const isForTheMoment = (asked: Asked): boolean =>
  asked.what === 'silence' ||
  asked.what === 'choose' ||
  asked.what === 'typed' ||
  asked.what === 'start' ||
  asked.what === 'stop' ||
  (asked.what === 'work' && (asked.act.kind === 'next' || asked.act.kind === 'undo')) ||
  (asked.what === 'coat' && (asked.act.kind === 'check' || asked.act.kind === 'fire-answer'));

/** Whether what the iron does counts by it from when it comes in: sent late, it is true of now and not of the time between. */
export const holdsFromNowOn = (asked: Asked): boolean =>
  asked.what === 'work' || (asked.what === 'mark' && asked.mark.kind !== 'note');

/** Why what is meant for the moment is not sent later; empty where the usual sentence says it. */
export function lateWhy(asked: Asked): string {
  if (asked.what !== 'coat') return '';
  return asked.act.kind === 'check' ? coatCommandWords.lateCheck : coatCommandWords.lateAnswer;
}

/** Whether saying it twice is more than saying it once: a piece that is turned over twice lies as it lay. */
export const addsUp = (asked: Asked): boolean =>
  asked.what === 'work' && ['next', 'turned', 'lap-done', 'undo'].includes(asked.act.kind);

/**
 * Whether its place among the others counts: on one area, on another, and on the first again are three visits; and a coat
 * may be found dry, tacky, and dry again.
 */
export const isInTurn = (asked: Asked): boolean => asked.what === 'work' || asked.what === 'coat';

export interface Post {
  readonly path: string;
  readonly body: Readonly<Record<string, unknown>>;
}

/**
 * How a command is sent, as things stand now; `changed` where the alarm that it was meant for is no longer the same.
 * @param waitedMs how long ago it was asked
 */
export function postOf(command: Command, live: Live | null, waitedMs = 0): Post | 'changed' {
  const { asked, commandId } = command;
  switch (asked.what) {
    case 'start':
      return { path: '/api/sessions', body: { commandId, iron: asked.iron } };
    case 'stop':
      return { path: `/api/sessions/${encodeURIComponent(asked.session)}/stop`, body: { commandId } };
    case 'mark': {
      const session = sessionNow(live, asked.iron) ?? asked.session;
      return {
        path: `/api/sessions/${encodeURIComponent(session)}/marks`,
        body: { commandId, mark: asked.mark },
      };
    }
    case 'acknowledge':
    case 'silence': {
      if (!stillStands(live, asked)) return 'changed';
      const { iron, kind, probe } = asked;
      const length = asked.what === 'silence' ? { forS: asked.forS } : {};
      return { path: `/api/alarms/${asked.what}`, body: { commandId, iron, kind, probe, ...length } };
    }
    case 'typed':
      return {
        path: `/api/irons/${encodeURIComponent(asked.iron)}/readings`,
        body: { commandId, plateC: asked.plateC },
      };
    case 'choose':
      return { path: '/api/source', body: asked.choice };
    case 'work': {
      const iron = asked.iron === null ? {} : { iron: asked.iron };
      return { path: '/api/work', body: { commandId, ...iron, act: asked.act } };
    }
    case 'piece-note':
      return {
        path: `/api/pieces/${encodeURIComponent(asked.piece)}/notes`,
        body: { commandId, note: asked.note },
      };
    case 'coat':
      return { path: '/api/coats', body: { commandId, act: actAfter(asked.act, waitedMs) } };
  }
}

/** A coat dries while its start waits to be sent. */
const actAfter = (act: CoatAct, waitedMs: number): CoatAct =>
  act.kind === 'start'
    ? { ...act, agoS: Math.min(LONGEST_AGO_S, act.agoS + Math.floor(waitedMs / 1000)) }
    : act;

/** A break of the daemon ends a session and the next one goes on with the work: a mark belongs there. */
const sessionNow = (live: Live | null, ironId: string): string | null =>
  live?.situation.irons.find((iron) => iron.id === ironId)?.session ?? null;

/** Whether an alarm that was to be acknowledged has been seen meanwhile: on another page, or where it is gone for good. */
export function isSeenAlready(live: Live | null, { asked }: Command): boolean {
  if (asked.what !== 'acknowledge' || live === null) return false;
  const now = alarmNow(live, asked);
  return now === undefined || (now.since === asked.since && now.state === 'acknowledged');
}

const alarmNow = (
  live: Live,
  asked: AlarmKey & { readonly iron: string },
): Live['alarms'][number] | undefined =>
  live.alarms.find((one) => alarmId(one.iron, one) === alarmId(asked.iron, asked));

/** Without this an acknowledgement that was held up could hide an alarm that nobody has seen. */
function stillStands(live: Live | null, asked: AlarmKey & { iron: string; since: string }): boolean {
  if (live === null) return true;
  return alarmNow(live, asked)?.since === asked.since;
}
