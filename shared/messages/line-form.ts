import { z } from 'zod';

/** In which form a device's lines are, where it is not that of our own protocol. A form belongs to a device. */

/** What a column can hold, by the line protocol's keys. `n` and `ms` are of the line, all others of one probe. */
export const columnKeys = ['t', 'uv', 'cj', 'ms', 'n', 'g', 'b', 'ta', 'rh'] as const;
export type ColumnKey = (typeof columnKeys)[number];

/** The named groups that a pattern may have. */
export const groupNames = [...columnKeys, 'p'] as const;

export const separators = ['comma', 'semicolon', 'tab', 'space'] as const;
export type Separator = (typeof separators)[number];

const MOST_COLUMNS = 32;
export const LONGEST_PATTERN = 500;

const columnSchema = z.strictObject({
  is: z.enum([...columnKeys, 'ignored']),
  /** Which probe it is of; says nothing in a column that is ignored or is of the whole line. */
  probe: z
    .string()
    .regex(/^[A-Za-z0-9_-]{1,16}$/, '1 to 16 letters, digits, "_" and "-"')
    .default('1'),
});

const protocolFormSchema = z.strictObject({ kind: z.literal('protocol') });
const columnsFormSchema = z.strictObject({
  kind: z.literal('columns'),
  separator: z.enum(separators),
  /** From the left. */
  columns: z.array(columnSchema).max(MOST_COLUMNS).readonly(),
});
const patternFormSchema = z.strictObject({
  kind: z.literal('pattern'),
  /** In the syntax of RE2; the whole line has to match. */
  pattern: z.string().max(LONGEST_PATTERN),
});

export const lineFormSchema = z.discriminatedUnion('kind', [
  protocolFormSchema,
  columnsFormSchema,
  patternFormSchema,
]);

export type Column = z.infer<typeof columnSchema>;
export type ColumnsForm = z.infer<typeof columnsFormSchema>;
export type PatternForm = z.infer<typeof patternFormSchema>;
export type LineForm = z.infer<typeof lineFormSchema>;

/** Pairs, or a number alone: what a device's lines are taken for until somebody settles another form. */
export const protocolForm: LineForm = { kind: 'protocol' };

/** A line as it came, and what was understood of it. */
const readLineSchema = z.strictObject({
  /** With every byte that can't be printed as \xHH. */
  raw: z.string(),
  /** Whether it would be taken. */
  taken: z.boolean(),
  /** What was understood, or why it was not taken, in words. */
  says: z.string(),
});

/** The last lines of a device, read in one form. */
export const linesReadSchema = z.strictObject({
  form: lineFormSchema,
  /** Why the form can't be used, and the field of it that is wrong; null where it can. */
  problem: z.strictObject({ message: z.string(), where: z.string() }).nullable(),
  /** The newest first. */
  lines: z.array(readLineSchema).readonly(),
  /** False where a line would be taken that carries no checksum. */
  checksummed: z.boolean(),
  /** What separates the columns of the lines, as far as can be seen; null where nothing does. */
  likelySeparator: z.enum(separators).nullable(),
  /** The columns of the newest line by the form's separator, or by the likely one. */
  cells: z.array(z.string()).readonly(),
});

export type ReadLine = z.infer<typeof readLineSchema>;
export type LinesRead = z.infer<typeof linesReadSchema>;
