import { describe, expect, it } from 'vitest';
import { withDeviceName, withNewProbe, withSchedule } from '../../../daemon/settings/change.ts';
import { firstSettings, scheduleVersions, settingsSchema } from '../../../daemon/settings/settings.ts';

const AT = '2026-03-04T13:20:00Z';

describe('versions of a schedule', () => {
  it('all stay, the newest first; putting the values of an old one back makes one more', () => {
    const { id, version, madeAt, ...shipped } = firstSettings.schedules[0] ?? expect.unreachable();
    expect({ id, version, madeAt }).toMatchObject({ id: 'shipped', version: 1 });
    const changed = { ...shipped, fabricLimitC: 185 };
    const two = withSchedule(firstSettings, changed, { id, basedOn: 1, madeAt: AT }).settings;
    const three = withSchedule(two, shipped, { id, basedOn: 2, madeAt: AT }).settings;
    const versions = scheduleVersions(three, id);
    expect(versions.map((one) => one.version)).toEqual([3, 2, 1]);
    expect(versions[0]).toEqual({ ...shipped, id, version: 3, madeAt: AT });
    expect(scheduleVersions(three, 'other')).toEqual([]);
  });
});

describe('names of devices', () => {
  it('are given, changed and taken away; settings of before there were any are read', () => {
    const one = withDeviceName(firstSettings, '/dev/ttyUSB0', 'left handle').settings;
    expect(one.devices).toEqual([{ id: '/dev/ttyUSB0', name: 'left handle' }]);
    const two = withDeviceName(one, '/dev/ttyUSB0', 'right handle').settings;
    expect(two.devices).toEqual([{ id: '/dev/ttyUSB0', name: 'right handle' }]);
    expect(withDeviceName(two, '/dev/ttyUSB0', '').settings.devices).toEqual([]);
    const { devices: _none, ...before } = withNewProbe(firstSettings, 'board/1', false);
    expect(settingsSchema.parse(before).devices).toEqual([]);
  });
});
