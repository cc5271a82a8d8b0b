import { describe, expect, it } from 'vitest';
import { neighbour, template, tracksOf, uncovered } from '../../../../dashboard/piece/tracks.ts';
import { leftAileron, wingPanel } from '../../../fixtures/pieces.ts';

const upper = leftAileron.areas.filter((area) => area.side === 1);
const named = (name: string) => {
  const found = upper.find((area) => area.name === name);
  if (found === undefined) throw new RangeError(name);
  return found;
};

describe('the drawing of a side', () => {
  it('has lines only where an area begins or ends, and puts each area between its own', () => {
    const { rows, columns, place } = tracksOf(leftAileron, upper);
    expect(rows).toEqual([1, 8, 1]);
    expect(columns).toEqual([1, 6, 2, 1, 3, 6, 1]);
    expect(place(named('leading edge'))).toEqual({ gridRow: '1 / 2', gridColumn: '1 / 8' });
    expect(place(named('middle'))).toEqual({ gridRow: '2 / 3', gridColumn: '3 / 6' });
    expect(place(named('rib tape 3'))).toEqual({ gridRow: '2 / 3', gridColumn: '4 / 5' });
  });

  it('draws a strip as narrow as can be touched, and shares the rest by cells', () => {
    expect(template([1, 6, 6, 1])).toBe(
      'var(--cell) minmax(var(--cell), 6fr) minmax(var(--cell), 6fr) var(--cell)',
    );
    expect(template([1, 1, 1])).toBe(Array(3).fill('minmax(var(--cell), 1fr)').join(' '));
  });

  it('writes an area’s words where no tape covers them', () => {
    const tape = named('rib tape 3');
    expect(uncovered(named('middle'), [tape])).toMatchObject({ column: 10, columns: 3, row: 1, rows: 8 });
    expect(uncovered(named('root end'), [tape])).toBe(named('root end'));
    expect(uncovered(tape, [tape])).toBe(tape);
  });
});

describe('going on by arrow keys', () => {
  it('leads to the area that lies there, and nowhere where none does', () => {
    const from = (name: string, along: 'row' | 'column', step: 1 | -1) =>
      neighbour(
        named(name),
        upper.filter((area) => area.kind !== 'tape'),
        along,
        step,
      )?.name ?? null;
    expect(from('root end', 'column', 1)).toBe('middle');
    expect(from('root end', 'column', -1)).toBe('root edge');
    expect(from('middle', 'row', -1)).toBe('leading edge');
    expect(from('middle', 'row', 1)).toBe('trailing edge');
    expect(from('root edge', 'column', -1)).toBeNull();
  });

  it('comes through every column of a grid of 200 bays, one at a time', () => {
    const bays = wingPanel.areas.filter((area) => area.side === 1);
    let at = bays[60] ?? null;
    const columns: number[] = [];
    while (at !== null) {
      columns.push(at.column);
      at = neighbour(at, bays, 'column', 1);
    }
    expect(columns).toEqual(Array.from({ length: 20 }, (_, i) => i));
  });
});
