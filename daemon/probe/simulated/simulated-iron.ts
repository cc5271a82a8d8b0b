import type { IronTraits } from './irons.ts';
import { airLine, damaged, emfWords, helloLine, sampleLine, tWords } from './line.ts';
import { motionOf } from './motion.ts';
import { advanceBody, type BodyState, coldBody, type Surroundings } from './physics.ts';
import { followPlate, probeText } from './probe.ts';
import { type Seed, uniform } from './random.ts';
import { type Conditions, conditionsOf, type Scenario } from './scenario.ts';

/** The whole state of a simulated iron between two samples: plain data. */
export interface IronState {
  /** When its next sample falls, ms since the start. */
  readonly tMs: number;
  /** When the device last started: its clock and sequence number count from there. */
  readonly bootMs: number;
  readonly n: number;
  readonly body: BodyState;
  readonly junctionC: number;
  readonly seed: Seed;
}

/** What is so, whatever the wire says of it. */
export interface Truth extends BodyState, Conditions {
  readonly junctionC: number;
}

/** What came over the wire at one moment, and the truth beside it. */
export interface Said {
  readonly tMs: number;
  readonly link: 'connected' | 'lost';
  /** Lines in latin1 without their ends: usually one; none while silent or lost; two when the device starts. */
  readonly lines: readonly string[];
  readonly truth: Truth;
}

export interface SimulatedIron {
  readonly start: IronState;
  /** What it says at `state.tMs`, and the state at its next sample. */
  readonly next: (state: IronState) => { readonly said: Said; readonly state: IronState };
}

const AIR_EVERY_MS = 10_000;
/** How many of a hundred lines arrive damaged while the line is bad. */
const DAMAGED_SHARE = 0.8;

/**
 * An iron with a probe and a board that speaks the wire's lines, as a pure machine: the same traits, scenario and seed
 * give the same lines. Dial, place and faults take effect at the samples, not between them.
 */
export function simulateIron(traits: IronTraits, scenario: Scenario, seed: Seed): SimulatedIron {
  const start: IronState = {
    tMs: 0,
    bootMs: 0,
    n: 0,
    body: coldBody(scenario.ambientC),
    junctionC: scenario.ambientC,
    seed: seed >>> 0,
  };
  const conditions = conditionsOf(scenario);
  return { start, next: (state) => step(traits, scenario, conditions(state.tMs / 1000), state) };
}

/** Everything that a simulated iron says, without end. */
export function* saidBy(iron: SimulatedIron): Generator<Said, never> {
  let state = iron.start;
  while (true) {
    const step = iron.next(state);
    yield step.said;
    state = step.state;
  }
}

function step(
  traits: IronTraits,
  scenario: Scenario,
  conditions: Conditions,
  state: IronState,
): { said: Said; state: IronState } {
  const spoken = speak(traits, scenario, state, conditions);
  const lost = conditions.faults.includes('lost');
  const said: Said = {
    tMs: state.tMs,
    link: lost ? 'lost' : 'connected',
    lines: spoken.lines,
    truth: { ...state.body, ...conditions, junctionC: state.junctionC },
  };
  const tMs = state.tMs + traits.wire.periodMs;
  const device = lost ? { bootMs: tMs, n: 0 } : { bootMs: state.bootMs, n: state.n + 1 };
  const around = { ambientC: scenario.ambientC, ...outside(conditions) };
  const heat = warm(traits, around, state, conditions.place === 'on-rest');
  return { said, state: { tMs, ...device, ...heat, seed: spoken.seed } };
}

const outside = (conditions: Conditions): Omit<Surroundings, 'ambientC'> => ({
  dialC: conditions.dialC,
  onWork: conditions.place === 'on-work',
  draws: conditions.draws,
  runaway: conditions.faults.includes('runaway'),
});

function warm(
  traits: IronTraits,
  around: Surroundings,
  state: IronState,
  parked: boolean,
): Pick<IronState, 'body' | 'junctionC'> {
  const dtS = traits.wire.periodMs / 1000;
  const body = advanceBody(traits.body, state.body, around, dtS);
  // A check pad that nothing lies on knows the room only.
  if (traits.padAirS !== undefined && !parked) {
    const room = { fromC: around.ambientC, toC: around.ambientC, dtS };
    return { body, junctionC: followPlate(traits.padAirS, state.junctionC, room) };
  }
  const plate = { fromC: state.body.plateC, toC: body.plateC, dtS };
  return { body, junctionC: followPlate(traits.probe.lagS, state.junctionC, plate) };
}

function speak(
  traits: IronTraits,
  scenario: Scenario,
  state: IronState,
  conditions: Conditions,
): { readonly lines: readonly string[]; readonly seed: Seed } {
  const heat = probeText(traits.probe, state.junctionC, state.seed);
  const { probe, emf, periodMs } = traits.wire;
  const { faults } = conditions;
  const motion = motionOf(
    conditions,
    scenario.hand,
    { untilS: state.tMs / 1000, spanS: periodMs / 1000 },
    heat.seed,
  );
  const line = sampleLine({
    probe,
    n: state.n,
    ms: state.tMs - state.bootMs,
    heat: faults.includes('open')
      ? null
      : emf === null
        ? tWords(heat.text)
        : emfWords(Number(heat.text), emf),
    motionG: traits.wire.motion ? motion.value : null,
  });
  const wire = overBadWire(line, faults.includes('garbage'), motion.seed);
  if (faults.includes('silence') || faults.includes('lost')) return { lines: [], seed: wire.seed };
  const lines = state.n === 0 ? [helloLine(probe), wire.line] : [wire.line];
  const air = airSaid(scenario, state.n, periodMs);
  return { lines: air === null ? lines : [...lines, air], seed: wire.seed };
}

/** The air sensor speaks more seldom than the probe. */
function airSaid({ ambientC, rhPct }: Scenario, n: number, periodMs: number): string | null {
  const every = Math.max(1, Math.round(AIR_EVERY_MS / periodMs));
  return rhPct === undefined || n % every !== 0 ? null : airLine(ambientC, rhPct);
}

/** Draws alike whether the wire is bad or not: a fault changes nothing but what it is about. */
function overBadWire(line: string, bad: boolean, seed: Seed): { readonly line: string; readonly seed: Seed } {
  const chance = uniform(seed);
  const broken = damaged(line, chance.seed);
  return { line: bad && chance.value < DAMAGED_SHARE ? broken.line : line, seed: broken.seed };
}
