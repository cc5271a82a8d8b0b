import { describe, expect, it } from 'vitest';
import { reloadStep, versionIn } from '../../../../dashboard/link/reload.ts';

const older = { ownVersion: '0.1.0', programVersion: '0.2.0', triedFor: null, wouldLose: false };

describe('a page of another version than its program', () => {
  it('stays where the versions are one', () => {
    expect(reloadStep({ ...older, programVersion: '0.1.0' })).toBe('stay');
  });

  it('reloads itself once for each version', () => {
    expect(reloadStep(older)).toBe('reload');
    expect(reloadStep({ ...older, triedFor: '0.1.9' })).toBe('reload');
    expect(reloadStep({ ...older, triedFor: '0.2.0' })).toBe('stale');
  });

  it('waits where a reload would lose a command', () => {
    expect(reloadStep({ ...older, wouldLose: true })).toBe('wait');
  });

  it('tells the user where it can’t know whether it has tried already', () => {
    expect(reloadStep({ ...older, triedFor: undefined })).toBe('stale');
  });
});

describe('the version in a message that can’t be read otherwise', () => {
  it('is found, or is null', () => {
    expect(versionIn({ kind: 'snapshot', live: { program: { version: '9.0.0' }, new: 1 } })).toBe('9.0.0');
    for (const none of [null, 7, 'text', {}, { live: null }, { live: { program: { version: 9 } } }])
      expect(versionIn(none)).toBeNull();
  });
});
