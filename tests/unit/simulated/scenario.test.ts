import { describe, expect, it } from 'vitest';
import { conditionsOf, passes, type Scenario } from '../../../daemon/probe/simulated/scenario.ts';

const scenario: Scenario = {
  name: 'A small one',
  ambientC: 21,
  lengthS: 100,
  turns: [
    { atS: 5, dialC: 120 },
    { atS: 10, place: 'on-work' },
    { atS: 20, dialC: null, place: 'lifted' },
  ],
  faults: [
    { fromS: 12, toS: 14, kind: 'open' },
    { fromS: 13, toS: 15, kind: 'silence' },
  ],
};

const conditionsAt = (scenario: Scenario, tS: number) => conditionsOf(scenario)(tS);
const faultsAt = (tS: number) => conditionsAt(scenario, tS).faults;

describe('a scenario', () => {
  it('begins on the rest, switched off', () => {
    expect(conditionsAt(scenario, 0)).toEqual({
      dialC: null,
      place: 'on-rest',
      still: false,
      draws: 1,
      faults: [],
    });
  });

  it('keeps what a turn does not name', () => {
    expect(conditionsAt(scenario, 5)).toMatchObject({ dialC: 120, place: 'on-rest' });
    expect(conditionsAt(scenario, 10)).toMatchObject({ dialC: 120, place: 'on-work' });
    expect(conditionsAt(scenario, 99.9)).toMatchObject({ dialC: null, place: 'lifted' });
  });

  it('has each fault from its start up to its end, together where they overlap', () => {
    expect(faultsAt(11.9)).toEqual([]);
    expect(faultsAt(12)).toEqual(['open']);
    expect(faultsAt(13)).toEqual(['open', 'silence']);
    expect(faultsAt(14)).toEqual(['silence']);
    expect(faultsAt(15)).toEqual([]);
  });

  it('begins again after its length', () => {
    for (const tS of [0, 5, 12, 50]) {
      expect(conditionsAt(scenario, tS + 300)).toEqual(conditionsAt(scenario, tS));
    }
  });

  it('makes passes with lifts between them', () => {
    expect(passes(40, 2, 30, 6)).toEqual([
      { atS: 40, place: 'on-work' },
      { atS: 70, place: 'lifted' },
      { atS: 76, place: 'on-work' },
      { atS: 106, place: 'lifted' },
    ]);
  });
});
