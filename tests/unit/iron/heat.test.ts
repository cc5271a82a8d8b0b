import { describe, expect, test } from 'vitest';
import { coldIron, type IronHeat, judgeHeat } from '../../../shared/iron/heat.ts';

function changes(values: readonly (readonly [tS: number, hottestC: number])[]): string[] {
  let heat: IronHeat = coldIron;
  return values.flatMap(([tS, c]) => {
    const judged = judgeHeat(heat, tS * 1000, c);
    heat = judged.heat;
    return judged.change === null ? [] : [`${judged.change}@${tS}`];
  });
}

const every = (fromS: number, toS: number, c: number) =>
  Array.from({ length: toS - fromS }, (_, i) => [fromS + i, c] as const);

describe('a session is due from hot to cold', () => {
  test('hot from 45 °C on, once', () => {
    expect(changes([...every(0, 5, 44.9), ...every(5, 60, 45)])).toEqual(['hot@5']);
  });

  test('cold once all was measured under 43 °C for a minute', () => {
    expect(changes([[0, 100], ...every(1, 70, 42.9)])).toEqual(['hot@0', 'cold@61']);
    expect(changes([[0, 100], ...every(1, 60, 42.9), [60, 43], ...every(61, 121, 42)])).toEqual(['hot@0']);
  });

  test('two readings a minute apart don’t measure a minute of cold', () => {
    expect(
      changes([
        [0, 100],
        [1, 30],
        [70, 30],
      ]),
    ).toEqual(['hot@0']);
  });
});
