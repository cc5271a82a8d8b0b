import { describe, expect, test } from 'vitest';
import type { AreaHeats } from '../../../../shared/heat/work/area-heat.ts';
import { areaHeatsOf } from '../../../../shared/heat/work/area-heats.ts';
import { capC, lowestStage } from '../../../../shared/heat/work/order.ts';
import type { SideId } from '../../../../shared/piece/piece.ts';
import { fToC } from '../../../../shared/units/temperature.ts';
import { heatAt, pieceOf, stages } from './demo.ts';

const piece = pieceOf(1, 3);
/** Heats where the cloth of the sides has had one lap of the initial shrink. */
const shrunk = (...sides: readonly SideId[]): AreaHeats => ({
  ...areaHeatsOf(piece, []),
  ...Object.fromEntries(
    piece.areas
      .filter((a) => sides.includes(a.side) && a.kind === 'cloth')
      .map((a) => [a.id, heatAt('initial', 1)]),
  ),
});

describe('the order of stages over both sides', () => {
  test('the first side is held under the second level until the other has had the initial shrink', () => {
    expect(capC(piece, shrunk(), stages, 1)).toBeCloseTo(fToC(285), 9);
    expect(capC(piece, shrunk(1), stages, 1)).toBeCloseTo(fToC(285), 9);
    expect(capC(piece, shrunk(1), stages, 2)).toBeNull();
    expect(capC(piece, shrunk(1, 2), stages, 1)).toBeNull();
  });

  test('one area of cloth without it is enough, and edges count for nothing', () => {
    const [area] = piece.areas.filter((a) => a.side === 2 && a.kind === 'cloth');
    if (area === undefined) throw new Error('no cloth');
    const heats = { ...shrunk(1, 2), [area.id]: heatAt('initial', 1) };
    expect(capC(piece, heats, stages, 1)).toBeNull();
    const { [area.id]: _, ...without } = heats;
    expect(capC(piece, without, stages, 1)).toBeCloseTo(fToC(285), 9);
    const edges = Object.fromEntries(
      piece.areas.filter((a) => a.kind === 'edge').map((a) => [a.id, heatAt('tack', 2)]),
    );
    expect(capC(piece, { ...shrunk(1), ...edges }, stages, 1)).toBeCloseTo(fToC(285), 9);
  });

  test('a higher stage counts as the initial shrink too', () => {
    const heats = Object.fromEntries(piece.areas.map((a) => [a.id, heatAt('final', 1)]));
    expect(capC(piece, heats, stages, 1)).toBeNull();
  });

  test('nothing is out of order on a piece of one side, or with one level', () => {
    expect(capC(pieceOf(1, 3, ['Outside']), {}, stages, 1)).toBeNull();
    expect(
      capC(
        piece,
        {},
        stages.filter((s) => s.id !== 'intermediate' && s.id !== 'final'),
        1,
      ),
    ).toBeNull();
    expect(capC(piece, {}, [], 1)).toBeNull();
    expect(lowestStage(stages)?.id).toBe('tack');
  });
});
