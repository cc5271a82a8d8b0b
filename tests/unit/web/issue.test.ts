import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { heatScheduleDraftSchema } from '../../../shared/heat/schedule.ts';
import { markCommandSchema, silenceSchema } from '../../../shared/messages/command.ts';
import { unattendedSchema } from '../../../shared/watch/attended.ts';
import { issuePath, issueSentence } from '../../../shared/words/issue.ts';

function sentences(schema: z.ZodType, value: unknown): string[] {
  const read = schema.safeParse(value, { reportInput: true });
  return read.success ? [] : read.error.issues.map((issue) => issueSentence(issue, 'the body'));
}

describe('what a schema refused, as a sentence', () => {
  it('names a missing field, and what it must be', () => {
    expect(sentences(silenceSchema, { kind: 'no-reading' })).toEqual(['"iron" is missing; it must be text.']);
  });

  it('names a wrong type and a value out of range', () => {
    expect(sentences(silenceSchema, { iron: 7, kind: 'no-reading', forS: 601 })).toEqual([
      '"iron" is 7; it must be text.',
      '"forS" is too big; it must be at most 600.',
    ]);
  });

  it('lists what may be chosen', () => {
    const [said] = sentences(silenceSchema, { iron: 'a', kind: 'fire' });
    expect(said).toMatch(/^"kind" is "fire"; it must be one of "over-limit", .*"not-recording"\.$/);
    expect(sentences(markCommandSchema, { mark: { kind: 'lap' } })).toEqual([
      '"mark.kind" is missing or not known; it must be one of "stage", "place", "dial", "typed", "note".',
    ]);
  });

  it('names fields that it does not know, and the whole', () => {
    expect(sentences(markCommandSchema, { mark: { kind: 'note', text: 'x', colour: 1 } })).toEqual([
      '"mark" has a field that is not known here: "colour".',
    ]);
    expect(sentences(markCommandSchema, 5)).toEqual(['the body is 5; it must be an object.']);
    expect(sentences(z.union([z.string(), z.null()]), 5)).toEqual([
      'the body is 5; it has none of the allowed forms.',
    ]);
  });

  it('says where in a structure, and counts characters and entries', () => {
    const stage = { id: 'a b', name: ' ', lowC: 1, targetC: 2, highC: 3, standing: '' };
    const said = sentences(heatScheduleDraftSchema, { ...draft, stages: [stage] });
    expect(said).toContain('"stages[0].id" is "a b": letters, digits, "_" and "-", at most 64 of them.');
    expect(said).toContain('"stages[0].name" is too small; it takes at least 1 character.');
    expect(sentences(heatScheduleDraftSchema, { ...draft, stages: [] })).toEqual([
      '"stages" is too small; it takes at least 1 entry.',
    ]);
    expect(issuePath(['a', 0, 'b', 'c', 1])).toBe('a[0].b.c[1]');
  });

  it('does not take a field for the object in which it does not fit', () => {
    expect(sentences(unattendedSchema, { reminderMin: 15, alarmMin: 10 })).toEqual([
      '"reminderMin" can’t be so: the reminder must come before the alarm.',
    ]);
  });

  it('cuts what is long', () => {
    const [said] = sentences(z.number(), 'x'.repeat(5000));
    expect(said?.length).toBeLessThan(120);
  });
});

const draft = {
  name: 'n',
  fabric: '',
  fabricLimitC: 190,
  cementLimitC: null,
  limitStanding: '',
  source: null,
};
