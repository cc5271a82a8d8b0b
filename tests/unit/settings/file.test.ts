import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { withNewProbe } from '../../../daemon/settings/change.ts';
import {
  readSettings,
  SETTINGS_FILE,
  SettingsUnreadable,
  writeSettings,
} from '../../../daemon/settings/file.ts';
import { firstSettings } from '../../../daemon/settings/settings.ts';

function folder(): string {
  const dir = mkdtempSync(join(tmpdir(), 'settings-'));
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
  return dir;
}

const settings = withNewProbe(withNewProbe(firstSettings, 'A/1', false), 'B/1', false);

/** The sentence with which settings that hold this are refused. */
async function refusal(text: string): Promise<string> {
  const dir = folder();
  writeFileSync(join(dir, SETTINGS_FILE), text);
  const read = readSettings(dir).then(
    () => 'read',
    (error: unknown) => (error instanceof SettingsUnreadable ? error.message : String(error)),
  );
  const message = await read;
  expect(message).toContain(join(dir, SETTINGS_FILE));
  expect(readFileSync(join(dir, SETTINGS_FILE), 'utf8')).toBe(text);
  return message;
}

const changed = (change: (value: { [key: string]: unknown }) => void): string => {
  const value = JSON.parse(JSON.stringify(settings)) as { [key: string]: unknown };
  change(value);
  return JSON.stringify(value);
};

describe('settings on the disk', () => {
  it('are the first ones in a folder without any', async () => {
    expect(await readSettings(folder())).toEqual(firstSettings);
  });

  it('are read as they were written, and nothing else is left in the folder', async () => {
    const dir = folder();
    await writeSettings(dir, firstSettings);
    await writeSettings(dir, settings);
    expect(await readSettings(dir)).toEqual(settings);
    expect(readdirSync(dir)).toEqual([SETTINGS_FILE]);
  });

  it('are the old ones, whole, after a write that broke off', async () => {
    const dir = folder();
    await writeSettings(dir, settings);
    writeFileSync(join(dir, `${SETTINGS_FILE}.new`), '{ "format": 1, "sched');
    expect(await readSettings(dir)).toEqual(settings);
    await writeSettings(dir, firstSettings);
    expect(await readSettings(dir)).toEqual(firstSettings);
  });

  it('that can not be written say why', async () => {
    const dir = folder();
    mkdirSync(join(dir, `${SETTINGS_FILE}.new`));
    await expect(writeSettings(dir, settings)).rejects.toThrow('EISDIR');
  });
});

describe('settings that can not be read refuse, with file and field', () => {
  it.each([
    ['', 'not JSON'],
    ['{', 'not JSON'],
    ['[]', 'wrong at ""'],
    [changed((s) => (s['format'] = 3)), 'wrong at "format"'],
    [changed((s) => (s['more'] = 1)), 'more'],
    [changed((s) => (s['schedules'] = [])), 'wrong at "schedules"'],
  ])('%s', async (text, says) => {
    expect(await refusal(text)).toContain(says);
  });

  it.each([
    ['an iron on no schedule', '"scheduleId":"shipped"', '"scheduleId":"lost"', 'irons.0.scheduleId'],
    ['an iron with a probe that is not settled', '"probes":["A/1"]', '"probes":["C/1"]', 'irons.0.probes.0'],
    ['a probe on two irons', '"probes":["B/1"]', '"probes":["A/1"]', 'irons.1.probes.0'],
    ['two irons of one id', '"id":"iron-2"', '"id":"iron-1"', 'irons.1.id'],
    ['two probes of one id', '"id":"B/1"', '"id":"A/1"', 'probes.1.id'],
    [
      'a limit that is no number',
      /"fabricLimitC":[0-9.]+/,
      '"fabricLimitC":"hot"',
      'schedules.0.fabricLimitC',
    ],
    ['a limit beyond belief', /"fabricLimitC":[0-9.]+/, '"fabricLimitC":4000', 'schedules.0.fabricLimitC'],
  ])('%s', async (_, from, to, field) => {
    const text = JSON.stringify(settings);
    expect(text).toMatch(from);
    expect(await refusal(text.replace(from, to))).toContain(`wrong at "${field}"`);
  });

  it('the same version of a schedule twice', async () => {
    const [schedule] = settings.schedules;
    const message = await refusal(changed((s) => (s['schedules'] = [schedule, schedule])));
    expect(message).toContain('wrong at "schedules.1.id"');
    expect(message).toContain('"shipped, version 1" is used twice');
  });

  it('a folder in its place', async () => {
    const dir = folder();
    mkdirSync(join(dir, SETTINGS_FILE));
    await expect(readSettings(dir)).rejects.toThrow(join(dir, SETTINGS_FILE));
  });
});
