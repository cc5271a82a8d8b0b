import { describe, expect, it } from 'vitest';
import { requestIds } from '../../../../dashboard/link/request-ids.ts';

const counted = () => {
  let count = 0;
  return requestIds(() => `id-${(count += 1)}`);
};
const points = [{ at: '2026-03-04T14:00:00Z', airC: 20, rhPct: null }];

describe('ids of requests', () => {
  it('are the same for a retry of the same', () => {
    const ids = counted();
    expect([ids.idOf(points), ids.idOf(structuredClone(points))]).toEqual(['id-1', 'id-1']);
  });

  it('are others for what differs from what was sent last, wherever that has got to', () => {
    const ids = counted();
    expect([ids.idOf([]), ids.idOf(points), ids.idOf([]), ids.idOf([])]).toEqual([
      'id-1',
      'id-2',
      'id-3',
      'id-3',
    ]);
  });

  it('are others for the same once it has arrived', () => {
    const ids = counted();
    const first = ids.idOf([]);
    ids.arrived();
    expect(ids.idOf([])).not.toBe(first);
  });
});
