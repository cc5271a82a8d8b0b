import type { ProbeId, Sample, WireFault } from '../../../shared/thermometer/sample.ts';
import { BlockDamaged, ByteReader, ByteWriter } from './bytes.ts';
import { readColumn, writeColumn } from './column.ts';
import { readText, writeText } from './text.ts';

/**
 * The samples of one commit, packed by probe and in columns, every value kept exactly.
 *
 * Layout: format (1), number of probes, then for each probe its id, the number of its samples, which columns follow
 * (a bit each, in the order below; a column without any value is left out), the columns. Numbers are varints.
 */
const FORMAT = 1;
/** A block may claim no more than this, so that a garbled count cannot exhaust memory. */
const SAMPLES_AT_MOST = 2 ** 20;

const columns = ['tC', 'emfUv', 'coldJunctionC', 'deviceMs', 'motionG', 'button', 'airC', 'rhPct'] as const;
const FAULTS_BIT = 2 ** columns.length;

/** The place in this list is what stands in the book: append only. */
const wireFaults = [
  'open',
  'short-to-ground',
  'short-to-supply',
  'cold-junction',
  'not-a-number',
] as const satisfies readonly WireFault[];

export interface SampleEntry {
  readonly seq: number;
  readonly tMs: number;
  readonly sample: Sample;
}

/** Packs samples; their sequence numbers must rise. No samples give no bytes. Throws `RangeError`. */
export function encodeBlock(entries: readonly SampleEntry[]): Uint8Array {
  if (entries.length === 0) return new Uint8Array();
  if (entries.length > SAMPLES_AT_MOST)
    throw new RangeError(`${entries.length} samples in one block: at most ${SAMPLES_AT_MOST}`);
  const probes = byProbe(entries);
  const out = new ByteWriter();
  out.byte(FORMAT);
  out.varint(probes.size);
  let before: ProbeId = '';
  for (const [probe, samples] of probes) {
    writeText(out, probe, before);
    writeProbe(out, samples);
    before = probe;
  }
  return out.done();
}

/** Unpacks samples in the order of their sequence numbers. Throws `BlockDamaged`. */
export function decodeBlock(bytes: Uint8Array): SampleEntry[] {
  if (bytes.length === 0) return [];
  const source = new ByteReader(bytes);
  if (source.byte() !== FORMAT) throw new BlockDamaged('an unknown format');
  const entries: SampleEntry[] = [];
  let before: ProbeId = '';
  for (let left = source.varint(); left > 0; left--) {
    before = readText(source, before);
    for (const entry of readProbe(source, before, SAMPLES_AT_MOST - entries.length)) entries.push(entry);
  }
  if (source.left > 0) throw new BlockDamaged('it goes on after its end');
  return entries.sort((a, b) => a.seq - b.seq);
}

function byProbe(entries: readonly SampleEntry[]): Map<ProbeId, SampleEntry[]> {
  const probes = new Map<ProbeId, SampleEntry[]>();
  let before = Number.NEGATIVE_INFINITY;
  for (const entry of entries) {
    if (!(entry.seq > before)) throw new RangeError(`sample ${entry.seq} comes after ${before}`);
    before = entry.seq;
    const samples = probes.get(entry.sample.probe);
    if (samples === undefined) probes.set(entry.sample.probe, [entry]);
    else samples.push(entry);
  }
  return probes;
}

function writeProbe(out: ByteWriter, entries: readonly SampleEntry[]): void {
  const values = columns.map((column) => entries.map((e) => e.sample[column]));
  const present = values.map((column) => column.some((v) => v !== null));
  const faulty = entries.some((e) => e.sample.faults.length > 0);
  out.varint(entries.length);
  out.varint(present.reduce((bits, is, i) => bits + (is ? 2 ** i : 0), faulty ? FAULTS_BIT : 0));
  writeColumn(
    out,
    entries.map((e) => e.seq),
  );
  writeColumn(
    out,
    entries.map((e) => e.tMs),
  );
  for (const [i, column] of values.entries()) if (present[i]) writeColumn(out, column);
  if (faulty)
    writeFaults(
      out,
      entries.map((e) => e.sample.faults),
    );
}

function readProbe(source: ByteReader, probe: ProbeId, room: number): SampleEntry[] {
  const count = source.varint();
  const present = source.varint();
  if (count === 0 || count > room || present >= FAULTS_BIT * 2) throw new BlockDamaged('an impossible count');
  const seq = everyValue(readColumn(source, count));
  const tMs = everyValue(readColumn(source, count));
  const values = columns.map((_, i) => (present & (2 ** i) ? readColumn(source, count) : null));
  const faults = present & FAULTS_BIT ? readFaults(source, count) : null;
  return seq.map((at, i) => ({
    seq: at,
    tMs: tMs[i] ?? 0,
    sample: sampleOf(
      probe,
      values.map((column) => column?.[i] ?? null),
      faults?.[i] ?? [],
    ),
  }));
}

function sampleOf(probe: ProbeId, values: readonly (number | null)[], faults: readonly WireFault[]): Sample {
  const [tC = null, emfUv = null, coldJunctionC = null, deviceMs = null, motionG = null] = values;
  const [button = null, airC = null, rhPct = null] = values.slice(5);
  if (button !== null && button !== 1 && button !== 2) throw new BlockDamaged('an unknown button');
  return { probe, tC, emfUv, coldJunctionC, deviceMs, motionG, button, airC, rhPct, faults };
}

/** The different lists of faults, then which of them each sample has. */
function writeFaults(out: ByteWriter, lists: readonly (readonly WireFault[])[]): void {
  const texts = lists.map((list) => list.map((f) => wireFaults.indexOf(f)).join(' '));
  const different = [...new Map(texts.map((text, i) => [text, lists[i] ?? []]))];
  const places = new Map(different.map(([text], place) => [text, place]));
  out.varint(different.length);
  for (const [, list] of different) {
    out.varint(list.length);
    for (const fault of list) out.byte(wireFaults.indexOf(fault));
  }
  writeColumn(
    out,
    texts.map((text) => places.get(text) ?? 0),
  );
}

function readFaults(source: ByteReader, count: number): WireFault[][] {
  const lists: WireFault[][] = [];
  for (let left = source.varint(); left > 0; left--)
    lists.push(Array.from(source.bytes(source.varint()), (code) => known(wireFaults[code], 'fault')));
  return everyValue(readColumn(source, count)).map((place) => known(lists[place], 'list of faults'));
}

function known<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new BlockDamaged(`an unknown ${what}`);
  return value;
}

function everyValue(column: readonly (number | null)[]): number[] {
  return column.map((value) => {
    if (value === null) throw new BlockDamaged('a sample without a place');
    return value;
  });
}
