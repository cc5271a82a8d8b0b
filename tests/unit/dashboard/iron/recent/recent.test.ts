import { describe, expect, it } from 'vitest';
import { CELL_MS, RECENT_MS, Recent, ROWS_AT_MOST } from '../../../../../dashboard/iron/recent/recent.ts';

const plate = (plateC: number) => ({ plateC });
const rowsOf = (recent: Recent, probe: string): number => recent.columns(probe).tMs.length;

describe('the last minutes', () => {
  it('do not grow in a day of four probes at ten readings a second', () => {
    const recent = new Recent();
    const dayMs = 24 * 3_600_000;
    let most = 0;
    for (let tMs = 0; tMs < dayMs; tMs += 100) {
      for (const probe of ['a/1', 'a/2', 'b/1', 'b/2']) recent.add(probe, tMs, plate(20 + (tMs % 977) / 10));
      if (tMs % 60_000 === 0) most = Math.max(most, ...recent.ids.map((id) => rowsOf(recent, id)));
    }
    expect(most).toBeLessThanOrEqual(RECENT_MS / CELL_MS + 2);
    const { tMs } = recent.columns('a/1');
    expect(tMs.at(-1)).toBeGreaterThan(dayMs - CELL_MS - 1);
    expect(tMs[0]).toBeGreaterThan(dayMs - RECENT_MS - 2 * CELL_MS);
  }, 60_000);

  it('do not grow in a day of a probe that comes and goes all the time either', () => {
    const recent = new Recent();
    for (let tMs = 0; tMs < 24 * 3_600_000; tMs += 1000) {
      recent.add('a/1', tMs, plate(100));
      recent.add('a/1', tMs + 300, { fault: 'open' });
      recent.add('a/1', tMs + 600, { fault: 'silent' });
    }
    expect(rowsOf(recent, 'a/1')).toBeLessThanOrEqual(ROWS_AT_MOST);
  });

  it('keep the lowest and the highest of what stands together', () => {
    const recent = new Recent();
    for (const [tMs, c] of [
      [0, 100],
      [500, 120],
      [900, 90],
      [CELL_MS, 101],
    ] as const)
      recent.add('a/1', tMs, plate(c));
    expect(recent.columns('a/1')).toMatchObject({ tMs: [0, CELL_MS], minC: [90, 101], maxC: [120, 101] });
  });

  it('break where there is no reading, whatever the reason, and say each once', () => {
    const recent = new Recent();
    recent.add('a/1', 0, plate(100));
    recent.add('a/1', 100, { fault: 'open' });
    recent.add('a/1', 200, { fault: 'open' });
    recent.add('a/1', 300, plate(99));
    recent.lose(5000, 'lost');
    expect(recent.columns('a/1')).toEqual({
      id: 'a/1',
      tMs: [0, 100, 300, 5000],
      minC: [100, null, 99, null],
      maxC: [100, null, 99, null],
      fault: [null, 'open', null, 'lost'],
    });
  });

  it('keep a gap that began before them and still holds', () => {
    const recent = new Recent();
    recent.add('a/1', 0, { fault: 'silent' });
    recent.add('a/1', RECENT_MS * 3, { fault: 'silent' });
    expect(recent.columns('a/1').fault).toEqual(['silent']);
  });

  it('take what was before them, without saying anything twice', () => {
    const recent = new Recent();
    recent.add('a/1', 10_000, plate(100));
    const columns = { minC: [80, 90, 999], maxC: [81, 91, 999], fault: [null, null, null] };
    recent.putBefore({ id: 'a/1', tMs: [-5000, 4000, 10_500], ...columns });
    recent.putBefore({ id: 'b/1', tMs: [-5000, 4000, 10_500], ...columns });
    expect(recent.columns('a/1').maxC).toEqual([81, 91, 100]);
    expect(recent.columns('b/1').maxC).toEqual([81, 91, 999]);
  });

  it('forget a probe that is gone', () => {
    const recent = new Recent();
    recent.add('a/1', 0, plate(1));
    recent.add('b/1', 0, plate(1));
    recent.keepOnly(new Set(['b/1']));
    expect(recent.ids).toEqual(['b/1']);
    expect(rowsOf(recent, 'a/1')).toBe(0);
  });
});
