import { describe, expect, test } from 'vitest';
import { emfUv, hotJunctionC } from '../../../shared/thermocouple/thermocouple.ts';
import { type ThermocoupleType, thermocoupleTypes } from '../../../shared/thermocouple/types.ts';
import { Live } from './support/live.ts';
import { carried, PROBE, probeSettings, watchSettings } from './support/settings.ts';

const ROOM_C = 22;
/** The board stands a little warmer than the iron. */
const JUNCTION_C = 24;

function known(value: number | null): number {
  if (value === null) throw new Error('out of range');
  return value;
}

interface Wired {
  /** What the wire is. */
  readonly real: ThermocoupleType;
  /** What it is settled as. */
  readonly set: ThermocoupleType;
  readonly reversed?: boolean;
  readonly charted?: readonly { readonly mark: number; readonly meanC: number }[];
}

/** A watch whose probe sends its emf, from a plate of known temperature. */
class Wire {
  readonly live: Live;
  readonly #wired: Wired;
  #plateC = ROOM_C;

  constructor(wired: Wired) {
    this.#wired = wired;
    this.live = new Live(carried({ ...settingsOf(wired.set), charted: wired.charted ?? [] }));
  }

  to(plateC: number, kPerS: number): this {
    const fromC = this.#plateC;
    return this.hold(Math.abs(plateC - fromC) / kPerS, (share) => fromC + (plateC - fromC) * share);
  }

  hold(s: number, plateC: (share: number) => number = () => this.#plateC): this {
    const { real, reversed = false } = this.#wired;
    const lines = Math.max(1, Math.round(s * 2));
    for (let i = 1; i <= lines; i++) {
      this.#plateC = plateC(i / lines);
      this.live.tMs += 500;
      const terminalUv = known(emfUv(real, this.#plateC)) - known(emfUv(real, JUNCTION_C));
      // A quarter of a degree of a type K is ten microvolts.
      const seenUv = Math.round((reversed ? -terminalUv : terminalUv) / 2) * 2 + (i % 2);
      this.live.sample({ tC: null, emfUv: seenUv, coldJunctionC: JUNCTION_C });
    }
    return this;
  }

  /** On its rest at mark 4, whose mean is `meanC`; its thermostat swings by 16 K, which another type may make 27 of. */
  onItsRest(meanC: number): this {
    this.live.place('on-rest').dial(4);
    this.hold(40).to(meanC + 8, 1.2);
    for (let i = 0; i < 6; i++) this.to(meanC - 8, 0.35).to(meanC + 8, 0.8);
    return this;
  }

  get suspected(): string | null {
    const alarm = this.live.alarm('suspect-probe');
    return alarm === undefined || alarm.state === 'normal' ? null : alarm.detail;
  }
}

const settingsOf = (thermocouple: ThermocoupleType) =>
  watchSettings([probeSettings(PROBE, { thermocouple })]);

const ironAt = (meanC: number) => [{ mark: 4, meanC }];

describe('wires the right way round, read as the type that they are', () => {
  test.each(thermocoupleTypes)('type %s is never suspected, with a chart and without', (type) => {
    for (const charted of [undefined, ironAt(151)]) {
      const wire = new Wire({ real: type, set: type, ...(charted === undefined ? {} : { charted }) });
      expect(wire.onItsRest(150).suspected).toBeNull();
      // Off, cold, and once more.
      wire.live.dial(null);
      expect(wire.to(30, 0.3).hold(300).to(160, 1.5).suspected).toBeNull();
      expect(wire.live.changes.filter((c) => c.startsWith('suspect-probe'))).toEqual([]);
    }
  });

  test('nor is one that is plunged into ice while it is being measured', () => {
    const live = new Live(carried(watchSettings([probeSettings(PROBE, { dipped: true })])));
    live.read(40, 22).ramp(0.2, 10).read(60, 0.2);
    expect(live.alarm('suspect-probe')).toBeUndefined();
  });

  test('nor one whose iron has drifted by what no type explains', () => {
    const wire = new Wire({ real: 'K', set: 'K', charted: ironAt(128) });
    expect(wire.onItsRest(150).suspected).toBeNull();
  });
});

describe('swapped wires', () => {
  test.each(thermocoupleTypes)('of type %s are said within a minute of heat', (type) => {
    const wire = new Wire({ real: type, set: type, reversed: true }).hold(40);
    expect(wire.suspected).toBeNull();
    wire.to(82, 1);
    expect(wire.suspected).toBe('reversed');
    expect(wire.live.alarm('suspect-probe')).toMatchObject({ state: 'unacknowledged', probe: PROBE });
    // As it cools again it rises: that takes nothing back.
    expect(wire.to(25, 1).hold(60).suspected).toBe('reversed');
  });

  test('stand until the plate is seen to warm up', () => {
    const live = new Live(carried(watchSettings())).read(40, 22).ramp(0, 0.5);
    expect(live.alarm('suspect-probe')?.state).toBe('unacknowledged');
    live.acknowledge('suspect-probe', PROBE).ramp(22, 1).read(30, 22);
    expect(live.alarm('suspect-probe')?.state).toBe('acknowledged');
    live.ramp(60, 1);
    expect(live.alarm('suspect-probe')?.state).toBe('normal');
  });
});

describe('a wrong type', () => {
  const pairs = thermocoupleTypes.flatMap((real) =>
    thermocoupleTypes.flatMap((set) => (real === set ? [] : [[real, set] as const])),
  );
  /** What it reads, where it can: a plate of 150 degC as another type may be out of that type's range. */
  const misread = (real: ThermocoupleType, set: ThermocoupleType): number | null =>
    hotJunctionC(set, known(emfUv(real, 150)) - known(emfUv(real, JUNCTION_C)), JUNCTION_C);

  test.each(pairs)('type %s settled as %s is told from what the iron is known to do', (real, set) => {
    const wire = new Wire({ real, set, charted: ironAt(150) }).onItsRest(150);
    const offK = Math.abs((misread(real, set) ?? Number.NaN) - 150);
    expect(offK).toSatisfy(Number.isFinite);
    // Two types that read alike at this temperature can't be told from one another.
    if (offK < 7) expect(wire.suspected).toBeNull();
    else if (offK > 9) expect(wire.suspected).toBe(`type ${real}`);
  });

  test('without a chart is told where no household iron holds its plate', () => {
    const wire = new Wire({ real: 'E', set: 'K' }).onItsRest(195);
    expect(wire.suspected).toBe('type');
  });

  test('is suspected no more once it is read as another', () => {
    const wire = new Wire({ real: 'J', set: 'K', charted: ironAt(150) }).onItsRest(150);
    expect(wire.suspected).toBe('type J');
    wire.live.give({ kind: 'settings', settings: { ...settingsOf('J'), charted: ironAt(150) } });
    wire.live.acknowledge('suspect-probe', PROBE);
    expect(wire.suspected).toBeNull();
    wire.live.dial(4);
    for (let i = 0; i < 6; i++) wire.to(142, 0.35).to(158, 0.8);
    expect(wire.suspected).toBeNull();
  });
});

test('a cold junction of negative zero survives JSON', () => {
  const live = new Live(carried(watchSettings())).sample({ tC: 0, coldJunctionC: -0 }).read(1, 100);
  expect(JSON.parse(JSON.stringify(live.state.doubts))).toEqual(live.state.doubts);
});
