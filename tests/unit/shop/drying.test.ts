import { describe, expect, it } from 'vitest';
import { type Coat, type Drying, foldDrying, nothingDries } from '../../../shared/shop/drying.ts';
import type { ShopEntry, ShopHappened } from '../../../shared/shop/entry.ts';
import { taughtOf } from '../../../shared/shop/observations.ts';
import { cement } from '../web/support/shop-samples.ts';

const START_MS = 1_772_000_000_000;

class Journal {
  drying: Drying = nothingDries;
  #n = 0;

  say(happened: ShopHappened, afterS = 0, commandId = `c${(this.#n += 1)}`): this {
    const entry: ShopEntry = {
      commandId,
      atUtcMs: START_MS + afterS * 1000,
      zone: 'Etc/UTC',
      simulated: false,
      happened,
    };
    this.drying = foldDrying(this.drying, entry);
    return this;
  }

  get coat(): Coat {
    return this.drying.coats['a'] ?? expect.unreachable();
  }
}

const put: ShopHappened = {
  kind: 'coats',
  cement: cement.id,
  cementVersion: 1,
  piece: 'flap',
  pieceVersion: 1,
  places: [
    { coat: 'a', side: 1, area: 'edge' },
    { coat: 'b', side: 2, area: null },
  ],
  fromUtcMs: START_MS - 60_000,
};
const tacky = (curedS: number): ShopHappened => ({
  kind: 'checked',
  coat: 'a',
  stage: 'set-to-touch',
  found: 'tacky',
  curedS,
});
const dry = (curedS: number): ShopHappened => ({
  kind: 'checked',
  coat: 'a',
  stage: 'set-to-touch',
  found: 'dry',
  curedS,
});

describe('what dries', () => {
  it('has a coat for each place, from when it was put on', () => {
    const { drying } = new Journal().say(put);
    expect(Object.values(drying.coats)).toMatchObject([
      { id: 'a', side: 1, area: 'edge', fromUtcMs: START_MS - 60_000, checks: [], ended: null },
      { id: 'b', side: 2, area: null },
    ]);
    expect(JSON.parse(JSON.stringify(drying))).toEqual(drying);
  });

  it('keeps what was found, and forgets what was taken back', () => {
    const journal = new Journal().say(put).say(tacky(300), 300, 't').say(dry(700), 700, 'd');
    expect(journal.coat.checks.map(({ found }) => found)).toEqual(['tacky', 'dry']);
    journal.say({ kind: 'taken-back', of: 'd' });
    expect(journal.coat.checks.map(({ found }) => found)).toEqual(['tacky']);
    journal.say({ kind: 'ended', coat: 'a', why: 'mistake' }, 0, 'e').say({ kind: 'taken-back', of: 'e' });
    expect(journal.coat.ended).toBeNull();
    journal.say({ kind: 'fire-answer', coat: 'a', answer: 'stopped' }, 0, 'f');
    expect(journal.coat.fire).toMatchObject({ answer: 'stopped' });
    journal.say({ kind: 'taken-back', of: 'f' });
    expect(journal.coat.fire).toBeNull();
  });

  it('is nothing where the coats were put on by mistake, whatever was said of them since', () => {
    const journal = new Journal().say(put, 0, 'p').say({ kind: 'taken-back', of: 'p' }).say(dry(1));
    expect(journal.drying.coats).toEqual({});
  });

  it('goes along with a clock that was set: what has passed has passed', () => {
    const journal = new Journal()
      .say({ kind: 'air', airC: 20, rhPct: 50, how: 'typed', probe: '' })
      .say(put)
      .say(dry(700), 700);
    journal.say(
      { kind: 'clock', byMs: -3_600_000, while: 'running', startUtcMs: null, earlierByMs: 0 },
      800 - 3600,
    );
    expect(journal.coat).toMatchObject({ fromUtcMs: START_MS - 3_660_000, clockLosses: 0 });
    expect(journal.coat.checks[0]?.atUtcMs).toBe(START_MS + 700_000 - 3_600_000);
    expect(journal.drying.air[0]?.atUtcMs).toBe(START_MS - 3_600_000);
    expect(journal.drying.lastUtcMs).toBe(START_MS + 800_000 - 3_600_000);
  });

  it('says of what was drying that a clock which stood behind has lost time', () => {
    const journal = new Journal()
      .say(put)
      .say({ kind: 'ended', coat: 'b', why: 'done' })
      .say({ kind: 'clock', byMs: -1000, while: 'off', startUtcMs: null, earlierByMs: 0 });
    expect([journal.coat.clockLosses, journal.drying.coats['b']?.clockLosses]).toEqual([1, 0]);
  });
});

