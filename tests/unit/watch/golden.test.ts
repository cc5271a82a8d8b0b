import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { alarmKinds } from '../../../shared/alarm/record.ts';
import { FOLD_VERSION } from '../../../shared/watch/watch.ts';
import { type Golden, makeGolden, replayGolden, rounded } from './support/golden.ts';

/**
 * A stored session whose findings may not change unseen: books hold such sessions, and replay compares exactly within one
 * version of the fold. Where a change is meant, raise `FOLD_VERSION` in shared/watch/watch.ts and make it again:
 *
 *     SOLEPLATE_GOLDEN=write npx vitest run --project unit tests/unit/watch/golden.test.ts && npm run format
 *
 * It is not written while the version is the one that it was made with.
 */
const file = new URL('../../fixtures/golden-session.json', import.meta.url);
const readGolden = (): Golden => JSON.parse(readFileSync(file, 'utf8')) as Golden;

if (process.env['SOLEPLATE_GOLDEN'] === 'write') {
  if (existsSync(file) && readGolden().foldVersion === FOLD_VERSION)
    throw new Error(`The golden session is of version ${FOLD_VERSION} already: raise FOLD_VERSION first.`);
  const { entries, found, ...head } = makeGolden();
  const rows = (all: readonly unknown[]): string => all.map((row) => JSON.stringify(row)).join(',\n');
  writeFileSync(
    file,
    `{${JSON.stringify(head).slice(1, -1)},\n"entries":[\n${rows(entries)}\n],\n"found":[\n${rows(found)}\n]}\n`,
  );
}

describe('the golden session', () => {
  const golden = readGolden();

  test('was made by this version of the fold', () => {
    expect(golden.foldVersion, 'make the golden session again: see the head of this file').toBe(FOLD_VERSION);
  });

  test('replays to exactly its findings', () => {
    expect(rounded(replayGolden(golden)), 'findings changed: raise FOLD_VERSION if that is meant').toEqual(
      rounded(golden.found),
    );
  });

  test('meets every kind of alarm, every change of one, and every kind of finding', () => {
    const met = new Set<string>();
    for (const { finding: f } of golden.found) {
      met.add(f.kind);
      if (f.kind === 'alarm') met.add(f.alarm.kind).add(f.change);
      if (f.kind === 'phase') met.add(f.phase);
      if (f.kind === 'quality') met.add(f.quality);
    }
    const kinds = [
      'alarm',
      'quality',
      'phase',
      'cycle',
      'stretch',
      'load',
      'check',
      'typed',
      'visit',
      'heat',
      'refused',
    ];
    const changes = ['raised', 'cleared', 'acknowledged', 'silenced', 'silence-ended'];
    const phases = ['cold', 'warming', 'regulating', 'cooling'];
    const qualities = ['ok', 'open', 'device-lost', 'starting', 'jump'];
    const alarms = alarmKinds.filter((k) => k !== 'above-band');
    for (const name of [...kinds, ...changes, ...phases, ...qualities, ...alarms])
      expect(met).toContain(name);
  });
});
