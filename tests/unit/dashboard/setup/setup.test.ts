import { describe, expect, it } from 'vitest';
import { rejectCauses } from '../../../../daemon/probe/wire/reject.ts';
import { diagnosis } from '../../../../dashboard/setup/device/diagnosis.ts';
import { moveTo, moveToNew } from '../../../../dashboard/setup/iron/moves.ts';
import { unitQuestion } from '../../../../dashboard/setup/unit-question.ts';
import type { Iron } from '../../../../shared/iron/iron.ts';
import type { ProbeSettings } from '../../../../shared/thermometer/probe.ts';
import { unknownProbe } from '../../../../shared/thermometer/probe.ts';
import * as setupTables from '../../../../shared/words/setup.ts';
import { deviceSetupWords } from '../../../../shared/words/setup.ts';
import { device, probe } from '../../../fixtures/scenes.ts';

const big: Iron = {
  id: 'big',
  name: 'Big',
  probes: ['a/1', 'a/2'],
  scheduleId: 's',
  confidence: 0.95,
  simulated: false,
};
const small: Iron = { ...big, id: 'small', name: 'Small', probes: ['a/3'], scheduleId: 't' };

describe('a probe that moves', () => {
  it('goes to another iron, and back to the one it sat on', () => {
    expect(moveTo([big, small], 'a/2', 'small')).toEqual({
      to: {
        id: 'small',
        draft: { name: 'Small', probes: ['a/3', 'a/2'], scheduleId: 't', confidence: 0.95 },
      },
      back: { id: 'big', draft: { name: 'Big', probes: ['a/1', 'a/2'], scheduleId: 's', confidence: 0.95 } },
    });
  });

  it('stays where it sits, or where there is no room', () => {
    const full = { ...small, probes: Array.from({ length: 8 }, (_, i) => `b/${i}`) };
    expect(moveTo([big, small], 'a/1', 'big')).toBeNull();
    expect(moveTo([big, full], 'a/1', 'small')).toBeNull();
    expect(moveTo([big], 'z/1', 'big')).toBeNull();
  });

  it('gets an iron of its own, unless it is alone already', () => {
    const made = { id: 'new', name: 'Iron with toe' };
    expect(moveToNew([big, small], 'a/1', made)?.to).toEqual({
      id: 'new',
      draft: { name: 'Iron with toe', probes: ['a/1'], scheduleId: 's', confidence: 0.95 },
    });
    expect(moveToNew([big, small], 'a/3', made)).toBeNull();
  });

  it('takes no sole plate along to another iron, and leaves that of each as it was', () => {
    const told = { ...big, soleCm2: 120 };
    const own = moveToNew([told, small], 'a/1', { id: 'new', name: 'New' });
    expect(own?.to.draft).not.toHaveProperty('soleCm2');
    expect(own?.back.draft.soleCm2).toBe(120);
    expect(moveTo([told, small], 'a/3', 'big')?.to.draft.soleCm2).toBe(120);
  });
});

describe('a device', () => {
  it.each([
    ['lost', { link: 'lost', detail: '' }, /Plug the cable back in/],
    ['without permission', { link: 'lost', detail: 'Join the group "dialout".' }, /dialout/],
    ['starting', { link: 'starting' }, /wait two or three seconds/],
    ['that says nothing', { linesAccepted: 0, rejected: [] }, /nothing has come/],
    [
      'at another speed',
      { linesAccepted: 0, rejected: [{ cause: 'not-ascii', count: 4, lastRaw: '\\x80' }] },
      /none could be used yet.*speed/,
    ],
    [
      'with a bad cable',
      { linesAccepted: 90, rejected: [{ cause: 'checksum', count: 10, lastRaw: 'p=' }] },
      /10 of 100 lines could not be used.*cable/,
    ],
    ['that is well', { linesAccepted: 5000 }, /Its lines are used/],
  ] as const)('%s is told what to do', (_, over, sentence) => {
    const { sentences, well } = diagnosis(device({ ...over }));
    expect(sentences.join(' ')).toMatch(sentence);
    expect(well).toBe(/wait|are used/.test(String(sentence)));
  });

  it('has advice for every cause of rejection', () => {
    expect(Object.keys(deviceSetupWords.byCause).toSorted()).toEqual([...rejectCauses].toSorted());
  });
});

describe('the question of the unit', () => {
  const settings: ProbeSettings = {
    id: 'bench-board/1',
    label: 'toe',
    ...unknownProbe,
  };
  const iron = { phase: 'unknown' } as const;
  const from = device({ lastLine: 'p=1 t=70.2*00' });
  const reads = (plateC: number, over = {}) => ({
    settings,
    now: { ...probe(70), plateC, trend: 'steady' as const },
    iron,
    device: from,
    hottestC: plateC,
    ...over,
  });

  it('is asked of a plate that stands at 70 "degC" and may be cold, and of a frosty one in degF', () => {
    expect(unitQuestion(reads(70))).toMatchObject({ number: '70', instead: 'degF' });
    for (const form of [
      { kind: 'columns', separator: 'tab', columns: [{ is: 't', probe: '1' }] },
      { kind: 'pattern', pattern: 'T=(?P<t>.*)' },
    ] as const)
      expect(unitQuestion(reads(70, { form, device: device({ lastLine: 'x' }) }))).not.toBeNull();
    expect(unitQuestion(reads(70, { device: device({ lastLine: '70.5' }) }))).not.toBeNull();
    const asF = { settings: { ...settings, unit: 'degF' as const } };
    expect(unitQuestion(reads((21 - 32) / 1.8, asF))).toMatchObject({ number: '21', instead: 'degC' });
    expect(unitQuestion(reads(21, asF))).toBeNull();
  });

  it.each<[string, Parameters<typeof unitQuestion>[0]]>([
    ['at room temperature', reads(21)],
    ['hot', reads(120)],
    ['on its way', reads(70, { iron: { phase: 'warming' } })],
    ['that has been hot', reads(70, { hottestC: 150 })],
    ['of a device that sends microvolts', reads(70, { device: device({ lastLine: 'p=1 uv=812 cj=21*00' }) })],
    [
      'whose columns are no degrees',
      reads(70, { form: { kind: 'columns', separator: 'tab', columns: [{ is: 'uv', probe: '1' }] } }),
    ],
    ['that moves', reads(70, { now: { ...probe(70), plateC: 70, trend: 'falling' } })],
    ['without a reading', reads(70, { now: probe('open') })],
  ])('is not asked of one %s', (_, facts) => expect(unitQuestion(facts)).toBeNull());
});

describe('the words of setup', () => {
  it('never call a plate cool or safe', () => {
    const texts = everyText(setupTables);
    expect(texts.length).toBeGreaterThan(120);
    expect(texts.filter((text) => /\b(cool|safe|safely)\b/i.test(text))).toEqual([]);
  });
});

function everyText(words: unknown): string[] {
  if (typeof words === 'string') return [words];
  if (typeof words === 'function') return [String(words('one', 'two'))];
  return Object.values(words as Readonly<Record<string, unknown>>).flatMap(everyText);
}
