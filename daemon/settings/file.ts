import { open, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { settingsWords } from '../../shared/words/settings.ts';
import { readersOf } from './forms.ts';
import { firstSettings, type Settings, settingsSchema } from './settings.ts';
import { upgraded } from './upgrade.ts';

export const SETTINGS_FILE = 'settings.json';

/** The settings can't be read; the message names the file, the field and what would be right. */
export class SettingsUnreadable extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'SettingsUnreadable';
  }
}

/**
 * Reads the settings of a data folder; a folder without any gets the first ones.
 * @throws SettingsUnreadable rather than going on without the user's limits
 */
export async function readSettings(dir: string): Promise<Settings> {
  const path = join(dir, SETTINGS_FILE);
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return firstSettings;
    throw new SettingsUnreadable(settingsWords.unreadable(path, String(error)));
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new SettingsUnreadable(settingsWords.notJson(path, String(error)));
  }
  const parsed = settingsSchema.safeParse(upgraded(value));
  if (parsed.success) return withReadableForms(path, parsed.data);
  const [issue] = parsed.error.issues;
  throw new SettingsUnreadable(
    settingsWords.badField(path, issue?.path.join('.') ?? '', issue?.message ?? ''),
  );
}

/** A file may have been edited by hand: a form that can't be read would make a device silent. */
async function withReadableForms(path: string, settings: Settings): Promise<Settings> {
  const read = await readersOf(settings.devices);
  if (read.kind === 'readers') return settings;
  const { message, where } = read.problem;
  throw new SettingsUnreadable(
    settingsWords.badField(path, `devices.${read.device}.form.${where}`, message.replace(/\.$/, '')),
  );
}

/** Writes the settings so that after a crash the file is the old one or the new one, whole; durable when it settles. */
export async function writeSettings(dir: string, settings: Settings): Promise<void> {
  const path = join(dir, SETTINGS_FILE);
  const next = `${path}.new`;
  const file = await open(next, 'w');
  try {
    await file.writeFile(`${JSON.stringify(settings, null, 2)}\n`);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(next, path);
  await syncFolder(dir);
}

async function syncFolder(dir: string): Promise<void> {
  // Windows can't open a folder to sync it, and needs no such sync after a rename.
  if (process.platform === 'win32') return;
  const folder = await open(dir, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}
