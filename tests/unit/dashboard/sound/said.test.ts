import { describe, expect, it } from 'vitest';
import { firstChoices, readChoices } from '../../../../dashboard/sound/choices.ts';
import { soundIsDue } from '../../../../dashboard/sound/said.ts';
import { SOUND_HOLDS_MS, SOUND_SAID_EVERY_MS } from '../../../../shared/messages/hearing.ts';

describe('what a page says of its sound', () => {
  it('is nothing over a new connection without sound', () => {
    expect(soundIsDue(false, null, 0)).toBe(false);
  });

  it('is said at once at every change', () => {
    expect(soundIsDue(true, null, 0)).toBe(true);
    expect(soundIsDue(false, { armed: true, atMs: 0 }, 1)).toBe(true);
    expect(soundIsDue(true, { armed: false, atMs: 0 }, 1)).toBe(true);
    expect(soundIsDue(false, { armed: false, atMs: 0 }, 1e9)).toBe(false);
  });

  it('is said again while it runs, in time to count on', () => {
    const said = { armed: true, atMs: 1000 };
    expect(soundIsDue(true, said, 1000 + SOUND_SAID_EVERY_MS - 1)).toBe(false);
    expect(soundIsDue(true, said, 1000 + SOUND_SAID_EVERY_MS)).toBe(true);
    expect(SOUND_SAID_EVERY_MS * 2).toBeLessThan(SOUND_HOLDS_MS);
  });
});

describe('the choices about sound', () => {
  it('are read as they were kept', () => {
    const chosen = { wanted: true, loudness: 'low', tick: true } as const;
    expect(readChoices(JSON.stringify(chosen))).toEqual(chosen);
  });

  it.each([null, '', '{', 'null', '{"wanted":"yes"}', '{"wanted":true,"loudness":"deafening","tick":true}'])(
    'are the first ones where %s was kept',
    (text) => {
      expect(readChoices(text)).toEqual(firstChoices);
      expect(firstChoices.wanted).toBe(false);
    },
  );
});
