import { describe, expect, it } from 'vitest';
import { bigIron, demoIrons, type IronTraits } from '../../../daemon/probe/simulated/irons.ts';
import { type FaultKind, leftOnRest, type Scenario } from '../../../daemon/probe/simulated/scenario.ts';
import { type Said, saidBy, simulateIron } from '../../../daemon/probe/simulated/simulated-iron.ts';
import { parseLine } from '../../../daemon/probe/wire/line.ts';

const withFault = (kind: FaultKind, fromS = 2, toS = 4): Scenario => ({
  ...leftOnRest(150),
  faults: [{ fromS, toS, kind }],
});

function listen(
  scenario: Scenario,
  untilMs: number,
  traits: IronTraits = bigIron,
  seed = 1,
): readonly Said[] {
  const heard: Said[] = [];
  for (const said of saidBy(simulateIron(traits, scenario, seed))) {
    if (said.tMs > untilMs) return heard;
    heard.push(said);
  }
  return heard;
}

const linesOf = (heard: readonly Said[]): readonly string[] => heard.flatMap((said) => said.lines);
const samplesOf = (heard: readonly Said[]) =>
  linesOf(heard).flatMap((line) => {
    const parsed = parseLine(line, 'simulated');
    return parsed.kind === 'sample' ? [parsed] : [];
  });

const plateAfterC = (scenario: Scenario): number =>
  listen(scenario, 90_000).at(-1)?.truth.plateC ?? Number.NaN;

describe('a simulated iron', () => {
  it('says one line a period, numbered, with the device clock, after a greeting', () => {
    const heard = listen(leftOnRest(150), 5000);
    expect(heard).toHaveLength(51);
    expect(linesOf(heard)[0]).toMatch(/^id=/);
    const samples = samplesOf(heard);
    expect(samples.map((s) => s.seq)).toEqual(heard.map((_, i) => i));
    expect(samples.map((s) => s.sample.deviceMs)).toEqual(heard.map((said) => said.tMs));
  });

  it('speaks only lines that stand by their checksum', () => {
    for (const traits of demoIrons) {
      const lines = linesOf(listen(leftOnRest(150), 120_000, traits));
      for (const line of lines) expect(parseLine(line, 'simulated')).toMatchObject({ check: 'xor' });
      expect(lines.length).toBe(1 + 1 + 120_000 / traits.wire.periodMs);
    }
  });

  it('says what its junction has, within noise and resolution, and the junction trails the plate', () => {
    const heard = listen(leftOnRest(150), 60_000);
    for (const [i, { sample }] of samplesOf(heard).entries()) {
      const truth = heard[i]?.truth;
      // Six standard deviations of the noise and half a step.
      expect(Math.abs((sample.tC ?? Number.NaN) - (truth?.junctionC ?? 0))).toBeLessThan(6 * 0.12 + 0.125);
    }
    const { plateC, junctionC } = heard[600]?.truth ?? { plateC: 0, junctionC: 0 };
    expect(plateC).toBeGreaterThan(70);
    // 1.5 s behind a plate that rises by about 1 K/s.
    expect(plateC - junctionC).toBeGreaterThan(1);
    expect(plateC - junctionC).toBeLessThan(2);
  });

  it('says the same for the same seed; another seed changes the noise and not the heat', () => {
    const [one, again, other] = [1, 1, 2].map((seed) => listen(leftOnRest(150), 20_000, bigIron, seed));
    expect(one).toEqual(again);
    expect(linesOf(one ?? [])).not.toEqual(linesOf(other ?? []));
    expect(one?.map((said) => said.truth)).toEqual(other?.map((said) => said.truth));
  });

  it('goes on from a state that has been through JSON', () => {
    const iron = simulateIron(bigIron, leftOnRest(150), 3);
    let state = iron.start;
    for (let i = 0; i < 100; i++) state = iron.next(state).state;
    const revived = JSON.parse(JSON.stringify(state)) as typeof state;
    expect(iron.next(revived)).toEqual(iron.next(state));
  });

  it('moves while in use and is still on its rest', () => {
    const scenario: Scenario = {
      ...leftOnRest(150),
      turns: [
        { atS: 0, dialC: 150 },
        { atS: 10, place: 'on-work' },
      ],
    };
    const samples = samplesOf(listen(scenario, 20_000));
    const rest = samples.slice(0, 100).map((s) => s.sample.motionG ?? Number.NaN);
    const work = samples.slice(100).map((s) => s.sample.motionG ?? Number.NaN);
    expect(Math.max(...rest)).toBeLessThan(Math.min(...work));
  });

  it('gives heat to the work', () => {
    const onWork: Scenario = { ...leftOnRest(150), turns: [{ atS: 0, dialC: 150, place: 'on-work' }] };
    expect(plateAfterC(onWork)).toBeLessThan(plateAfterC(leftOnRest(150)) - 3);
  });
});

