import type { ColumnKey, LineForm, Separator } from '../messages/line-form.ts';

/** What is said of the form of a device's lines: why one can't be, and what was understood of a line. */

export const separatorWords: Readonly<Record<Separator, string>> = {
  comma: 'comma',
  semicolon: 'semicolon',
  tab: 'tab',
  space: 'space',
};

export const columnWords: Readonly<Record<ColumnKey | 'ignored', string>> = {
  ignored: 'not used',
  t: 'temperature (t)',
  uv: 'thermocouple, microvolts (uv)',
  cj: 'cold junction, °C (cj)',
  ms: 'device clock, ms (ms)',
  n: 'sequence number (n)',
  g: 'motion, g (g)',
  b: 'button (b)',
  ta: 'shop air, °C (ta)',
  rh: 'shop air, humidity % (rh)',
};

/** Why a form can't be used, as sentences. */
export const formProblemWords = {
  nothingMeasured:
    'Nothing in it measures. Say which column is the temperature (t), or microvolts (uv) with the cold junction (cj).',
  twice: (key: ColumnKey, first: number, second: number) =>
    `Columns ${first} and ${second} are both “${columnWords[key]}” of the same probe. Keep one of them, or give the other another probe name.`,
  twiceOfLine: (key: ColumnKey, first: number, second: number) =>
    `Columns ${first} and ${second} are both “${columnWords[key]}”. A line has one: keep one of them.`,
  both: (probe: string) =>
    `Probe ${probe} has a temperature (t) and microvolts (uv). It can have one of them: leave the other unused.`,
  uvAlone: (probe: string) =>
    `Probe ${probe} has microvolts (uv), but no cold junction (cj) stands in the line. Without it they are no temperature.`,
  cjAlone: (probe: string) =>
    `Probe ${probe} has a cold junction (cj), but no microvolts (uv) to go with it. Leave it unused.`,
  empty: 'Write a pattern, for example T=(?P<t>[-0-9.]+) C',
  tooLong: (most: number, length: number) => `The pattern has ${length} characters; it may have ${most}.`,
  notCompiled: (why: string) =>
    `The pattern can’t be read: ${why}. Patterns are in the syntax of RE2, without look-around and back-references.`,
  tooLarge:
    'The pattern takes too much work for every line. Use smaller numbers in its repeats, or * and + in their place.',
  unknownGroup: (name: string, known: string) =>
    `No group is called “${name}” here. A group’s name is one of ${known}.`,
  noMeasuringGroup:
    'No group of it measures. Give the number a name, for example (?P<t>[-0-9.]+) for a temperature in degrees.',
  groupUvAlone: 'Microvolts (uv) and cold junction (cj) go together: give both a group.',
  noDevice: (id: string) => `No device “${id}” is in use, so there are no lines of it to read.`,
  noLines: 'What this device sends is in no lines from a wire: there is nothing to set up.',
} as const;

/** Why a line was not taken, beside its cause. */
export const lineRejectedWords = {
  notThisForm: (columns: number, wanted: number) =>
    `it has ${columns === 1 ? '1 column' : `${columns} columns`}, not ${wanted}`,
  noMatch: 'the pattern does not match the whole line',
  badCell: (place: string, text: string) => `${place} is “${text}”`,
  column: (place: number) => `column ${place}`,
  group: (name: string) => `group ${name}`,
  both: 'it has t and uv',
  incomplete: 'uv and cj go together, and something has to be measured',
} as const;

/** What was understood of a line. */
export const understoodWords = {
  probe: (name: string, parts: readonly string[]) => `probe ${name}: ${parts.join(', ')}`,
  plate: (t: string, unit: string) => `${t} ${unit}`,
  emf: (uv: string, cj: string) => `${uv} µV with the cold junction at ${cj} °C`,
  clock: (s: string) => `device clock ${s} s`,
  number: (n: number) => `number ${n}`,
  motion: (g: string) => `motion ${g} g`,
  button: { 1: 'button pressed', 2: 'button pressed twice' },
  air: (c: string) => `shop air ${c} °C`,
  humidity: (pct: string) => `humidity ${pct} %`,
  faults: {
    open: 'fault: open',
    'short-to-ground': 'fault: short to ground',
    'short-to-supply': 'fault: short to supply',
    'cold-junction': 'fault: cold junction out of range',
    'not-a-number': 'no number, which counts as a fault',
  },
  nothing: 'nothing that measures',
  hello: (pairs: string) => `the board about itself: ${pairs}`,
  notUsed: (cause: string, why: string) =>
    why === '' ? `not used: ${cause}` : `not used: ${cause} (${why})`,
} as const;

/** What the page says where the form of a device's lines is set up. */
export const lineFormWords = {
  title: 'How its lines are read',
  begin: 'Set up how its lines are read',
  setUp: 'Setting up its lines',
  kind: 'Its lines are',
  kinds: { protocol: 'Pairs, or a number alone', columns: 'Columns', pattern: 'Something else: a pattern' },
  kindMeans: {
    protocol: 'As t=150.25, or 150.25 alone: see firmware-notes/line-protocol.md.',
    columns: 'As 12.3;121,4;0: always as many values, always in the same order.',
    pattern:
      'A regular expression of your own picks the numbers out of each line. The whole line has to match.',
  },
  separator: 'Between columns stands a',
  likely: (separator: string) => `From the lines it looks like a ${separator}.`,
  decimalComma: 'Numbers may have a decimal point or a comma.',
  noDecimalComma: 'Numbers need a decimal point: a comma separates columns.',
  columns: 'Columns of the newest line',
  column: (place: number) => `Column ${place}`,
  cellMissing: 'not in the newest line',
  is: 'What it is',
  isOf: (place: number) => `What column ${place} is`,
  probe: 'Of probe',
  probeOf: (place: number) => `Probe of column ${place}`,
  takeCells: (count: number) =>
    count === 1 ? 'Take the one column that the line has' : `Take the ${count} columns that the line has`,
  noCells: 'No line has come yet. Its columns appear here with the first one.',
  pattern: 'Pattern',
  patternMeans:
    'Name each number’s group: (?P<t>[-0-9.]+) is the temperature. A space is a space, a dot is any character, \\. is a dot.',
  groups: 'Names of groups',
  groupProbe: 'name of the probe, where a line says it (p)',
  lines: 'Its last lines, the newest first',
  raw: 'Came as',
  understood: 'Understood',
  noLines: 'No line has come yet. Plug the board in, or press its reset button.',
  asking: 'Reading the lines …',
  unchecked:
    'These lines carry no checksum: where bytes are lost on the way, 150.2 can arrive as 10.2, and nobody can see it. Only a number that is implausible is found out.',
  unit: 'Whether it counts in °C or °F is settled at the probe, under Irons and probes.',
  save: 'Read its lines this way',
  drop: 'Drop what I set up',
  takeBack: 'Go on with what I dropped',
  unsaved: 'Not in use yet.',
  saved: 'Its lines are read this way from now on.',
  inUse: (form: LineForm): string => {
    if (form.kind === 'protocol') return 'As pairs, or as a number alone.';
    if (form.kind === 'pattern') return 'By a pattern of your own:';
    return `As columns with a ${separatorWords[form.separator]} between them: ${form.columns
      .map(({ is, probe }, i) => `${i + 1} ${columnWords[is]}${ofProbe(is) ? `, probe ${probe}` : ''}`)
      .join('; ')}.`;
  },
} as const;

const ofProbe = (is: ColumnKey | 'ignored'): boolean => is !== 'ignored' && is !== 'ms' && is !== 'n';
