import { describe, expect, it } from 'vitest';
import { withChecksum } from '../../../daemon/probe/wire/checksum.ts';
import type { LineReader } from '../../../daemon/probe/wire/forms/form-read.ts';
import { readerFor } from '../../../daemon/probe/wire/forms/reader.ts';
import { parseLine } from '../../../daemon/probe/wire/line.ts';
import {
  type Column,
  type LineForm,
  lineFormSchema,
  type Separator,
} from '../../../shared/messages/line-form.ts';
import { emptySample, type Sample } from '../../../shared/thermometer/sample.ts';

/** `t`, `uv@tip`, `-`: what a column is, and of which probe. */
const column = (text: string): Column => {
  const [is = '', probe = '1'] = text.split('@');
  return { is: (is === '-' ? 'ignored' : is) as Column['is'], probe };
};

const columns = (separator: Separator, ...places: readonly string[]): LineForm => ({
  kind: 'columns',
  separator,
  columns: places.map(column),
});

const pattern = (text: string): LineForm => ({ kind: 'pattern', pattern: text });

async function reader(form: LineForm): Promise<LineReader> {
  const read = await readerFor(form);
  if (read.kind === 'problem') throw new Error(read.problem.message);
  return read.reader;
}

async function problem(form: LineForm): Promise<string | null> {
  const read = await readerFor(form);
  return read.kind === 'problem' ? `${read.problem.where}: ${read.problem.message}` : null;
}

/** What each probe's sample carries of a line; or why it was not taken. */
async function carried(form: LineForm, line: string): Promise<unknown> {
  const parsed = (await reader(form)).read(line, 'dev');
  if (parsed.kind === 'hello') return 'hello';
  if (parsed.kind === 'rejected') return `${parsed.cause}: ${parsed.why ?? ''}`;
  return Object.fromEntries(
    [parsed, ...(parsed.others ?? [])].map(({ sample, name, seq }) => [
      name,
      { ...onlyCarried(sample, name), ...(seq === null ? {} : { seq }) },
    ]),
  );
}

function onlyCarried(sample: Sample, name: string): Partial<Sample> {
  const nothing: Sample = emptySample(`dev/${name}`);
  return Object.fromEntries(
    Object.entries(sample).filter(
      ([key, value]) => JSON.stringify(value) !== JSON.stringify(nothing[key as keyof Sample]),
    ),
  );
}

describe('pairs, or a number alone', () => {
  it('are read as ever', async () => {
    const { form, read } = await reader({ kind: 'protocol' });
    expect(form).toEqual({ kind: 'protocol' });
    for (const line of ['p=1 n=42 t=150.25', '150.25', 't=1,2', 'id=x'])
      expect(read(line, 'dev')).toEqual(parseLine(line, 'dev'));
  });
});

describe('columns', () => {
  it.each([
    ['semicolon', '12.3;121,4;0', { tC: 121.4 }],
    ['semicolon', ' 12.3 ; 121.4 ;0 ', { tC: 121.4 }],
    ['comma', '12.3,121.4,1', { tC: 121.4, button: 1 }],
    ['tab', '12.3\t-0,5\t2', { tC: -0.5, button: 2 }],
    ['space', '  12.3   121.4 0', { tC: 121.4 }],
  ] as const)('with a %s: %s', async (separator, line, sample) => {
    expect(await carried(columns(separator, '-', 't', 'b'), line)).toEqual({ 1: sample });
  });

  it('carry everything that the protocol’s keys do', async () => {
    const form = columns('semicolon', 'n', 'ms', 'uv@tip', 'cj@tip', 'g@tip', 'ta@air', 'rh@air');
    expect(await carried(form, '65537;512200;6138;24,5;0.02;21.5;44')).toEqual({
      tip: { emfUv: 6138, coldJunctionC: 24.5, deviceMs: 512_200, motionG: 0.02, seq: 1 },
      air: { deviceMs: 512_200, airC: 21.5, rhPct: 44, seq: 1 },
    });
  });

  it('carry a humidity as it came, whether air can be like that or not', async () => {
    const form = columns('comma', 't', 'rh');
    expect(await carried(form, '150,100.4')).toEqual({ 1: { tC: 150, rhPct: 100.4 } });
    expect(await carried(form, '150,134')).toEqual({ 1: { tC: 150, rhPct: 134 } });
  });

  it('give several probes a sample each, with one cold junction for them all', async () => {
    const form = columns('comma', 'cj@toe', 'uv@toe', 'uv@heel', 't@air');
    expect(await carried(form, '25,6138,6200,21')).toEqual({
      toe: { emfUv: 6138, coldJunctionC: 25 },
      heel: { emfUv: 6200, coldJunctionC: 25 },
      air: { tC: 21 },
    });
  });

  it('count as a fault where no number of a thermocouple stands, and carry nothing where another value is left out', async () => {
    expect(await carried(columns('semicolon', 't', 'g'), ';')).toEqual({ 1: { faults: ['not-a-number'] } });
    expect(await carried(columns('comma', 't', 't@2'), 'nan,20')).toEqual({
      1: { faults: ['not-a-number'] },
      2: { tC: 20 },
    });
  });

  it.each([
    ['12.3;121,4', 'malformed: it has 2 columns, not 3'],
    ['12.3', 'malformed: it has 1 column, not 3'],
    ['12.3;121,4;0;0', 'malformed: it has 4 columns, not 3'],
    ['12.3;1,121,4;0', 'bad-value: column 2 is “1,121,4”'],
    ['12.3;1.121,4;0', 'bad-value: column 2 is “1.121,4”'],
    ['12.3;12x4;0', 'bad-value: column 2 is “12x4”'],
    ['12.3;1e3;0', 'bad-value: column 2 is “1e3”'],
    ['12.3;121;3', 'bad-value: column 3 is “3”'],
    ['12.3;121\x01;0', 'not-ascii: '],
    ['12.3;121,4;0*00', 'checksum: '],
    [`${'1'.repeat(250)};1;00000`, 'too-long: '],
  ])('refuse what does not fit, whole: %s', async (line, why) => {
    expect(await carried(columns('semicolon', '-', 't', 'b'), line)).toBe(why);
  });

  it('with a comma between them need a point in their numbers', async () => {
    expect(await carried(columns('comma', 't'), '121,4')).toBe('malformed: it has 2 columns, not 1');
  });

  it.each(['xor', 'crc'] as const)('may end in the protocol’s checksum (%s)', async (check) => {
    const { read } = await reader(columns('semicolon', '-', 't'));
    expect(read(withChecksum('*12;121,4', check), 'dev')).toMatchObject({ check, sample: { tC: 121.4 } });
    expect(read('12;121,4', 'dev')).toMatchObject({ check: 'none' });
  });

  it.each([
    [columns('comma', '-', '-'), 'Nothing in it measures'],
    [columns('comma', 'n', 'ms'), 'Nothing in it measures'],
    [columns('comma'), 'Nothing in it measures'],
    [columns('comma', 't', 't'), 'Columns 1 and 2 are both “temperature (t)” of the same probe'],
    [columns('comma', 't', 'ms@a', 'ms@b'), 'Columns 2 and 3 are both “device clock, ms (ms)”'],
    [columns('comma', 't', 'uv', 'cj'), 'Probe 1 has a temperature (t) and microvolts (uv)'],
    [columns('comma', 'uv'), 'Probe 1 has microvolts (uv), but no cold junction'],
    [columns('comma', 'cj', 't'), 'Probe 1 has a cold junction (cj), but no microvolts'],
    [columns('comma', 'uv@a', 'cj@b', 'cj@c'), 'Probe a has microvolts (uv), but no cold junction'],
  ])('that can’t be read are refused in words %#', async (form, words) => {
    expect(await problem(form)).toContain(`columns: ${words}`);
  });
});

