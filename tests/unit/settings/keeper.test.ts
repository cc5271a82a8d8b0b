import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Refusal } from '../../../daemon/refusal.ts';
import { withNewProbe, withProbe } from '../../../daemon/settings/change.ts';
import { SettingsKeeper } from '../../../daemon/settings/keeper.ts';
import { firstSettings, type Settings } from '../../../daemon/settings/settings.ts';

/** A file that is written when the test says so, and fails when it says so. */
class SlowFile {
  holds: Settings | null = null;
  readonly #writing: { readonly settings: Settings; readonly done: (error: Error | null) => void }[] = [];

  readonly write = (settings: Settings): Promise<void> =>
    new Promise((resolve, reject) => {
      const done = (error: Error | null): void => {
        if (error === null) resolve();
        else reject(error);
      };
      this.#writing.push({ settings, done });
    });

  get waiting(): number {
    return this.#writing.length;
  }

  async finish(error: Error | null = null): Promise<void> {
    const one = this.#writing.shift();
    if (one === undefined) throw new Error('nothing is being written');
    if (error === null) this.holds = one.settings;
    one.done(error);
    await vi.advanceTimersByTimeAsync(0);
  }
}

const start = withNewProbe(firstSettings, 'A/1', false);
const labelled = (label: string) => (settings: Settings) =>
  withProbe(settings, 'A/1', { label, thermocouple: 'K', unit: 'degC' });
const labelIn = (settings: Settings | null): string | undefined => settings?.probes[0]?.label;

let file: SlowFile;
let keeper: SettingsKeeper;

beforeEach(() => {
  vi.useFakeTimers();
  file = new SlowFile();
  keeper = new SettingsKeeper(start, file.write);
});
afterEach(() => vi.useRealTimers());

describe('a change', () => {
  it('takes effect once it is written, not before', async () => {
    const change = keeper.change(labelled('tip'));
    await vi.advanceTimersByTimeAsync(0);
    expect(labelIn(keeper.current)).toBe('probe 1');
    await file.finish();
    await change;
    expect(labelIn(keeper.current)).toBe('tip');
    expect(file.holds).toBe(keeper.current);
  });

  it('that can not be written is refused, with the reason, and has changed nothing', async () => {
    const change = expect(keeper.change(labelled('tip'))).rejects.toThrow(Refusal);
    await vi.advanceTimersByTimeAsync(0);
    await file.finish(new Error('no space left'));
    await change;
    expect(keeper.current).toBe(start);
    await expect(refused(keeper, file)).resolves.toContain('no space left');
  });

  it('that is not allowed writes nothing', async () => {
    const change = keeper.change(() => {
      throw new Refusal('invalid', 'not so');
    });
    await expect(change).rejects.toThrow('not so');
    expect(file.waiting).toBe(0);
  });

  it('waits for the one before it, and is made on top of it', async () => {
    const first = keeper.change(labelled('one'));
    const second = keeper.change((s) => labelled(`${labelIn(s)} two`)(s));
    await vi.advanceTimersByTimeAsync(0);
    expect(file.waiting).toBe(1);
    await file.finish();
    await file.finish();
    await Promise.all([first, second]);
    expect(labelIn(file.holds)).toBe('one two');
  });

  it('does not stop the next one by failing', async () => {
    const failed = expect(keeper.change(labelled('one'))).rejects.toThrow();
    const next = keeper.change(labelled('two'));
    await vi.advanceTimersByTimeAsync(0);
    await file.finish(new Error('full'));
    await file.finish();
    await Promise.all([failed, next]);
    expect(labelIn(keeper.current)).toBe('two');
  });
});

async function refused(from: SettingsKeeper, slow: SlowFile): Promise<string> {
  const change = from.change(labelled('again')).then(
    () => '',
    (error: Error) => error.message,
  );
  await vi.advanceTimersByTimeAsync(0);
  await slow.finish(new Error('no space left'));
  return change;
}

const met = (): Settings => withNewProbe(keeper.current, 'B/1', false);

describe('a new probe', () => {
  it('is in effect at once, and written', async () => {
    const noticed = keeper.notice(met());
    expect(keeper.current.probes).toHaveLength(2);
    await vi.advanceTimersByTimeAsync(0);
    await file.finish();
    await noticed;
    expect(file.holds).toBe(keeper.current);
  });

  it('that comes while a change is written is not lost by it, nor is the change', async () => {
    const change = keeper.change(labelled('tip'));
    await vi.advanceTimersByTimeAsync(0);
    const noticed = keeper.notice(met());
    await file.finish();
    await file.finish();
    await change;
    await noticed;
    expect(keeper.current.probes.map((p) => p.label)).toEqual(['tip', 'probe 1']);
    expect(file.holds).toBe(keeper.current);
    expect(file.waiting).toBe(0);
  });

  it('that can not be written is told once, and tried again until it is written', async () => {
    const noticed = expect(keeper.notice(met())).rejects.toThrow('read-only');
    await vi.advanceTimersByTimeAsync(0);
    await file.finish(new Error('read-only'));
    await noticed;
    await vi.advanceTimersByTimeAsync(3000);
    await file.finish(new Error('read-only'));
    await vi.advanceTimersByTimeAsync(3000);
    await file.finish();
    expect(file.holds).toBe(keeper.current);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(file.waiting).toBe(0);
  });

  it('is written along with the next change too', async () => {
    const noticed = expect(keeper.notice(met())).rejects.toThrow();
    await vi.advanceTimersByTimeAsync(0);
    await file.finish(new Error('full'));
    await noticed;
    const change = keeper.change(labelled('tip'));
    await vi.advanceTimersByTimeAsync(0);
    await file.finish();
    await change;
    expect(file.holds?.probes).toHaveLength(2);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(file.waiting).toBe(0);
  });
});
