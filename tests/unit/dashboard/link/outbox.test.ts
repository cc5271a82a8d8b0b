import { describe, expect, it } from 'vitest';
import { type Asked, type Command, MOMENT_MS, postOf } from '../../../../dashboard/link/command.ts';
import {
  answered,
  ask,
  discard,
  dismiss,
  dropLate,
  emptyOutbox,
  type Outbox,
  onItsWay,
  takeOver,
  waitedMs,
} from '../../../../dashboard/link/outbox.ts';
import { type CoatAct, LONGEST_AGO_S } from '../../../../shared/messages/cure.ts';
import type { WorkAct } from '../../../../shared/messages/piece.ts';
import { alarm, iron, live, probe, SESSION } from '../../../fixtures/scenes.ts';

const since = '2026-03-04T13:19:18Z';
const key = { iron: 'big', kind: 'over-limit', probe: 'bench-board/1', since } as const;
const command = (asked: Asked, commandId = 'c1'): Command => ({ commandId, asked, words: asked.what });
const mark: Asked = {
  what: 'mark',
  iron: 'big',
  session: SESSION,
  mark: { kind: 'place', place: 'on-rest' },
};
const acknowledge: Asked = { what: 'acknowledge', ...key };
const silence: Asked = { what: 'silence', ...key, forS: 60 };

describe('what is on its way to the daemon', () => {
  it('is one command however often it is pressed', () => {
    const box = ask(ask(emptyOutbox, command(mark), 0), command(mark, 'c2'), 10);
    expect(box.waiting.map((w) => w.command.commandId)).toEqual(['c1']);
    expect(onItsWay(box, command(mark, 'c3'))?.commandId).toBe('c1');
    expect(onItsWay(box, command(silence, 'c3'))).toBeNull();
  });

  it('is gone once it is done, and told of where it could not be written down', () => {
    const box = ask(emptyOutbox, command(mark), 0);
    expect(answered(box, 'c1', { kind: 'done', kept: true })).toMatchObject({ waiting: [], notices: [] });
    expect(answered(box, 'c1', { kind: 'done', kept: false }).notices[0]?.kind).toBe('not-kept');
  });

  it('is held under the same id, in order, where it could not be sent', () => {
    const box = ask(ask(emptyOutbox, command(mark), 0), command(acknowledge, 'c2'), 0);
    const held = answered(box, 'c1', { kind: 'unsent' });
    expect(held.waiting.map((w) => [w.command.commandId, w.held])).toEqual([
      ['c1', true],
      ['c2', true],
    ]);
  });

  it('that is asked after one that is held is held with it: it waits too, and that is to be seen', () => {
    const held = answered(ask(emptyOutbox, command(mark), 0), 'c1', { kind: 'unsent' });
    expect(ask(held, command(acknowledge, 'c2'), 1).waiting.map((w) => w.held)).toEqual([true, true]);
  });

  it('shows a refusal with the daemon’s sentence until it is read', () => {
    const refused = answered(ask(emptyOutbox, command(mark), 0), 'c1', {
      kind: 'refused',
      why: 'Session ended.',
    });
    expect(refused.notices).toMatchObject([{ kind: 'refused', why: 'Session ended.' }]);
    expect(dismiss(refused, refused.notices[0]?.id ?? -1).notices).toEqual([]);
  });

  it('holds a mark for as long as it takes, and what is meant for the moment no longer than that', () => {
    const box = [mark, silence].reduce((b, asked, i) => ask(b, command(asked, `c${i}`), 0), emptyOutbox);
    const held = answered(answered(box, 'c0', { kind: 'unsent' }), 'c1', { kind: 'unsent' });
    expect(dropLate(held, MOMENT_MS, 0)).toBe(held);
    const late = dropLate(held, MOMENT_MS + 1, 0);
    expect(late.waiting.map((w) => w.command.asked.what)).toEqual(['mark']);
    expect(late.notices.map((n) => n.kind)).toEqual(['too-late']);
  });

  it('is late by the tablet’s clock too: the page’s stands still while a tablet sleeps', () => {
    const asked = { ...command(silence), tabletMs: 5000 };
    const box = ask(emptyOutbox, asked, 0);
    expect(dropLate(box, 10, 5000 + MOMENT_MS)).toBe(box);
    const late = dropLate(box, 10, 5001 + MOMENT_MS);
    expect(late.waiting).toEqual([]);
    expect(late.notices).toMatchObject([{ kind: 'too-late', commandId: 'c1' }]);
  });

  it('goes over to the page after a reload, but for what was meant for the moment', () => {
    const box = takeOver(emptyOutbox, [command(mark), command(silence, 'c2')], 5);
    expect(box.waiting).toMatchObject([{ command: { commandId: 'c1' }, held: true }]);
    expect(box.notices.map((n) => n.kind)).toEqual(['too-late']);
  });

  it('can be taken back', () => {
    expect(discard(ask(emptyOutbox, command(mark), 0), 'c1').waiting).toEqual([]);
  });
});

