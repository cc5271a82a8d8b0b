import { describe, expect, it } from 'vitest';
import { DOUBLE_MS, type PedalActs, type Pressed, pressed } from '../../../../dashboard/piece/pedal-work.ts';

/** Presses a pedal at these moments, ms, and tells what was said. */
function press(atMs: readonly number[], over: Partial<PedalActs> = {}): readonly string[] {
  const said: string[] = [];
  const acts: PedalActs = {
    answerAlarm: () => false,
    next: () => {
      said.push('next');
      return `c${said.length}`;
    },
    undoNext: (id) => said.push(`undo ${id}`),
    undo: () => said.push('undo'),
    ...over,
  };
  atMs.reduce<Pressed | null>((before, at) => pressed(before, at, acts), null);
  return said;
}

describe('a pedal', () => {
  it('says "next" at once, and again at the next press', () => {
    expect(press([1000])).toEqual(['next']);
    expect(press([1000, 1001 + DOUBLE_MS])).toEqual(['next', 'next']);
  });

  it('pressed twice takes back its own "next" and then the last mark, as the button of the device does', () => {
    expect(press([1000, 1000 + DOUBLE_MS])).toEqual(['next', 'undo c1', 'undo']);
  });

  it('begins anew after a double press', () => {
    expect(press([0, 200, 400])).toEqual(['next', 'undo c1', 'undo', 'next']);
  });

  it('answers an alarm instead, and marks nothing with that press', () => {
    expect(press([0], { answerAlarm: () => true })).toEqual([]);
    expect(press([0, 200], { answerAlarm: () => true })).toEqual(['undo']);
  });

  it('with no piece in hand takes back no "next" that was never said', () => {
    expect(press([0, 200], { next: () => null })).toEqual(['undo']);
  });
});
