import type { Column, ColumnKey, ColumnsForm, Separator } from '../../../../shared/messages/line-form.ts';
import { formProblemWords, lineRejectedWords } from '../../../../shared/words/line-forms.ts';
import type { ProbeSample, Values } from '../keys.ts';
import type { ParsedLine, RejectedLine } from '../line.ts';
import { cell, framed, measuring, probeSample, rejected } from './cells.ts';
import type { FormProblem, LineReader } from './form-read.ts';

/** Lines of always as many values, always in the same order. */

const splitters: Readonly<Record<Separator, (payload: string) => readonly string[]>> = {
  comma: (payload) => payload.split(','),
  semicolon: (payload) => payload.split(';'),
  tab: (payload) => payload.split('\t'),
  space: (payload) => payload.trim().split(/ +/),
};

/** The columns of a line without its checksum, spaces around each left out. */
export const cellsOf = (payload: string, separator: Separator): readonly string[] =>
  splitters[separator](payload).map((one) => one.trim());

/** Either decimal sign, but for a comma where that separates columns. */
export const withPoint = (text: string, separator: Separator): string =>
  separator === 'comma' ? text : text.replace(',', '.');

/** A column that is used. */
interface Used {
  readonly place: number;
  readonly is: ColumnKey;
  /** Null where it is of the whole line. */
  readonly probe: string | null;
}

const usedOf = (columns: readonly Column[]): readonly Used[] =>
  columns.flatMap(({ is, probe }, i) =>
    is === 'ignored' ? [] : [{ place: i + 1, is, probe: is === 'n' || is === 'ms' ? null : probe }],
  );

const probesOf = (used: readonly Used[]): readonly string[] => [
  ...new Set(used.flatMap(({ probe }) => (probe === null ? [] : [probe]))),
];

/** Where the columns of one probe stand. A single cold junction is that of every thermocouple in the line. */
function placesOf(used: readonly Used[], probe: string): readonly Used[] {
  const own = used.filter((one) => one.probe === null || one.probe === probe);
  const junctions = used.filter(({ is }) => is === 'cj');
  const shared = own.some(({ is }) => is === 'uv') && !own.some(({ is }) => is === 'cj');
  return shared && junctions.length === 1 ? [...own, ...junctions] : own;
}

/** Why such columns can't be read; null where they can. */
export function columnsProblem({ columns }: ColumnsForm): FormProblem | null {
  const used = usedOf(columns);
  const message = usedTwice(used) ?? junctionProblem(used);
  if (message !== null) return { message, where: 'columns' };
  return used.some(({ is }) => measuring.has(is))
    ? null
    : { message: formProblemWords.nothingMeasured, where: 'columns' };
}

function usedTwice(used: readonly Used[]): string | null {
  for (const { place, is, probe } of used) {
    const second = used.find((one) => one.place > place && one.is === is && one.probe === probe);
    if (second === undefined) continue;
    const words = probe === null ? formProblemWords.twiceOfLine : formProblemWords.twice;
    return words(is, place, second.place);
  }
  return null;
}

function junctionProblem(used: readonly Used[]): string | null {
  const has = (is: ColumnKey, probe: string) => placesOf(used, probe).some((one) => one.is === is);
  const emfs = used.filter(({ is }) => is === 'uv');
  const junctions = used.filter(({ is }) => is === 'cj');
  for (const probe of probesOf(used)) {
    if (has('t', probe) && has('uv', probe)) return formProblemWords.both(probe);
    if (has('uv', probe) && !has('cj', probe)) return formProblemWords.uvAlone(probe);
    const isShared = junctions.length === 1 && emfs.length > 0;
    if (has('cj', probe) && !has('uv', probe) && !isShared) return formProblemWords.cjAlone(probe);
  }
  return null;
}

interface Plan {
  readonly form: ColumnsForm;
  readonly used: readonly Used[];
  /** The places of each probe that is measured; one whose cold junction others share is none by that alone. */
  readonly probes: readonly { readonly name: string; readonly places: readonly Used[] }[];
}

/** A reader of columns without a problem. */
export function columnsReader(form: ColumnsForm): LineReader {
  const used = usedOf(form.columns);
  const probes = probesOf(used)
    .map((name) => ({ name, places: placesOf(used, name) }))
    .filter(({ places }) => places.some(({ is }) => measuring.has(is)));
  const plan: Plan = { form, used, probes };
  return { form, read: (line, deviceId) => readColumns(plan, line, deviceId) };
}

function readColumns(plan: Plan, line: string, deviceId: string): ParsedLine {
  const frame = framed(line);
  if (frame.kind === 'rejected') return frame;
  const values = valuesOf(plan, cellsOf(frame.payload, plan.form.separator));
  if ('kind' in values) return values;
  const samples: ProbeSample[] = [];
  for (const { name, places } of plan.probes) {
    const own = places.map(({ place, is }) => [is, values.get(place)] as const);
    const made = probeSample({ ...Object.fromEntries(own), p: name }, deviceId);
    if ('kind' in made) return made;
    samples.push(made);
  }
  const [first, ...others] = samples;
  if (first === undefined) return rejected('incomplete', lineRejectedWords.incomplete);
  return { kind: 'sample', ...first, form: 'columns', check: frame.check, others };
}

/** The value at each place that is used; a line with another number of columns is another line. */
function valuesOf(
  { form, used }: Plan,
  cells: readonly string[],
): ReadonlyMap<number, Values[ColumnKey]> | RejectedLine {
  const { columns, separator } = form;
  if (cells.length !== columns.length)
    return rejected('malformed', lineRejectedWords.notThisForm(cells.length, columns.length));
  const values = new Map<number, Values[ColumnKey]>();
  for (const { place, is } of used) {
    const text = cells[place - 1] ?? '';
    const value = cell(is, withPoint(text, separator));
    if (value === null)
      return rejected('bad-value', lineRejectedWords.badCell(lineRejectedWords.column(place), text));
    if (value !== 'none') values.set(place, value);
  }
  return values;
}