describe('what is said of the work', () => {
  const act = (said: WorkAct): Asked => ({ what: 'work', iron: 'big', act: said });
  const next = act({ kind: 'next' });
  const undo = act({ kind: 'undo' });
  const area = (id: string) => act({ kind: 'area', area: id });
  const ids = (box: Outbox) => box.waiting.map((w) => w.command.commandId);
  const all = (asked: readonly Asked[]): Outbox =>
    asked.reduce((box, one, i) => ask(box, command(one, `c${i}`), 0), emptyOutbox);

  it('counts each time where each press is another step, and in its turn where it is a place', () => {
    expect(ids(all([next, next, act({ kind: 'turned' }), act({ kind: 'turned' }), undo, undo]))).toHaveLength(
      6,
    );
    expect(ids(all([area('a'), area('b'), area('a')]))).toEqual(['c0', 'c1', 'c2']);
    expect(ids(all([area('a'), area('a')]))).toEqual(['c0']);
    // Another command between them is no other place.
    expect(ids(all([area('a'), silence, area('a')]))).toEqual(['c0', 'c1']);
  });

  it('is told of where it was sent late: it counts from then on; one notice for all that were', () => {
    const box = all([area('a'), act({ kind: 'lap-done' }), area('b')]);
    const done = { kind: 'done', kept: true } as const;
    const inTime = answered(box, 'c0', done, MOMENT_MS);
    expect(inTime.notices).toEqual([]);
    const first = answered(inTime, 'c1', done, 240_000);
    expect(first.notices).toMatchObject([{ kind: 'sent-late', commandId: 'c1', byMs: 240_000, before: 0 }]);
    const second = answered(first, 'c2', done, 100_000);
    expect(second.notices).toMatchObject([{ kind: 'sent-late', commandId: 'c2', byMs: 240_000, before: 1 }]);
    expect(second.waiting).toEqual([]);
    // Once it was read the count begins anew; a coat's start tells how long ago it was, and a note is of no time.
    const read = dismiss(second, second.notices[0]?.id ?? -1);
    const again = answered(ask(read, command(area('c'), 'c3'), 0), 'c3', done, 70_000);
    expect(again.notices).toMatchObject([{ kind: 'sent-late', byMs: 70_000, before: 0 }]);
    const note: Asked = { ...mark, mark: { kind: 'note', text: 'a drip' } };
    expect(answered(ask(read, command(note, 'c4'), 0), 'c4', done, 70_000).notices).toEqual([]);
  });

  it('takes back nothing where what it would have taken back came to nothing', () => {
    const box = ask(ask(all([next]), { ...command(undo, 'u0'), takesBack: 'c0' }, 0), command(undo, 'u1'), 0);
    expect(ids(answered(box, 'c0', { kind: 'refused', why: 'No piece is in hand.' }))).toEqual(['u1']);
    expect(ids(discard(box, 'c0'))).toEqual(['u1']);
    expect(ids(answered(box, 'c0', { kind: 'done', kept: true }))).toEqual(['u0', 'u1']);
  });

  it('is kept while the daemon is gone, but for "next" and "undo", which mean the moment', () => {
    const box = all([next, area('a'), act({ kind: 'lap-done' }), undo]);
    const held = ids(box).reduce((b, id) => answered(b, id, { kind: 'unsent' }), box);
    const late = dropLate(held, MOMENT_MS + 1, 0);
    expect(ids(late)).toEqual(['c1', 'c2']);
    expect(late.notices.map((n) => n.kind)).toEqual(['too-late', 'too-late']);
  });

  it('goes to the iron that was in hand, and a note to its piece', () => {
    expect(postOf(command(area('a')), null)).toEqual({
      path: '/api/work',
      body: { commandId: 'c1', iron: 'big', act: { kind: 'area', area: 'a' } },
    });
    expect(postOf(command({ what: 'work', iron: null, act: { kind: 'next' } }), null)).toEqual({
      path: '/api/work',
      body: { commandId: 'c1', act: { kind: 'next' } },
    });
    const note = { kind: 'tight', side: 1, by: 'Anna Berg' } as const;
    expect(postOf(command({ what: 'piece-note', piece: 'left flap', note }), null)).toEqual({
      path: '/api/pieces/left%20flap/notes',
      body: { commandId: 'c1', note },
    });
  });
});