describe('a fault', () => {
  it('leaves heat and lines outside its span as they were, except a pulled cable’s numbering', () => {
    const clean = listen(leftOnRest(150), 8000);
    for (const kind of ['open', 'silence', 'garbage'] as const) {
      const heard = listen(withFault(kind), 8000);
      expect(heard.map((s) => s.truth.plateC)).toEqual(clean.map((s) => s.truth.plateC));
      expect(heard.slice(0, 20)).toEqual(clean.slice(0, 20));
      expect(heard.slice(40)).toEqual(clean.slice(40));
      expect(heard.slice(20, 40).map((s) => s.lines)).not.toEqual(clean.slice(20, 40).map((s) => s.lines));
    }
  });

  it('open: says so and gives no temperature', () => {
    const samples = samplesOf(listen(withFault('open'), 3900)).slice(20);
    expect(samples).toHaveLength(20);
    for (const { sample } of samples) expect(sample).toMatchObject({ tC: null, faults: ['open'] });
  });

  it('silence: nothing is said while time goes on, and the numbers show what is missing', () => {
    const heard = listen(withFault('silence'), 5000);
    expect(heard.slice(20, 40).every((said) => said.lines.length === 0 && said.link === 'connected')).toBe(
      true,
    );
    expect(samplesOf(heard.slice(40))[0]?.seq).toBe(40);
  });

  it('garbage: most lines are damaged, some come through', () => {
    const lines = linesOf(listen(withFault('garbage', 0, 100), 90_000));
    const taken = lines.filter((line) => {
      const parsed = parseLine(line, 'simulated');
      return parsed.kind !== 'rejected' && parsed.check === 'xor';
    });
    expect(taken.length / lines.length).toBeGreaterThan(0.15);
    expect(taken.length / lines.length).toBeLessThan(0.25);
  });

  it('lost: link lost, then a device that has started afresh', () => {
    const heard = listen(withFault('lost'), 5000);
    expect(heard.map((s) => s.link).slice(19, 41)).toEqual([
      'connected',
      ...Array.from({ length: 20 }, () => 'lost'),
      'connected',
    ]);
    expect(heard.slice(20, 40).flatMap((s) => s.lines)).toEqual([]);
    const back = heard.slice(40);
    expect(linesOf(back)[0]).toMatch(/^id=/);
    expect(samplesOf(back)[0]).toMatchObject({ seq: 0, sample: { deviceMs: 0 } });
    expect(samplesOf(back)[1]).toMatchObject({ seq: 1, sample: { deviceMs: 100 } });
  });

  it('runaway: heats past its dial, and the thermostat is back when it is over', () => {
    const heard = listen(withFault('runaway', 120, 180), 400_000);
    const peakC = Math.max(...heard.map((said) => said.truth.plateC));
    expect(peakC).toBeGreaterThan(185);
    expect(heard.at(-1)?.truth.plateC).toBeLessThan(165);
  });
});
