import { describe, expect, test } from 'vitest';
import { cellsOf } from '../../../shared/piece/cells.ts';
import { checkPiece } from '../../../shared/piece/check.ts';
import {
  type Edited,
  leftOut,
  merged,
  mirrored,
  renamed,
  withGrid,
  withTape,
} from '../../../shared/piece/edit.ts';
import { type Area, type PieceDraft, pieceDraftSchema } from '../../../shared/piece/piece.ts';
import { startingPiece } from '../../../shared/piece/starting.ts';

/** Demo data: an invented aeroplane. */
const flap = startingPiece('Left flap', 'spruce', ['Upper', 'Lower']);

function drafted(edited: Edited): PieceDraft {
  if (edited.kind === 'refused') throw new Error(edited.why);
  return edited.draft;
}
const whyOf = (edited: Edited): string => (edited.kind === 'refused' ? edited.why : 'done');
const named = (draft: PieceDraft, name: string, side = 1): Area => {
  const found = draft.areas.find((a) => a.name === name && a.side === side);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

describe('a starting piece', () => {
  test('has two ends, a middle and edge strips on each side, and fills its grid', () => {
    expect(pieceDraftSchema.parse(flap)).toEqual(flap);
    expect(checkPiece(flap)).toEqual([]);
    for (const side of [1, 2]) {
      const areas = flap.areas.filter((a) => a.side === side);
      expect(areas.filter((a) => a.kind === 'cloth').map((a) => a.name)).toEqual([
        'First end',
        'Middle',
        'Last end',
      ]);
      expect(areas.filter((a) => a.kind === 'edge')).toHaveLength(4);
      expect(areas.reduce((sum, a) => sum + cellsOf(a), 0)).toBe(flap.rows * flap.columns);
    }
  });

  test('of one side has areas on that alone', () => {
    const cover = startingPiece('Access cover', '', ['Outside']);
    expect(new Set(cover.areas.map((a) => a.side))).toEqual(new Set([1]));
    expect(checkPiece(cover)).toEqual([]);
  });
});

describe('a grid of bays', () => {
  test('makes sense at every size that there is, and fits the schema', () => {
    for (let rows = 1; rows <= 8; rows += 1)
      for (let columns = 1; columns <= 18; columns += 1) {
        const draft = drafted(withGrid(flap, rows, columns));
        expect(pieceDraftSchema.parse(draft)).toEqual(draft);
        expect(draft.areas.filter((a) => a.kind === 'cloth')).toHaveLength(2 * rows * columns);
        expect(draft.areas.filter((a) => a.side === 1).reduce((sum, a) => sum + cellsOf(a), 0)).toBe(
          draft.rows * draft.columns,
        );
      }
  });

  test('keeps the ids of edges, tapes and bays that stay where they are', () => {
    const taped = drafted(withTape(flap, 1, 'Rib 2', { row: 1, column: 7, rows: 8, columns: 1 }));
    const bays = drafted(withGrid(taped, 2, 9));
    for (const name of ['Upper edge', 'Lower edge', 'Edge at first end', 'Rib 2'])
      expect(named(bays, name).id).toBe(named(taped, name).id);
    expect(drafted(withGrid(bays, 2, 9))).toEqual(bays);
    // The ends and the middle lie as before, between other strips.
    const renewed = drafted(withGrid(drafted(renamed(flap, named(flap, 'Middle').id, 'Belly')), 1, 3));
    expect(named(renewed, 'Belly').id).toBe(named(flap, 'Middle').id);
    expect(drafted(withGrid(bays, 1, 3)).areas.find((a) => a.name === 'Middle' && a.side === 1)?.rows).toBe(
      8,
    );
  });

  test('does not bring back an edge that was left out', () => {
    const open = drafted(leftOut(flap, named(flap, 'Lower edge').id));
    expect(drafted(withGrid(open, 3, 3)).areas.filter((a) => a.name === 'Lower edge')).toHaveLength(1);
  });

  test('is refused where it cannot be, in words', () => {
    expect(whyOf(withGrid(flap, 0, 3))).toContain('1 to 8 rows');
    expect(whyOf(withGrid(flap, 2, 2.5))).toContain('1 to 18 columns');
    const [first] = flap.areas;
    if (first === undefined) throw new Error('no area');
    const odd: PieceDraft = {
      ...flap,
      areas: [
        ...flap.areas.filter((a) => a !== first),
        { ...first, kind: 'edge', columns: 1 },
        { ...first, id: 'rest', column: 2, columns: 5 },
      ],
    };
    expect(whyOf(withGrid(odd, 2, 2))).toContain('lies between the bays');
  });
});

describe('merging', () => {
  const bays = drafted(withGrid(flap, 2, 6));
  const bay = (name: string, side = 1) => named(bays, name, side).id;

  test('makes one area of those that fill a rectangle, with a new id', () => {
    const draft = drafted(merged(bays, [bay('Bay A1'), bay('Bay A2'), bay('Bay B1'), bay('Bay B2')]));
    const one = named(draft, 'Bay A1');
    expect(one).toMatchObject({ row: 1, column: 1, rows: 8, columns: 6 });
    expect(bays.areas.some((a) => a.id === one.id)).toBe(false);
    expect(draft.areas).toHaveLength(bays.areas.length - 3);
  });

  test.each([
    [[bay('Bay A1')], 'two areas'],
    [[bay('Bay A1'), bay('Bay B2')], 'rectangle'],
    [[bay('Bay A1'), bay('Bay A3')], 'rectangle'],
    [[bay('Bay A1'), bay('Bay A1', 2)], 'one side'],
    [[bay('Bay A1'), bay('Upper edge')], 'one kind'],
    [[bay('Bay A1'), 'nowhere'], '"nowhere"'],
  ])('is refused where it cannot be (%#)', (ids, why) => {
    expect(whyOf(merged(bays, ids))).toContain(why);
  });
});

describe('other changes', () => {
  test('leaving out takes one area, but never the last cloth of a side', () => {
    const middle = named(flap, 'Middle').id;
    const two = drafted(leftOut(flap, middle));
    expect(two.areas.map((a) => a.id)).toEqual(flap.areas.map((a) => a.id).filter((id) => id !== middle));
    const one = drafted(leftOut(two, named(two, 'First end').id));
    expect(whyOf(leftOut(one, named(one, 'Last end').id))).toContain('"Upper"');
    expect(whyOf(leftOut(flap, 'nowhere'))).toContain('"nowhere"');
  });

  test('a name is trimmed, and has to be one', () => {
    const { id } = named(flap, 'Middle');
    expect(named(drafted(renamed(flap, id, '  Wing walk ')), 'Wing walk').id).toBe(id);
    expect(whyOf(renamed(flap, id, '  '))).toContain('1 to 60');
    expect(whyOf(renamed(flap, 'nowhere', 'X'))).toContain('"nowhere"');
  });

  test('tapes lie over anything inside the grid, also twice in one place', () => {
    const place = { row: 0, column: 3, rows: 10, columns: 1 };
    const once = drafted(withTape(flap, 2, 'Tape', place));
    const twice = drafted(withTape(once, 2, 'Tape', place));
    expect(new Set(twice.areas.map((a) => a.id)).size).toBe(flap.areas.length + 2);
    expect(whyOf(withTape(flap, 1, 'Tape', { ...place, rows: 11 }))).toContain('10 rows');
    expect(whyOf(withTape(flap, 1, 'Tape', { ...place, column: 25 }))).toContain('20 columns');
    expect(whyOf(withTape(flap, 1, '', place))).toContain('1 to 60');
    const single = startingPiece('Cover', '', ['Outside']);
    expect(whyOf(withTape(single, 2, 'Tape', place))).toContain('side 2');
  });

  test('a piece mirrored twice is as it was', () => {
    const odd = drafted(
      merged(drafted(withGrid(flap, 1, 6)), [...ids(drafted(withGrid(flap, 1, 6)), ['Bay 1', 'Bay 2'])]),
    );
    const right = drafted(mirrored(odd, 'Right flap'));
    expect(right.name).toBe('Right flap');
    expect(named(right, 'Bay 1').column).toBe(13);
    expect(named(right, 'Edge at last end').column).toBe(right.columns - 1);
    expect(drafted(mirrored(right, 'Left flap'))).toEqual(odd);
    expect(whyOf(mirrored(odd, ''))).toContain('1 to 60');
  });
});

const ids = (draft: PieceDraft, names: readonly string[]): readonly string[] =>
  names.map((name) => named(draft, name).id);

describe('a map that makes no sense is told what would be right', () => {
  const [first, second] = flap.areas;
  if (first === undefined || second === undefined) throw new Error('no areas');
  const faults = (change: Partial<PieceDraft>) =>
    checkPiece({ ...flap, ...change }).map(({ path, message }) => `${path}: ${message}`);

  test.each<[string, Partial<PieceDraft>, string]>([
    ['a side that is not there', { sides: ['Upper'] }, 'areas.7.side: "First end" is on side 2'],
    ['beyond the last column', { columns: 19 }, 'areas.3.column: '],
    ['beyond the last row', { rows: 9 }, 'areas.6.row: "Lower edge" goes beyond the grid of 9 rows'],
    ['an id twice', { areas: [...flap.areas, { ...first, kind: 'tape' }] }, 'areas.14.id: "1-cloth'],
    ['cloth over cloth', { areas: [...flap.areas, { ...first, id: 'more' }] }, 'areas.14.row: "First end"'],
    [
      'no cloth on a side',
      { areas: flap.areas.filter((a) => a.side === 2 || a.kind !== 'cloth') },
      'sides.0: "Upper" has no area of open cloth',
    ],
  ])('%s', (_, change, said) => {
    expect(faults(change).some((text) => text.startsWith(said))).toBe(true);
  });
});
