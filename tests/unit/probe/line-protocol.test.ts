import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { splitChecksum } from '../../../daemon/probe/wire/checksum.ts';
import { readerFor } from '../../../daemon/probe/wire/forms/reader.ts';
import { MAX_LINE, parseLine } from '../../../daemon/probe/wire/line.ts';
import { rejectCauses } from '../../../daemon/probe/wire/reject.ts';
import { BOOT_MS } from '../../../daemon/probe/wire/stack.ts';
import { groupNames, LONGEST_PATTERN } from '../../../shared/messages/line-form.ts';

/** The specification is checked against what reads the lines, so that neither goes its own way. */
const text = readFileSync(new URL('../../../firmware-notes/line-protocol.md', import.meta.url), 'utf8');

const chapter = (title: string): string => text.split(`\n## ${title}\n`)[1]?.split('\n## ')[0] ?? '';

/** Lines in blocks without a language. */
const examples = (of: string): readonly string[] =>
  [...of.matchAll(/^```\n([^`]*)^```$/gm)].flatMap(([, block = '']) => block.trimEnd().split('\n'));

const refused = examples(chapter('How lines are taken'));

describe('the line protocol’s specification', () => {
  it.each(examples(text).filter((line) => !refused.includes(line) && !line.startsWith('123456789')))(
    'gives an example that is taken: %s',
    (line) => {
      expect(parseLine(line, 'dev').kind).not.toBe('rejected');
    },
  );

  it.each(refused)('gives an example that is refused for its cause: %s', (row) => {
    const [, line = '', cause] = /^(.*?) {2,}([a-z-]+)$/.exec(row) ?? [];
    expect(parseLine(line, 'dev')).toEqual({ kind: 'rejected', cause });
  });

  it('gives checksums that hold', () => {
    const checked = examples(chapter('Checksums'));
    expect(checked).toHaveLength(4);
    for (const line of checked) expect(splitChecksum(line)?.check).not.toBe('none');
    expect(checked.map((line) => splitChecksum(line)?.check)).toEqual(['xor', 'crc', 'xor', 'crc']);
  });

  it('names every key that measures, and every cause', () => {
    for (const key of ['p', 'n', 'ms', 't', 'uv', 'cj', 'g', 'b', 'ta', 'rh', 'f']) {
      expect(chapter('Pairs')).toContain(`\n| \`${key}\` |`);
    }
    for (const cause of rejectCauses) expect(chapter('How lines are taken')).toContain(`\n| \`${cause}\` |`);
  });

  it('gives an example of a pattern that takes its line, and the most that a pattern may have', async () => {
    const other = chapter('Other forms');
    const [, line = '', pattern = ''] = /`([^`]+)` is taken by `([^`]+)`/.exec(other) ?? [];
    const read = await readerFor({ kind: 'pattern', pattern });
    expect(read.kind === 'reader' && read.reader.read(line, 'dev')).toMatchObject({
      kind: 'sample',
      sample: { tC: 121.4 },
      seq: 7,
    });
    expect(other).toContain(`at most ${LONGEST_PATTERN} characters`);
    for (const key of groupNames) expect(other).toContain(`\`${key}\``);
  });

  it('gives the longest line and the time of boot text as they are', () => {
    expect(text).toContain(`at most ${MAX_LINE} characters`);
    expect(BOOT_MS).toBe(2000);
    expect(text).toContain('For **two seconds** after the port was opened');
  });
});
