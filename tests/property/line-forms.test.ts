import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SourceEvent } from '../../daemon/probe/source.ts';
import { withChecksum } from '../../daemon/probe/wire/checksum.ts';
import type { LineReader } from '../../daemon/probe/wire/forms/form-read.ts';
import { linesRead } from '../../daemon/probe/wire/forms/lines-read.ts';
import { readerFor } from '../../daemon/probe/wire/forms/reader.ts';
import { BOOT_MS, lineStack } from '../../daemon/probe/wire/stack.ts';
import { LineTally } from '../../daemon/probe/wire/tally.ts';
import {
  columnKeys,
  type LineForm,
  lineFormSchema,
  linesReadSchema,
  separators,
} from '../../shared/messages/line-form.ts';
import type { Sample } from '../../shared/thermometer/sample.ts';

const column = fc.record({
  is: fc.constantFrom(...columnKeys, 'ignored' as const),
  probe: fc.constantFrom('1', 'a', 'b'),
});
const columnsForm = fc.record({
  kind: fc.constant('columns' as const),
  separator: fc.constantFrom(...separators),
  columns: fc.array(column, { maxLength: 5 }),
});

const group = fc
  .tuple(
    fc.constantFrom(...columnKeys, 'p'),
    fc.constantFrom('.*', '[-0-9.]+', '\\d+', '.', '(?:\\d|\\.)*', '.*?', ''),
  )
  .map(([name, inside]) => `(?P<${name}>${inside})`);
const piece = fc.oneof(
  group,
  fc.constantFrom(' ', ';', '.*', 'T=', '\\s*', '|', '(', ')', '?', '+', '{3}', '\\'),
);
const patternForm = fc
  .array(piece, { minLength: 1, maxLength: 6 })
  .map((pieces) => ({ kind: 'pattern' as const, pattern: pieces.join('') }));
const anyPattern = fc
  .string({ unit: 'grapheme-ascii', maxLength: 60 })
  .map((text) => ({ kind: 'pattern' as const, pattern: text }));

const anyForm: fc.Arbitrary<LineForm> = fc.oneof(columnsForm, patternForm, anyPattern);

const number = fc
  .tuple(
    fc.double({ min: -500, max: 1e5, noNaN: true }),
    fc.integer({ min: 0, max: 3 }),
    fc.constantFrom('.', ','),
  )
  .map(([value, digits, sign]) => value.toFixed(digits).replace('.', sign));
const cell = fc.oneof(
  { weight: 4, arbitrary: number },
  fc.constantFrom('', 'nan', '1', '0', 'x', ' 5 ', '1e3', '0x10'),
);
const line = fc.oneof(
  fc
    .tuple(fc.array(cell, { maxLength: 6 }), fc.constantFrom(',', ';', '\t', ' '))
    .map(([cells, by]) => cells.join(by)),
  fc.tuple(cell, fc.constantFrom('T=', '', '#1 ')).map(([value, before]) => before + value),
  fc.uint8Array({ maxLength: 60 }).map((bytes) => Buffer.from(bytes).toString('latin1')),
);

const signOf = { comma: ',', semicolon: ';', tab: '\t', space: ' ' } as const;

/** A form and lines, some of which have as many columns as it. */
const formAndLines = fc.oneof(
  fc.record({ form: anyForm, lines: fc.array(line, { maxLength: 8 }) }),
  columnsForm.chain((form) =>
    fc.record({
      form: fc.constant<LineForm>(form),
      lines: fc.array(
        fc
          .array(cell, { minLength: form.columns.length, maxLength: form.columns.length })
          .map((cells) => cells.join(signOf[form.separator])),
        { maxLength: 8 },
      ),
    }),
  ),
);

async function readerOf(form: LineForm): Promise<LineReader | null> {
  const read = await readerFor(form);
  return read.kind === 'reader' ? read.reader : null;
}

/** Whether a piece of the line, as it stands there, is this number. */
function stands(text: string, value: number): boolean {
  for (let from = 0; from < text.length; from += 1)
    for (let to = from + 1; to <= text.length; to += 1) {
      const part = text.slice(from, to);
      if (/^[+-]?\d+([.,]\d+)?$/.test(part) && Number(part.replace(',', '.')) + 0 === value) return true;
    }
  return false;
}

const numbersOf = (sample: Sample): readonly number[] =>
  Object.values(sample).filter((value) => typeof value === 'number');

