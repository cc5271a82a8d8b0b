import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SourceEvent } from '../../daemon/probe/source.ts';
import { type CheckKind, withChecksum } from '../../daemon/probe/wire/checksum.ts';
import { parseLine } from '../../daemon/probe/wire/line.ts';
import { BOOT_MS, lineStack } from '../../daemon/probe/wire/stack.ts';
import { LineTally } from '../../daemon/probe/wire/tally.ts';
import type { Sample } from '../../shared/thermometer/sample.ts';

/** Cuts bytes in pieces at the given places. */
function cut(bytes: Buffer, places: readonly number[]): readonly Buffer[] {
  const at = [...new Set(places.map((place) => place % (bytes.length + 1)))].sort((a, b) => a - b);
  return [...at, bytes.length].map((end, i) => bytes.subarray(at[i - 1] ?? 0, end));
}

interface Heard {
  readonly samples: readonly Sample[];
  readonly events: readonly SourceEvent[];
}

/** What a device with these connections yields, each connection given as the pieces in which its bytes came. */
function heard(connections: readonly (readonly Buffer[])[]): Heard {
  const events: SourceEvent[] = [];
  const tally = new LineTally();
  let nowMs = 0;
  for (const pieces of connections) {
    const stack = lineStack({
      deviceId: 'dev',
      nowMs: () => nowMs,
      emit: (event) => events.push(event),
      tally,
    });
    for (const piece of pieces) {
      stack.write(piece);
      nowMs += BOOT_MS / 2;
    }
    stack.end();
  }
  return { events, samples: events.flatMap((e) => (e.kind === 'sample' ? [e.sample] : [])) };
}

function sampleOf(line: string): Sample {
  const parsed = parseLine(line, 'dev');
  if (parsed.kind !== 'sample') throw new Error(`not a sample: ${line}`);
  return parsed.sample;
}

const goodLine = (check: CheckKind): fc.Arbitrary<string> =>
  fc
    .record({
      p: fc.constantFrom('1', 'tip', 'heel'),
      n: fc.integer({ min: 0, max: 0xffff }),
      t: fc.double({ min: -50, max: 500, noNaN: true }),
    })
    .map(({ p, n, t }) => withChecksum(`p=${p} n=${n} t=${t.toFixed(2)}`, check));

/** What may come between good lines: noise, boot text, runs without a newline, lines without their checksum. */
const rubbish = fc.oneof(
  fc.uint8Array({ maxLength: 40 }).map((bytes) => Buffer.from(bytes).toString('latin1')),
  fc.constantFrom('\r', '\n', '\r\n', '\n\n', ' ', 'rst:0x1 (POWERON)\r\n', 't=10.2\n', '10.2\n', 'p=1 t='),
  fc.integer({ min: 250, max: 3000 }).map((length) => 'x'.repeat(length)),
  goodLine('none').map((line) => `${line}\n`),
  goodLine('xor').map((line) => `${line}\n`),
);

const lineEnd = fc.constantFrom('\n', '\r\n');
const part = fc.oneof(
  fc.tuple(goodLine('crc'), lineEnd).map(([line, end]) => line + end),
  rubbish,
);
const connection = fc.record({
  text: fc.array(part, { maxLength: 12 }).map((parts) => parts.join('')),
  places: fc.array(fc.nat({ max: 5000 }), { maxLength: 12 }),
});

const wholeLine = /^p=[a-z0-9]+ n=[0-9]+ t=-?[0-9]+\.[0-9]{2}\*[0-9A-F]{4}$/;

/** The lines of a connection that are whole and that carry the long checksum, found in another way. */
function wholeLines(text: string): readonly string[] {
  const lines = text.split('\n').slice(0, -1);
  return lines.map((line) => line.replace(/\r$/, '')).filter((line) => wholeLine.test(line));
}

const untimed = (pieces: readonly Buffer[]): readonly unknown[] =>
  heard([pieces]).events.map((event) => ({ ...event, tMs: 0 }));

describe('any bytes into the port', () => {
  it('yield the samples of the valid lines among them, each of them, and no other', () => {
    const bind = `${withChecksum('p=bind n=1 t=20.00', 'crc')}\n`;
    fc.assert(
      fc.property(fc.array(connection, { minLength: 1, maxLength: 4 }), (connections) => {
        const texts = connections.map(({ text }, i) => (i === 0 ? bind + text : text));
        const pieces = texts.map((text, i) => cut(Buffer.from(text, 'latin1'), connections[i]?.places ?? []));
        expect(heard(pieces).samples).toEqual(texts.flatMap(wholeLines).map(sampleOf));
      }),
      { numRuns: 400 },
    );
  });

  it('never throw, and what is refused can be shown', () => {
    const bytes = fc.array(fc.array(fc.uint8Array({ maxLength: 600 }).map((b) => Buffer.from(b))), {
      maxLength: 3,
    });
    fc.assert(
      fc.property(bytes, (connections) => {
        for (const event of heard(connections).events) {
          if (event.kind === 'rejected') expect(event.raw).toMatch(/^[ -~]{1,256}$/);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('give the same events however they are cut, but for the time', () => {
    fc.assert(
      fc.property(connection, ({ text, places }) => {
        const bytes = Buffer.from(`${withChecksum('t=1')}\n${text}`, 'latin1');
        expect(untimed(cut(bytes, places))).toEqual(untimed([bytes]));
      }),
      { numRuns: 300 },
    );
  });
});

/** What comes of a line between two good ones of the same device. */
function between(line: string, check: CheckKind): readonly Sample[] {
  const bind = withChecksum('p=bind t=20', check);
  const bytes = Buffer.from(`${bind}\n${line}\n${bind}\n`, 'latin1');
  const { samples } = heard([[bytes]]);
  expect([samples.at(0), samples.at(-1)]).toEqual([sampleOf(bind), sampleOf(bind)]);
  return samples.slice(1, -1);
}

const put = (line: string, at: number, codes: readonly number[]): string =>
  line.slice(0, at) + String.fromCharCode(...codes) + line.slice(at + codes.length);

describe('a damaged line with a checksum', () => {
  // A newline in place of another byte makes two lines of one; those are covered above.
  const byte = fc.integer({ min: 0, max: 255 }).filter((code) => code !== 0x0a);
  it.each(['xor', 'crc'] as const)('never gives another sample for one changed byte (%s)', (check) => {
    fc.assert(
      fc.property(goodLine(check), fc.nat(), byte, (line, place, code) => {
        const samples = between(put(line, place % line.length, [code]), check);
        for (const sample of samples) expect(sample).toEqual(sampleOf(line));
      }),
      { numRuns: 1000 },
    );
  });

  // A 16-bit CRC finds every burst of errors of at most 16 bits (Peterson and Brown, Cyclic Codes for Error Detection,
  // Proc. IRE 49 (1961), from memory).
  it('never gives another sample for two changed bytes side by side (crc)', () => {
    fc.assert(
      fc.property(goodLine('crc'), fc.nat(), byte, byte, (line, place, one, other) => {
        const samples = between(put(line, place % (line.length - 1), [one, other]), 'crc');
        for (const sample of samples) expect(sample).toEqual(sampleOf(line));
      }),
      { numRuns: 1000 },
    );
  });
});
