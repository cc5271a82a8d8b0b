import { describe, expect, it } from 'vitest';
import { rejectCauses } from '../../../../daemon/probe/wire/reject.ts';
import { alarmKinds } from '../../../../shared/alarm/record.ts';
import { ironPhases } from '../../../../shared/iron/phase.ts';
import { standingSchema } from '../../../../shared/messages/live.ts';
import { faults } from '../../../../shared/thermometer/reading.ts';
import { alarmWords } from '../../../../shared/words/alarms.ts';
import * as coatTables from '../../../../shared/words/coats.ts';
import { faultWords } from '../../../../shared/words/faults.ts';
import { columnWords, formProblemWords, lineFormWords } from '../../../../shared/words/line-forms.ts';
import {
  commandWords,
  linkWords,
  noteWords,
  pageWords,
  recordingWords,
} from '../../../../shared/words/page.ts';
import { safetyWords } from '../../../../shared/words/safety.ts';
import { screenWords, soundWords, titleWords } from '../../../../shared/words/sound.ts';
import { choiceWords, deviceWords, rejectWords } from '../../../../shared/words/source.ts';
import {
  alarmPanelWords,
  ironWords,
  ladderWords,
  phaseWords,
  standingWords,
} from '../../../../shared/words/standing.ts';

const isSentence = (text: string): boolean => /^[A-Z].+[.]$/.test(text);

describe('the words of the page', () => {
  it('say of each alarm what it is, why, what happens otherwise and what to do', () => {
    expect(Object.keys(alarmWords).toSorted()).toEqual([...alarmKinds].toSorted());
    for (const kind of alarmKinds) {
      const { title, cause, consequence, action } = alarmWords[kind];
      expect(title).toMatch(/^[A-Z].*[^.]$/);
      expect([cause, consequence, action].filter((text) => !isSentence(text))).toEqual([]);
    }
    expect(new Set(alarmKinds.map((kind) => alarmWords[kind].title)).size).toBe(alarmKinds.length);
  });

  it('say of each fault what it is, what it means and what to do', () => {
    expect(Object.keys(faultWords).toSorted()).toEqual([...faults].toSorted());
    for (const fault of faults) {
      const { name, means, action } = faultWords[fault];
      expect(name).toMatch(/^[A-Z]/);
      expect([means, action].filter((text) => !isSentence(text))).toEqual([]);
    }
    expect(new Set(faults.map((fault) => faultWords[fault].name)).size).toBe(faults.length);
  });

  it('name every standing, phase and cause of a rejected line', () => {
    expect(Object.keys(standingWords).toSorted()).toEqual([...standingSchema.shape.kind.options].toSorted());
    expect(Object.keys(phaseWords).toSorted()).toEqual([...ironPhases].toSorted());
    expect(Object.keys(rejectWords).toSorted()).toEqual([...rejectCauses].toSorted());
  });

  it('never call a plate cool or safe', () => {
    const tables = [
      alarmWords,
      faultWords,
      commandWords,
      linkWords,
      noteWords,
      pageWords,
      recordingWords,
      safetyWords,
      soundWords,
      screenWords,
      titleWords,
    ];
    const more = [
      choiceWords,
      deviceWords,
      alarmPanelWords,
      ironWords,
      ladderWords,
      phaseWords,
      standingWords,
      formProblemWords,
      columnWords,
      [lineFormWords.kindMeans, lineFormWords.unchecked, lineFormWords.patternMeans],
    ];
    const texts = [...tables, ...more, coatTables].flatMap((table) => everyText(table));
    expect(texts.length).toBeGreaterThan(100);
    expect(texts.filter((text) => /\b(cool|safe|safely)\b/i.test(text))).toEqual([]);
  });
});

/** Every text in a table of words, those made by functions too. */
function everyText(words: unknown): string[] {
  if (typeof words === 'string') return [words];
  if (typeof words === 'function') return [String(words('one', 'two'))];
  return Object.values(words as Readonly<Record<string, unknown>>).flatMap((value) => everyText(value));
}