describe('any line in any form', () => {
  it('never throws, and gives no value that the line did not carry', async () => {
    let taken = 0;
    await fc.assert(
      fc.asyncProperty(formAndLines, async ({ form, lines }) => {
        const reader = await readerOf(form);
        if (reader === null) return;
        for (const text of lines) {
          const parsed = reader.read(text, 'dev');
          if (parsed.kind !== 'sample') continue;
          for (const { sample } of [parsed, ...(parsed.others ?? [])]) {
            taken += 1;
            for (const value of numbersOf(sample))
              expect([text, value, stands(text, value)]).toEqual([text, value, true]);
            expect(JSON.parse(JSON.stringify(sample))).toEqual(sample);
          }
        }
      }),
      { numRuns: 1500 },
    );
    expect(taken).toBeGreaterThan(100);
  });

  it('can be shown with what was understood, and a form is one that the schema knows', async () => {
    await fc.assert(
      fc.asyncProperty(anyForm, fc.array(line, { maxLength: 6 }), async (form, lines) => {
        expect(lineFormSchema.parse(form)).toEqual(form);
        const read = await linesRead(lines, { form, deviceId: 'dev', unitOf: () => '°C' });
        expect(linesReadSchema.parse(JSON.parse(JSON.stringify(read)))).toEqual(read);
        for (const { raw } of read.lines) expect(raw).toMatch(/^[ -~]*$/);
      }),
      { numRuns: 500 },
    );
  });

  it('gives in columns what stands at its place, and nothing where the columns are not as many', async () => {
    const cells = fc.array(number, { minLength: 1, maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(cells, fc.nat({ max: 5 }), fc.nat({ max: 5 }), async (texts, place, surplus) => {
        const at = place % texts.length;
        const columns = texts.map((_, i) => ({
          is: i === at ? ('t' as const) : ('ignored' as const),
          probe: '1',
        }));
        const reader = await readerOf({ kind: 'columns', separator: 'semicolon', columns });
        expect(reader?.read(texts.join(';'), 'dev')).toMatchObject({
          sample: { tC: Number(texts[at]?.replace(',', '.')) + 0 },
        });
        const more = [...texts, ...Array.from({ length: surplus + 1 }, () => '1')].join(';');
        expect(reader?.read(more, 'dev')).toMatchObject({ kind: 'rejected', cause: 'malformed' });
      }),
    );
  });
});

describe('any bytes into the port, with any form', () => {
  it('never throw', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyForm,
        fc.array(fc.uint8Array({ maxLength: 600 }), { maxLength: 6 }),
        async (form, pieces) => {
          const reader = await readerOf(form);
          const tally = new LineTally();
          if (reader !== null) tally.readAs(reader);
          let nowMs = 0;
          const stack = lineStack({ deviceId: 'dev', nowMs: () => nowMs, emit: () => undefined, tally });
          for (const piece of pieces) {
            stack.write(piece);
            nowMs += BOOT_MS / 2;
          }
          stack.end();
        },
      ),
      { numRuns: 400 },
    );
  });

  it('never give another sample for one damaged byte of a line with a checksum', async () => {
    const byte = fc.integer({ min: 0, max: 255 }).filter((code) => code !== 0x0a);
    const reader = await readerOf({
      kind: 'columns',
      separator: 'semicolon',
      columns: [
        { is: 't', probe: '1' },
        { is: 'ignored', probe: '1' },
      ],
    });
    fc.assert(
      fc.property(number, number, fc.nat(), byte, (t, other, place, code) => {
        const good = withChecksum(`${t};${other}`);
        const at = place % good.length;
        const damaged = good.slice(0, at) + String.fromCharCode(code) + good.slice(at + 1);
        const samples: (number | null)[] = [];
        const emit = (event: SourceEvent): void => {
          if (event.kind === 'sample') samples.push(event.sample.tC);
        };
        const tally = new LineTally();
        if (reader !== null) tally.readAs(reader);
        const stack = lineStack({ deviceId: 'dev', nowMs: () => 0, emit, tally });
        stack.write(Buffer.from(`\n\n${withChecksum('1;1')}\n${damaged}\n`, 'latin1'));
        const value = Number(t.replace(',', '.')) + 0;
        expect([[1], [1, value]]).toContainEqual(samples);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('a hostile pattern', () => {
  // Each of these takes an engine that goes back and tries again longer than anybody lives (from memory).
  it.each([
    '(?P<t>(a+)+)b',
    '(?P<t>(a|a)*)b',
    '(?P<t>(a|aa)+)b',
    '(?P<t>(.*)*)b',
    '(?:a?){100}a{100}(?P<t>b)',
    '(?P<t>(.*.*.*.*.*.*.*.*)=)',
    '(?P<t>((((a*)*)*)*)*)b',
    '(?P<t>(.*)(.*)(.*)(.*)(.*)(.*)(.*)(.*)(.*)(.*))b',
  ])('takes the longest line in time that grows with its length: %s', async (pattern) => {
    const reader = await readerOf({ kind: 'pattern', pattern });
    expect(reader).not.toBeNull();
    for (let i = 0; i < 100; i += 1) expect(reader?.read('a'.repeat(256), 'dev').kind).toBe('rejected');
  });
});
