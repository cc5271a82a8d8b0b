import { describe, expect, it } from 'vitest';
import type { Device } from '../../../daemon/probe/source.ts';
import { withChecksum } from '../../../daemon/probe/wire/checksum.ts';
import { LineTally } from '../../../daemon/probe/wire/tally.ts';
import { withDeviceForm } from '../../../daemon/settings/change.ts';
import { firstSettings } from '../../../daemon/settings/settings.ts';
import { useForms } from '../../../daemon/watching/device-desk.ts';
import type { LineForm } from '../../../shared/messages/line-form.ts';
import { bench, FakeSource } from './support/bench.ts';
import { refused } from './support/refused.ts';

const form: LineForm = {
  kind: 'columns',
  separator: 'semicolon',
  columns: [
    { is: 'ignored', probe: '1' },
    { is: 't', probe: '1' },
  ],
};

/** A board whose lines come over a wire; its id may become known only once it is there. */
class WiredSource extends FakeSource {
  override device: Device;
  readonly wire = new LineTally();

  constructor(id: string, clock: ConstructorParameters<typeof FakeSource>[1]) {
    super(id, clock);
    this.device = { id, path: '/dev/x', simulated: false };
  }

  kind(line: string): string {
    this.wire.seen(line);
    return this.wire.read(line, this.device.id).kind;
  }
}

function begin(settings = firstSettings) {
  const made = bench({ settings });
  const source = new WiredSource('A', made.clock);
  made.program.addSource(source);
  source.link('connected');
  return { ...made, source };
}

describe('the form of a device’s lines', () => {
  it('is in effect once it is settled, and so is our own protocol again', async () => {
    const { desk, source } = begin();
    expect(source.kind('12.3;121,4')).toBe('rejected');
    expect(await desk.devices.putForm('A', form)).toEqual({ id: 'A', name: '', form });
    expect(desk.devices.devices()).toEqual([{ id: 'A', name: '', form }]);
    expect(source.kind('12.3;121,4')).toBe('sample');
    await desk.devices.putForm('A', { kind: 'protocol' });
    expect([source.kind('12.3;121,4'), source.kind('t=1')]).toEqual(['rejected', 'sample']);
  });

  it('is in effect from the start on, also for a device whose id is known only once it is there', async () => {
    const { settings } = withDeviceForm(firstSettings, 'B', form);
    const { desk, source, program, settings: keeper } = begin(settings);
    await useForms(program.devices, keeper);
    expect(source.kind('1;2')).toBe('rejected');
    source.device = { ...source.device, id: 'B' };
    source.link('starting');
    expect(source.kind('1;2')).toBe('sample');
    expect((await desk.devices.lines('B', null)).form).toEqual(form);
  });

  it('can be settled for a device that is not there', async () => {
    const { desk } = begin();
    expect(await desk.devices.putForm('elsewhere', form)).toMatchObject({ id: 'elsewhere', form });
  });

  it('is refused with the reason where it can’t be read; nothing has changed then', async () => {
    const { desk, source } = begin();
    const bad: LineForm = { kind: 'pattern', pattern: '(?P<t>' };
    expect(await refused(desk.devices.putForm('A', bad))).toMatchObject({
      because: 'invalid',
      where: 'pattern',
    });
    expect(desk.devices.devices()).toEqual([]);
    expect(source.kind('t=1')).toBe('sample');
  });

  it('is refused for a device without lines, such as the simulated iron', async () => {
    const { desk, program, clock } = bench();
    program.addSource(new FakeSource('simulated', clock, true));
    for (const act of [desk.devices.putForm('simulated', form), desk.devices.lines('simulated', null)])
      expect(await refused(act)).toMatchObject({ because: 'conflict', where: 'id' });
    expect(await refused(desk.devices.lines('none', null))).toMatchObject({
      because: 'unknown',
      where: 'id',
    });
  });
});

describe('the last lines of a device', () => {
  it('are read in the form in use, or in another one without settling it', async () => {
    const { desk, source } = begin();
    source.kind(withChecksum('12.3;121,4'));
    const inUse = await desk.devices.lines('A', null);
    expect(inUse).toMatchObject({ form: { kind: 'protocol' }, likelySeparator: 'semicolon' });
    expect(inUse.lines.map(({ taken }) => taken)).toEqual([false]);
    const tried = await desk.devices.lines('A', form);
    expect(tried.lines.map(({ says }) => says)).toEqual(['probe 1: 121.4 °C']);
    expect(tried.checksummed).toBe(true);
    expect(desk.devices.devices()).toEqual([]);
  });

  it('are told in the unit that a probe’s device counts in', async () => {
    const { desk, source } = begin();
    await desk.devices.putForm('A', form);
    source.say(250);
    const [probe] = desk.settings.probes();
    const { id, ...draft } = probe ?? expect.unreachable();
    await desk.settings.putProbe(id, { ...draft, unit: 'degF' });
    source.kind('1;250');
    expect((await desk.devices.lines('A', null)).lines[0]?.says).toBe('probe 1: 250 °F');
  });
});