describe('what the taps tell of a cement', () => {
  const observed = (journal: Journal, newest = cement) =>
    taughtOf(Object.values(journal.drying.coats), newest, [cement, newest]);

  it('is between the last tacky and the first dry of each coat and stage', () => {
    const journal = new Journal().say(put).say(tacky(300)).say(tacky(500)).say(dry(700));
    expect(observed(journal)).toEqual([
      { fromUtcMs: START_MS - 60_000, stages: [{ aboveS: 500, belowS: 700, stageS: 750 }] },
    ]);
  });

  it('is open on the side that nobody has seen', () => {
    expect(observed(new Journal().say(put).say(dry(700)))).toMatchObject([
      { stages: [{ aboveS: 0, belowS: 700 }] },
    ]);
    expect(observed(new Journal().say(put).say(tacky(900)))).toMatchObject([
      { stages: [{ aboveS: 900, belowS: null }] },
    ]);
    expect(observed(new Journal().say(put))).toEqual([]);
  });

  it('is nothing of before it is to be learned anew, nor of a coat put on by mistake', () => {
    const journal = new Journal().say(put).say(dry(700));
    expect(
      observed(new Journal().say(put).say(dry(700)).say({ kind: 'ended', coat: 'a', why: 'mistake' })),
    ).toEqual([]);
    journal.say({ kind: 'learn-anew', cement: cement.id });
    expect(observed(journal)).toEqual([]);
  });

  it('is nothing of what was found after the clock had lost time, and stays what it was before', () => {
    const lost: ShopHappened = {
      kind: 'clock',
      byMs: -1000,
      while: 'off',
      startUtcMs: null,
      earlierByMs: 0,
    };
    expect(observed(new Journal().say(put).say(lost).say(dry(700)))).toEqual([]);
    const before = observed(new Journal().say(put).say(tacky(300)));
    const journal = new Journal().say(put).say(tacky(300)).say(lost).say(dry(700));
    expect(observed(journal)).toMatchObject(before.map(({ stages }) => ({ stages })));
    // A coat that is put on after that has dried by a clock that is right again.
    const again = new Journal().say(lost).say(put).say(dry(700));
    expect(observed(again)).toMatchObject([{ stages: [{ belowS: 700 }] }]);
  });

  it('is nothing of what was found before the clock was set right, on a coat that dried while the program was off', () => {
    const boot: ShopHappened = {
      kind: 'clock',
      byMs: 36_000_000,
      while: 'boot',
      startUtcMs: START_MS + 600_000,
      earlierByMs: 0,
    };
    const stages = (journal: Journal) => observed(journal).map((one) => one.stages);
    const evening = new Journal().say(put).say(tacky(300), 300);
    expect(stages(evening.say(dry(700), 700).say(boot, 36_800))).toMatchObject([
      [{ aboveS: 300, belowS: null }],
    ]);
    expect(stages(evening.say(dry(900), 36_900))).toMatchObject([[{ aboveS: 300, belowS: 900 }]]);
    // One that was put on since has dried for as long as it seemed to.
    const since = new Journal()
      .say({ ...put, fromUtcMs: START_MS + 650_000 }, 650)
      .say(dry(700), 700)
      .say(boot, 36_800);
    expect(stages(since)).toMatchObject([[{ belowS: 700 }]]);
  });

  it('is nothing of a version that gave another time, or other conditions', () => {
    const journal = new Journal().say(put).say(dry(700));
    const named = { ...cement, version: 2, name: 'Another name' };
    const longer = {
      ...cement,
      version: 2,
      stages: [{ kind: 'set-to-touch' as const, fromS: 600, toS: 1200 }],
    };
    expect(observed(journal, named)).toHaveLength(1);
    expect(observed(journal, longer)).toEqual([]);
    expect(observed(journal, { ...cement, version: 2, atC: 25 })).toEqual([]);
  });
});
