import { RE2JS } from 're2js';
import { groupNames, LONGEST_PATTERN, type PatternForm } from '../../../../shared/messages/line-form.ts';
import { formProblemWords, lineRejectedWords } from '../../../../shared/words/line-forms.ts';
import type { ParsedLine } from '../line.ts';
import { probeName } from '../values.ts';
import { cell, framed, measuring, probeSample, rejected } from './cells.ts';
import type { FormRead } from './form-read.ts';

/** Lines that a pattern of the user's own picks numbers out of, in linear time whatever the pattern is. */

/** A pattern that compiles to more steps than this costs too much at every character of every line. */
const MOST_STEPS = 1000;
/** Repeats that add up to more than this would take long even to compile. */
const MOST_REPEATS = 500;

const problem = (message: string): FormRead => ({
  kind: 'problem',
  problem: { message, where: 'pattern' },
});

/** A reader by a pattern, or what is wrong with the pattern. */
export function patternReader(form: PatternForm): FormRead {
  const { pattern } = form;
  if (pattern.trim() === '') return problem(formProblemWords.empty);
  if (pattern.length > LONGEST_PATTERN)
    return problem(formProblemWords.tooLong(LONGEST_PATTERN, pattern.length));
  if (repeats(pattern) > MOST_REPEATS) return problem(formProblemWords.tooLarge);
  let compiled: RE2JS;
  try {
    compiled = RE2JS.compile(pattern);
  } catch (error) {
    return problem(formProblemWords.notCompiled(reasonOf(error)));
  }
  if (compiled.programSize() > MOST_STEPS) return problem(formProblemWords.tooLarge);
  const groups = Object.keys(compiled.namedGroups());
  const message = groupsProblem(groups);
  if (message !== null) return problem(message);
  return {
    kind: 'reader',
    reader: { form, read: (line, deviceId) => readLine({ compiled, groups }, line, deviceId) },
  };
}

const repeats = (pattern: string): number =>
  [...pattern.matchAll(/\{(\d+)(?:,(\d*))?\}/g)].reduce(
    (sum, [, least, most]) => sum + Math.max(Number(least), Number(most ?? 0)),
    0,
  );

const reasonOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replace(/^error parsing regexp: /, '');

const isKnown = (name: string): name is (typeof groupNames)[number] =>
  groupNames.some((known) => known === name);

function groupsProblem(groups: readonly string[]): string | null {
  const unknown = groups.find((name) => !isKnown(name));
  if (unknown !== undefined) return formProblemWords.unknownGroup(unknown, groupNames.join(', '));
  if (groups.includes('uv') !== groups.includes('cj')) return formProblemWords.groupUvAlone;
  return groups.some((name) => measuring.has(name)) ? null : formProblemWords.noMeasuringGroup;
}

interface Compiled {
  readonly compiled: RE2JS;
  readonly groups: readonly string[];
}

function readLine({ compiled, groups }: Compiled, line: string, deviceId: string): ParsedLine {
  const frame = framed(line);
  if (frame.kind === 'rejected') return frame;
  const match = compiled.matcher(frame.payload.trim());
  if (!match.matches()) return rejected('malformed', lineRejectedWords.noMatch);
  const found = groups.flatMap((name) => {
    const text = match.group(name);
    return text === null ? [] : [[name, text] as const];
  });
  if (!found.some(([name]) => measuring.has(name)))
    return rejected('incomplete', lineRejectedWords.incomplete);
  const values: Record<string, unknown> = {};
  for (const [name, text] of found) {
    const value = valueOf(name, text.trim());
    if (value === null)
      return rejected('bad-value', lineRejectedWords.badCell(lineRejectedWords.group(name), text));
    if (value !== 'none') values[name] = value;
  }
  const made = probeSample(values, deviceId);
  return 'kind' in made ? made : { kind: 'sample', ...made, form: 'pattern', check: frame.check };
}

/** Null where the text can't be what its group is named for. */
function valueOf(name: string, text: string): unknown {
  if (!isKnown(name)) return null;
  return name === 'p' ? probeName(text) : cell(name, text);
}