describe('what is said of coats', () => {
  const coat = (act: CoatAct): Asked => ({ what: 'coat', act });
  const start = coat({
    kind: 'start',
    cement: 'generic-water',
    piece: 'left-aileron',
    places: [{ side: 1, area: '1-edge-r0c0' }],
    agoS: 600,
  });
  const dry = coat({ kind: 'check', coat: 'k1', stage: 'set-to-touch', found: 'dry' });
  const tacky = coat({ kind: 'check', coat: 'k1', stage: 'set-to-touch', found: 'tacky' });
  const answer = coat({ kind: 'fire-answer', coat: 'k1', answer: 'iron-off' });
  const back = coat({ kind: 'take-back', of: 'c0' });
  const end = coat({ kind: 'end', coat: 'k1', why: 'done' });
  const all = (asked: readonly Asked[]): Outbox =>
    asked.reduce((box, one, i) => ask(box, command(one, `c${i}`), 0), emptyOutbox);
  const held = (box: Outbox): Outbox =>
    box.waiting.reduce((b, w) => answered(b, w.command.commandId, { kind: 'unsent' }), box);
  const ids = (box: Outbox) => box.waiting.map((w) => w.command.commandId);

  it('counts in its turn: dry, tacky, dry again; two presses at once are one', () => {
    expect(ids(all([dry, tacky, dry]))).toEqual(['c0', 'c1', 'c2']);
    expect(ids(all([start, start]))).toEqual(['c0']);
    expect(ids(all([start, back, start]))).toEqual(['c0', 'c1', 'c2']);
  });

  it('is kept while the daemon is gone, but for what a finger found and what was answered, with why', () => {
    const late = dropLate(held(all([start, dry, answer, end])), MOMENT_MS + 1, 0);
    expect(ids(late)).toEqual(['c0', 'c3']);
    expect(late.notices).toMatchObject([
      { kind: 'too-late', why: expect.stringContaining('Touch it again') },
      { kind: 'too-late', why: expect.stringContaining('Answer the question again') },
    ]);
    expect(late.notices).toHaveLength(2);
  });

  it('tells how long a start has waited, and changes nothing else', () => {
    const body = (act: unknown) => ({ path: '/api/coats', body: { commandId: 'c1', act } });
    const started = { ...(start as Extract<Asked, { what: 'coat' }>).act };
    expect(postOf(command(start), null)).toEqual(body(started));
    expect(postOf(command(start), null, 90_900)).toEqual(body({ ...started, agoS: 690 }));
    expect(postOf(command(start), null, 1e12)).toEqual(body({ ...started, agoS: LONGEST_AGO_S }));
    expect(postOf(command(end), null, 90_900)).toEqual(body({ kind: 'end', coat: 'k1', why: 'done' }));
  });

  it('has waited by the page’s clock or by the tablet’s, whichever says more, and never less than nothing', () => {
    const waiting = (tabletMs?: number) => ({
      command: { ...command(start), ...(tabletMs === undefined ? {} : { tabletMs }) },
      askedAtMs: 1000,
      held: true,
    });
    // The tablet slept, or the page was loaded anew: its own clock went on.
    expect(waitedMs(waiting(5000), 2000, 905_000)).toBe(900_000);
    // Its clock was set back meanwhile.
    expect(waitedMs(waiting(9e9), 61_000, 5000)).toBe(60_000);
    expect(waitedMs(waiting(), 31_000, 5000)).toBe(30_000);
    expect(waitedMs(waiting(5000), 500, 4000)).toBe(0);
  });
});

describe('how a command is sent', () => {
  const now = live([probe(383)], [alarm()]);

  it('goes to the address of the API with its id', () => {
    expect(postOf(command({ what: 'start', iron: 'big' }), now)).toEqual({
      path: '/api/sessions',
      body: { commandId: 'c1', iron: 'big' },
    });
    expect(postOf(command({ what: 'stop', iron: 'big', session: SESSION }), now)).toEqual({
      path: `/api/sessions/${SESSION}/stop`,
      body: { commandId: 'c1' },
    });
    expect(postOf(command(silence), now)).toEqual({
      path: '/api/alarms/silence',
      body: { commandId: 'c1', iron: 'big', kind: 'over-limit', probe: 'bench-board/1', forS: 60 },
    });
    expect(postOf(command({ what: 'choose', choice: { kind: 'serial', path: 'COM3' } }), now)).toEqual({
      path: '/api/source',
      body: { kind: 'serial', path: 'COM3' },
    });
  });

  it('takes a held mark to the session that goes on with the work', () => {
    const later = live([probe(250)], [], { irons: [iron({ session: 'next' })] });
    expect(postOf(command(mark), later)).toMatchObject({ path: '/api/sessions/next/marks' });
    const none = live([probe(250)], [], { irons: [iron({ session: null })] });
    expect(postOf(command(mark), none)).toMatchObject({ path: `/api/sessions/${SESSION}/marks` });
  });

  it('never acknowledges or silences an alarm that the user has not seen', () => {
    const again = live([probe(383)], [alarm({ since: '2026-03-04T13:25:00Z' })]);
    const gone = live([probe(250)]);
    for (const asked of [acknowledge, silence]) {
      expect(postOf(command(asked), now)).not.toBe('changed');
      expect(postOf(command(asked), again)).toBe('changed');
      expect(postOf(command(asked), gone)).toBe('changed');
    }
  });
});
