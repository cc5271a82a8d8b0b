import {
  type LineForm,
  type LinesRead,
  type ReadLine,
  type Separator,
} from '../../../../shared/messages/line-form.ts';
import type { ProbeId } from '../../../../shared/thermometer/sample.ts';
import { printable } from '../tally.ts';
import { measured } from '../values.ts';
import { framed } from './cells.ts';
import { cellsOf, withPoint } from './columns.ts';
import type { LineReader } from './form-read.ts';
import { readerFor } from './reader.ts';
import { isChecked, says } from './says.ts';

export interface Asked {
  readonly form: LineForm;
  readonly deviceId: string;
  /** How a probe's device writes a degree, for example "°C". */
  readonly unitOf: (probe: ProbeId) => string;
}

/** The last lines of a device, the newest first, read in a form that need not be the one in use. */
export async function linesRead(lines: readonly string[], asked: Asked): Promise<LinesRead> {
  const { form } = asked;
  const read = await readerFor(form);
  const payloads = lines.map(payloadOf);
  const likely = likelySeparator(payloads);
  const separator = form.kind === 'columns' ? form.separator : likely;
  const columns = form.kind === 'columns' ? form.columns.length : 0;
  const readLines = lines.map((raw) => readLine(raw, read.kind === 'reader' ? read.reader : null, asked));
  return {
    form,
    problem: read.kind === 'problem' ? read.problem : null,
    lines: readLines.map(({ line }) => line),
    checksummed: readLines.every(({ line, checked }) => !line.taken || checked),
    likelySeparator: likely,
    cells: separator === null ? [] : newestCells(payloads, separator, columns).map(printable),
  };
}

function payloadOf(raw: string): string {
  const frame = framed(raw);
  return frame.kind === 'framed' ? frame.payload : raw;
}

function readLine(
  raw: string,
  reader: LineReader | null,
  { deviceId, unitOf }: Asked,
): { readonly line: ReadLine; readonly checked: boolean } {
  if (reader === null) return { line: { raw: printable(raw), taken: false, says: '' }, checked: false };
  const parsed = reader.read(raw, deviceId);
  const line = { raw: printable(raw), taken: parsed.kind !== 'rejected', says: says(parsed, unitOf) };
  return { line, checked: isChecked(parsed) };
}

/** The cells of the newest line that has as many as are named; else of the newest that has as many as most lines. */
function newestCells(payloads: readonly string[], separator: Separator, named: number): readonly string[] {
  const all = payloads.map((payload) => cellsOf(payload, separator));
  return withLength(all, named) ?? withLength(all, commonest(all)) ?? [];
}

type Cells = readonly string[];

const withLength = (all: readonly Cells[], length: number): Cells | undefined =>
  all.find((cells) => cells.length === length);

/** How many columns most of the lines have. Boot text and headers may stand among them. */
function commonest(all: readonly Cells[]): number {
  const counts = new Map<number, number>();
  for (const { length } of all) counts.set(length, (counts.get(length) ?? 0) + 1);
  const [first] = [...counts].toSorted(([, one], [, other]) => other - one);
  return first?.[0] ?? 0;
}

/** A comma may be a decimal sign, and a space may be there for the eye. */
const likelyFirst: readonly Separator[] = ['semicolon', 'tab', 'comma', 'space'];

/** The separator by which most lines fall into the same number of columns, several of them, most of those numbers. */
function likelySeparator(payloads: readonly string[]): Separator | null {
  let best: Separator | null = null;
  let bestShare = 0;
  for (const separator of likelyFirst) {
    const share = numbersBy(payloads, separator);
    if (share > bestShare) [best, bestShare] = [separator, share];
  }
  return best;
}

/** The share of numbers among the columns; 0 where most lines do not fall into the same number of several columns. */
function numbersBy(payloads: readonly string[], separator: Separator): number {
  const all = payloads.map((payload) => cellsOf(payload, separator));
  const length = commonest(all);
  const like = all.filter((cells) => cells.length === length);
  if (length < 2 || like.length * 2 < all.length) return 0;
  const texts = like.flat();
  return texts.filter((text) => measured(withPoint(text, separator)) !== null).length / texts.length;
}
