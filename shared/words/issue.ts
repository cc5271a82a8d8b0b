import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

/** Where a value that a schema refused stands, for example `stages[0].targetC`; empty for the whole. */
export const issuePath = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, key) =>
      typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`,
    '',
  );

/**
 * What a schema refused, as a sentence: what was wrong, where, and what would be right. `whole` names the value as
 * a whole, for example "the body". Issues must come from a parse with `reportInput`, so that a missing field is
 * told from a wrong one.
 */
export function issueSentence(issue: Issue, whole: string): string {
  const where = issuePath(issue.path);
  return `${where === '' ? whole : `"${where}"`} ${said(issue)}.`;
}

function said(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `${was(issue.input)}; it must be ${typeNames[issue.expected] ?? issue.expected}`;
    case 'too_small':
      return `is too small; ${sizeSaid(issue.origin, 'at least', issue.minimum)}`;
    case 'too_big':
      return `is too big; ${sizeSaid(issue.origin, 'at most', issue.maximum)}`;
    case 'invalid_value':
      return `${was(issue.input)}; it must be ${listed(issue.values)}`;
    case 'unrecognized_keys':
      return `has ${issue.keys.length === 1 ? 'a field that is' : 'fields that are'} not known here: ${quoted(issue.keys)}`;
    case 'invalid_union':
      return `${issue.discriminator === undefined ? was(issue.input) : 'is missing or not known'}; ${unionSaid(issue)}`;
    case 'invalid_format':
    case 'not_multiple_of':
    case 'invalid_key':
    case 'invalid_element':
      break;
    case 'custom':
      // What two fields are to each other is checked at the object that holds them: its form says nothing of the one.
      if (typeof issue.input === 'object') return `can’t be so: ${issue.message}`;
  }
  return `${was(issue.input)}: ${issue.message}`;
}

const typeNames: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object',
  array: 'a list',
  null: 'null',
};

function unionSaid(issue: z.core.$ZodIssueInvalidUnion): string {
  const options = 'options' in issue ? (issue.options ?? []) : [];
  return options.length > 0 ? `it must be ${listed(options)}` : 'it has none of the allowed forms';
}

function sizeSaid(origin: string, bound: string, limit: number | bigint): string {
  if (origin === 'string') return `it takes ${bound} ${limit} ${limit === 1 ? 'character' : 'characters'}`;
  if (origin === 'array') return `it takes ${bound} ${limit} ${limit === 1 ? 'entry' : 'entries'}`;
  return `it must be ${bound} ${limit}`;
}

/** What the value was, briefly: a long text is cut, a structure only named. */
function was(input: unknown): string {
  if (input === undefined) return 'is missing';
  if (input === null) return 'is null';
  if (typeof input === 'string')
    return `is ${JSON.stringify(input.length > 40 ? `${input.slice(0, 40)}…` : input)}`;
  if (typeof input === 'number' || typeof input === 'boolean') return `is ${String(input)}`;
  return Array.isArray(input) ? 'is a list' : 'is an object';
}

const listed = (values: readonly unknown[]): string =>
  `${values.length > 1 ? 'one of ' : ''}${values.map((v) => JSON.stringify(v)).join(', ')}`;

const quoted = (keys: readonly string[]): string =>
  keys
    .slice(0, 5)
    .map((key) => JSON.stringify(key.slice(0, 60)))
    .join(', ');
