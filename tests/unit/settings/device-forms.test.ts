import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { deviceSettings, withDeviceForm, withDeviceName } from '../../../daemon/settings/change.ts';
import { readSettings, SETTINGS_FILE, writeSettings } from '../../../daemon/settings/file.ts';
import { firstSettings, type Settings } from '../../../daemon/settings/settings.ts';
import { type LineForm, protocolForm } from '../../../shared/messages/line-form.ts';

const form: LineForm = {
  kind: 'columns',
  separator: 'semicolon',
  columns: [
    { is: 'ignored', probe: '1' },
    { is: 't', probe: '1' },
  ],
};

function folder(): string {
  const dir = mkdtempSync(join(tmpdir(), 'forms-'));
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
  return dir;
}

/** What comes of a settings file with these devices. */
async function read(devices: unknown): Promise<Settings | string> {
  const dir = folder();
  writeFileSync(join(dir, SETTINGS_FILE), JSON.stringify({ ...firstSettings, devices }));
  return readSettings(dir).catch((error: unknown) => String(error));
}

describe('the form of a device’s lines', () => {
  it('stands beside its name, each outliving a change of the other', () => {
    const named = withDeviceName(firstSettings, 'A', 'left handle').settings;
    const both = withDeviceForm(named, 'A', form).settings;
    expect(both.devices).toEqual([{ id: 'A', name: 'left handle', form }]);
    const unnamed = withDeviceName(both, 'A', '').settings;
    expect(unnamed.devices).toEqual([{ id: 'A', name: '', form }]);
    expect(withDeviceForm(unnamed, 'A', protocolForm).settings.devices).toEqual([]);
    expect(withDeviceForm(both, 'A', protocolForm).device).toEqual({
      id: 'A',
      name: 'left handle',
      form: protocolForm,
    });
  });

  it('is our own protocol where nothing was settled', () => {
    expect(deviceSettings(firstSettings, 'B')).toEqual({ id: 'B', name: '', form: protocolForm });
  });

  it('is written with the settings and comes back the same', async () => {
    const dir = folder();
    const { settings } = withDeviceForm(firstSettings, 'A', form);
    await writeSettings(dir, settings);
    expect(JSON.parse(readFileSync(join(dir, SETTINGS_FILE), 'utf8'))).toMatchObject({
      devices: [{ id: 'A', form }],
    });
    expect(await readSettings(dir)).toEqual(settings);
  });

  it('is our own protocol in settings of before there were forms', async () => {
    expect(await read([{ id: 'A', name: 'left handle' }])).toMatchObject({
      devices: [{ id: 'A', name: 'left handle', form: protocolForm }],
    });
  });

  it.each([
    [{ kind: 'pattern', pattern: '(?P<t>' }, 'devices.1.form.pattern": The pattern can’t be read: '],
    [{ kind: 'pattern', pattern: '(?P<x>.)' }, 'devices.1.form.pattern": No group is called “x” here.'],
    [{ kind: 'columns', separator: 'tab', columns: [] }, 'devices.1.form.columns": Nothing in it measures.'],
    [{ kind: 'columns', separator: 'dot', columns: [] }, 'devices.1.form.separator"'],
    [{ kind: 'other' }, 'devices.1.form'],
  ])('that can’t be read stops the start, and the field is named: %j', async (bad, words) => {
    expect(
      await read([
        { id: 'A', name: 'a' },
        { id: 'B', name: 'b', form: bad },
      ]),
    ).toContain(words);
  });
});
