import type { Sample } from '../../../shared/thermometer/sample.ts';
import { countsAs } from '../../../shared/watch/counted.ts';
import type { Entry } from '../../../shared/watch/input.ts';
import { bookWords } from '../../../shared/words/book.ts';
import { BookFailure, type SessionHead } from '../book.ts';
import type { BookRows } from '../store/rows.ts';
import { utcText } from '../utc.ts';
import { ChainBroken, walkChain } from './chain.ts';
import type { Fold, FoldStep } from './fold.ts';

const columns = [
  'utc',
  'session_s',
  'probe',
  'watched',
  'quality',
  'plate_c',
  'check_c',
  'typed_c',
  'raw_t_c',
  'emf_uv',
  'cold_junction_c',
  'motion_g',
] as const;

const CHUNK_CHARACTERS = 64 * 1024;

/**
 * A session's readings as CSV (RFC 4180, but lines end in LF), a line a sample or typed reading, in chunks. The plate
 * temperature is what the present fold makes of the sample, to a thousandth of a degree; what the wire said is given as
 * it came. What a probe on the plate, a check pad and a hand thermometer gave stands in a column each, never mixed.
 * Each commit is checked before its lines are given. Throws `BookFailure` at one that does not hold.
 */
export function* csvChunks(
  rows: BookRows,
  session: number,
  head: SessionHead,
  fold: Fold,
): Generator<string> {
  let chunk = `${columns.join(',')}\n`;
  for (const line of csvLines(rows, session, head, fold)) {
    chunk += line;
    if (chunk.length >= CHUNK_CHARACTERS) {
      yield chunk;
      chunk = '';
    }
  }
  if (chunk !== '') yield chunk;
}

function* csvLines(rows: BookRows, session: number, head: SessionHead, fold: Fold): Generator<string> {
  const exact = head.foldVersion === fold.version;
  const untilMs = rows.tail(session)?.untilMs ?? head.firstMs;
  try {
    for (const { entry, state } of fold.replay(entriesOf(rows, session, head.firstMs), untilMs, exact)) {
      if (entry?.input.kind === 'mark' && entry.input.mark.kind === 'typed')
        yield typedLine(head, entry, entry.input.mark.plateC);
      if (entry?.input.kind !== 'sample') continue;
      const { sample } = entry.input;
      yield lineOf(head, entry, sample, state);
    }
  } catch (error) {
    if (!(error instanceof ChainBroken)) throw error;
    throw new BookFailure('damaged', bookWords.brokenChain(head.id, error.index, error.message));
  }
}

function* entriesOf(rows: BookRows, session: number, firstMs: number): Generator<Entry> {
  for (const commit of walkChain(rows, session, firstMs)) yield* commit.entries;
}

function lineOf(head: SessionHead, entry: Entry, sample: Sample, state: FoldStep['state']): string {
  const reading = state.readings[sample.probe];
  const as = countsAs(state, sample.probe);
  const atMs = reading?.atMs ?? entry.tMs;
  const plateC = reading?.quality === 'ok' ? Number(reading.plateC.toFixed(3)) : null;
  const cells = [
    utcText(head.originUtcMs + atMs),
    ((atMs - head.firstMs) / 1000).toFixed(3),
    quoted(sample.probe),
    as,
    reading?.quality ?? '',
    (as === 'monitored' ? plateC : null) ?? '',
    (as === 'checked' || as === 'settling' ? plateC : null) ?? '',
    '',
    sample.tC ?? '',
    sample.emfUv ?? '',
    sample.coldJunctionC ?? '',
    sample.motionG ?? '',
  ];
  return `${cells.join(',')}\n`;
}

function typedLine(head: SessionHead, { tMs }: Entry, plateC: number): string {
  const at = [utcText(head.originUtcMs + tMs), ((tMs - head.firstMs) / 1000).toFixed(3)];
  return `${[...at, '', 'typed', '', '', '', Number(plateC.toFixed(3)), '', '', '', ''].join(',')}\n`;
}

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
