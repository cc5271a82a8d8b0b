import { describe, expect, it } from 'vitest';
import type { Commit, InterruptedSession } from '../../../daemon/book/book.ts';
import { BookFileReader } from '../../../daemon/book/read/book-file-reader.ts';
import { BookFile } from '../../../daemon/book/store/book-file.ts';
import type { Finding } from '../../../shared/watch/finding.ts';
import type { Carried, WatchInput } from '../../../shared/watch/input.ts';
import { alarmOf, carriedOf, dataFolder, headOf, littleFold, SET_ASIDE_UTC_MS } from './recording.ts';

const NOTHING: Partial<Carried> = {};

/** What a start tells of a session that broke off after these inputs and findings. */
function brokenOff(
  carried: Partial<Carried>,
  inputs: WatchInput[],
  findings: Finding[] = [],
): InterruptedSession {
  const folder = dataFolder();
  const book = new BookFile(folder);
  book.open(SET_ASIDE_UTC_MS);
  const all: WatchInput[] = [{ kind: 'carried', carried: carriedOf(carried) }, ...inputs];
  const commit: Commit = {
    session: 'a',
    begin: headOf('a'),
    entries: all.map((input, i) => ({ seq: i + 1, tMs: 1000 + i, input })),
    found: findings.map((finding, i) => ({ seq: i + 1, tMs: 1000 + i, finding })),
    untilSeq: 100,
    untilMs: 5500,
    peakC: null,
    end: null,
  };
  book.commit(commit, SET_ASIDE_UTC_MS);
  const { interrupted } = book.open(SET_ASIDE_UTC_MS);
  book.close();
  expect(new BookFileReader(folder, littleFold).session('a')).toMatchObject({
    endWhy: 'interrupted',
    endedAtUtc: '2026-03-01T08:00:05.500+00:00',
    untilMs: 5500,
  });
  const [session] = interrupted;
  if (session === undefined) throw new Error('not told');
  return session;
}

const mark = (commandId: string, what: Extract<WatchInput, { kind: 'mark' }>['mark']): WatchInput => ({
  kind: 'mark',
  commandId,
  mark: what,
});

describe('a session that broke off', () => {
  it('leaves the alarms that were not normal, as they last stood', () => {
    const over = alarmOf();
    const silent = alarmOf({ kind: 'no-reading', peakC: null, detail: 'open' });
    const found = (alarm: typeof over): Finding => ({ kind: 'alarm', change: 'raised', alarm });
    const { alarms } = brokenOff(
      NOTHING,
      [],
      [
        found(over),
        found(silent),
        found({ ...over, state: 'acknowledged' }),
        found({ ...silent, state: 'normal' }),
      ],
    );
    expect(alarms).toEqual([{ ...over, state: 'acknowledged' }]);
  });

  it('leaves alarms that it had taken over, unless they changed since', () => {
    const over = alarmOf({ state: 'returned-unacknowledged' });
    const other = alarmOf({ probe: 'demo-board/toe' });
    const changed: Finding = { kind: 'alarm', change: 'acknowledged', alarm: { ...other, state: 'normal' } };
    expect(brokenOff({ alarms: [over, other] }, [], [changed]).alarms).toEqual([over]);
  });

  it('leaves the stage and place last marked, but not a mark that was refused', () => {
    const marks = [
      mark('1', { kind: 'stage', stageId: 'tack' }),
      mark('2', { kind: 'place', place: 'on-rest' }),
      mark('3', { kind: 'note', text: 'seam at rib 4' }),
      mark('5', { kind: 'dial', mark: 4.5 }),
      mark('4', { kind: 'stage', stageId: 'nowhere' }),
    ];
    const refused: Finding = { kind: 'refused', commandId: '4', reason: 'There is no such stage.' };
    expect(brokenOff(NOTHING, marks, [refused])).toMatchObject({
      stageId: 'tack',
      place: 'on-rest',
      dial: 4.5,
      commandIds: ['1', '2', '3', '5'],
    });
  });

  it('leaves the stage and place that it had taken over where nothing was marked', () => {
    expect(brokenOff({ stageId: 'final', place: 'on-work' }, [])).toMatchObject({
      stageId: 'final',
      place: 'on-work',
    });
  });

  it('knows every command that it took, so that none is done twice', () => {
    const inputs: WatchInput[] = [
      { kind: 'start', commandId: 's', why: 'by-hand' },
      { kind: 'acknowledge', commandId: 'k', alarm: { kind: 'over-limit', probe: 'demo-board/heel' } },
      {
        kind: 'silence',
        commandId: 'q',
        alarm: { kind: 'over-limit', probe: 'demo-board/heel' },
        forMs: 1000,
      },
      { kind: 'stop', commandId: null, why: 'cold' },
    ];
    expect(brokenOff(NOTHING, inputs).commandIds).toEqual(['s', 'k', 'q']);
  });

  const hot: Finding = { kind: 'heat', change: 'hot' };
  const cold: Finding = { kind: 'heat', change: 'cold' };
  it.each<[string, boolean, Finding[], boolean]>([
    ['was found hot', false, [hot], true],
    ['was found cold after it had been hot', true, [hot, cold], false],
    ['was found hot again', false, [hot, cold, hot], true],
    ['was not measured since it was taken over as hot', true, [], true],
    ['was cold when it was taken over', false, [], false],
  ])('is to be treated as hot or not where the plate %s', (_, before, findings, after) => {
    expect(brokenOff({ hot: before }, [], findings).hot).toBe(after);
  });
});