describe('a pattern', () => {
  it.each([
    ['T=(?P<t>[-0-9.]+) C', 'T=121.4 C', { 1: { tC: 121.4 } }],
    ['T=(?<t>[-0-9.]+) C', '  T=-3 C ', { 1: { tC: -3 } }],
    [
      '(?P<p>\\w+): (?P<uv>\\d+)/(?P<cj>\\d+) .*',
      'tip: 6138/25 \xb0',
      { tip: { emfUv: 6138, coldJunctionC: 25 } },
    ],
    ['(?:T(?P<t>\\d+)|B(?P<b>[012]))', 'B2', { 1: { button: 2 } }],
    ['T(?P<t>\\d*)', 'T', { 1: { faults: ['not-a-number'] } }],
    [
      '(?P<n>\\d+)@(?P<ms>\\d+) (?P<t>.*)',
      '7@512200 nan',
      { 1: { deviceMs: 512_200, faults: ['not-a-number'], seq: 7 } },
    ],
  ])('%s takes %s', async (text, line, samples) => {
    expect(await carried(pattern(text), line)).toEqual(samples);
  });

  it.each([
    ['T=(?P<t>[-0-9.]+)', 'T=121.4 C', 'malformed: the pattern does not match the whole line'],
    ['T=(?P<t>.*)', 'T=121,4', 'bad-value: group t is “121,4”'],
    ['(?P<p>.*)=(?P<t>.*)', 'a b=1', 'bad-value: group p is “a b”'],
    ['(?P<t>1)?x', 'x', 'incomplete: uv and cj go together, and something has to be measured'],
    ['(?P<t>1)?(?P<uv>2)(?P<cj>3)', '123', 'malformed: it has t and uv'],
    ['(?P<uv>1)(?P<cj>2)?', '1', 'incomplete: uv and cj go together, and something has to be measured'],
    ['(?P<t>.*)', '121.4*00', 'checksum: '],
  ])('%s refuses %s', async (text, line, why) => {
    expect(await carried(pattern(text), line)).toBe(why);
  });

  it.each([
    ['', 'Write a pattern'],
    ['(?P<t>[0-9]+', 'The pattern can’t be read: missing closing )'],
    ['(?P<t>x)\\1', 'The pattern can’t be read: invalid escape sequence'],
    ['(?=x)(?P<t>x)', 'The pattern can’t be read: invalid or unsupported Perl syntax'],
    ['(?P<t>x)(?P<t>y)', 'The pattern can’t be read: duplicate capture group name'],
    ['(?P<plate>\\d+)', 'No group is called “plate” here.'],
    ['(?P<f>o)', 'No group is called “f” here.'],
    ['(\\d+)', 'No group of it measures.'],
    ['(?P<n>\\d+)', 'No group of it measures.'],
    ['(?P<uv>\\d+)', 'Microvolts (uv) and cold junction (cj) go together'],
    ['(?P<t>(.?){400}(.?){400})', 'The pattern takes too much work for every line.'],
    ['(?P<t>((a{1,30}){1,30}){1,1})', 'The pattern takes too much work for every line.'],
  ])('that can’t be used is refused in words: %s', async (text, words) => {
    expect(await problem(pattern(text))).toContain(`pattern: ${words}`);
  });

  it('is refused over 500 characters', async () => {
    const long = `(?P<t>${'x'.repeat(494)})`;
    expect(lineFormSchema.safeParse(pattern(long)).success).toBe(false);
    expect(await problem(pattern(long))).toContain('has 501 characters; it may have 500');
    expect(lineFormSchema.safeParse(pattern(long.replace('x', ''))).success).toBe(true);
  });
});
