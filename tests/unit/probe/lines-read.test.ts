import { describe, expect, it } from 'vitest';
import { withChecksum } from '../../../daemon/probe/wire/checksum.ts';
import { linesRead } from '../../../daemon/probe/wire/forms/lines-read.ts';
import { type LineForm, linesReadSchema } from '../../../shared/messages/line-form.ts';

const read = async (form: LineForm, ...lines: readonly string[]) =>
  linesReadSchema.parse(
    await linesRead(lines, { form, deviceId: 'dev', unitOf: (probe) => (probe === 'dev/f' ? '°F' : '°C') }),
  );

const protocol: LineForm = { kind: 'protocol' };

const says = async (form: LineForm, line: string): Promise<string | undefined> =>
  (await read(form, line)).lines[0]?.says;

describe('what was understood of a line', () => {
  it.each([
    ['t=121.4 ms=512200', 'probe 1: 121.4 °C, device clock 512.2 s'],
    ['p=f t=250 n=3 b=2', 'probe f: 250 °F, number 3, button pressed twice'],
    ['p=tip uv=6138 cj=24.5 g=0.02', 'probe tip: 6138 µV with the cold junction at 24.5 °C, motion 0.02 g'],
    ['p=air ta=21.5 rh=44', 'probe air: shop air 21.5 °C, humidity 44 %'],
    ['f=o', 'probe 1: fault: open'],
    ['t=nan', 'probe 1: no number, which counts as a fault'],
    ['id=bench-7 fw=1.2', 'the board about itself: id bench-7, fw 1.2'],
    ['12.3;121,4;0', 'not used: not in a form that is known'],
  ])('is said of pairs: %s', async (line, words) => {
    expect(await says(protocol, line)).toBe(words);
  });

  it('is said of each probe in columns, and of what was wrong with them', async () => {
    const form: LineForm = {
      kind: 'columns',
      separator: 'semicolon',
      columns: [
        { is: 't', probe: 'a' },
        { is: 't', probe: 'b' },
      ],
    };
    expect(await says(form, '20,5;21')).toBe('probe a: 20.5 °C; probe b: 21 °C');
    expect(await says(form, '20,5')).toBe('not used: not in a form that is known (it has 1 column, not 2)');
  });

  it('is nothing while the form can’t be used; the lines are shown all the same', async () => {
    const answer = await read({ kind: 'pattern', pattern: '(' }, 'T=1\xb0', 'x');
    expect(answer.problem).toMatchObject({ where: 'pattern' });
    expect(answer.lines).toEqual([
      { raw: 'T=1\\xb0', taken: false, says: '' },
      { raw: 'x', taken: false, says: '' },
    ]);
  });

  it('tells lines that nothing guards', async () => {
    expect((await read(protocol, 't=1', withChecksum('t=2'))).checksummed).toBe(false);
    expect((await read(protocol, withChecksum('t=1'), 'rubbish')).checksummed).toBe(true);
  });
});

describe('the likely separator', () => {
  it.each([
    ['semicolon', ['12.3;121,4;0', '12.3;121,5;0']],
    ['comma', ['12.3,121.4,0']],
    ['comma', ['# header', 'A,12.3,121.4', 'A,12.3,121.5']],
    ['tab', ['12,3\t121,4']],
    ['space', ['12.3 121.4']],
    ['semicolon', [withChecksum('12.3;121,4')]],
    [null, ['121.4']],
    [null, ['rst:0x1 (POWERON)']],
    [null, []],
  ] as const)('is a %s in %j', async (separator, lines) => {
    expect((await read(protocol, ...lines)).likelySeparator).toBe(separator);
  });

  it('gives the cells of the newest line that is like most; of one with as many columns as are named, where there is one', async () => {
    expect((await read(protocol, 'boot', '1;2;3', '4;5;6')).cells).toEqual(['1', '2', '3']);
    expect((await read(protocol)).cells).toEqual([]);
    expect((await read(protocol, '1; 2,5*')).cells).toEqual(['1', '2,5*']);
    const form: LineForm = {
      kind: 'columns',
      separator: 'semicolon',
      columns: [
        { is: 'ignored', probe: '1' },
        { is: 't', probe: '1' },
      ],
    };
    expect((await read(form, 'boot', '1;2', '3;4')).cells).toEqual(['1', '2']);
    expect((await read(form, '1;2;3')).cells).toEqual(['1', '2', '3']);
  });
});
