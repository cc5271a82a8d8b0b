import { afterEach, describe, expect, it } from 'vitest';
import { isPedal, pedal, pedalKey } from '../../../../dashboard/setup/screen/pedal.ts';

const pressed = (key: string, over: Partial<KeyboardEvent> = {}) =>
  ({
    key,
    ctrlKey: false,
    altKey: false,
    metaKey: false,
    repeat: false,
    defaultPrevented: false,
    ...over,
  }) as KeyboardEvent;

afterEach(() => {
  pedal.value = null;
});

describe('a pedal', () => {
  it.each(['Tab', 'Enter', ' ', 'Escape', 'ArrowDown', 'Shift', 'Control', 'Unidentified'])(
    'can’t be %j: that works the page, or is held with others',
    (key) => expect(pedalKey(pressed(key))).toBeNull(),
  );

  it('is any other key, a letter whether it is written large or small', () => {
    expect(['PageDown', 'F13', 'b', 'B'].map((key) => pedalKey(pressed(key)))).toEqual([
      'PageDown',
      'F13',
      'b',
      'b',
    ]);
    expect(pedalKey(pressed('b', { ctrlKey: true }))).toBeNull();
  });

  it('counts once however long it is held, and never where none is taught', () => {
    expect(isPedal(pressed('PageDown'), false)).toBe(false);
    pedal.value = 'PageDown';
    expect(isPedal(pressed('PageDown'), false)).toBe(true);
    expect(isPedal(pressed('PageDown', { repeat: true }), false)).toBe(false);
    expect(isPedal(pressed('PageUp'), false)).toBe(false);
  });

  it('leaves letters to a field that is typed into; any other key works there too', () => {
    pedal.value = 'b';
    expect([isPedal(pressed('b'), false), isPedal(pressed('b'), true)]).toEqual([true, false]);
    pedal.value = 'F9';
    expect(isPedal(pressed('F9'), true)).toBe(true);
  });
});
