import { describe, expect, it } from 'vitest';
import {
  advanceBody,
  type BodyState,
  coldBody,
  type IronBody,
} from '../../../daemon/probe/simulated/physics.ts';
import { atRest, fullHeat, heaterAlone, roundBody } from './bodies.ts';

/** Closed forms are textbook results for linear systems; each is written out beside its check. */

describe('one mass', () => {
  const { heaterMassJPerK: massJPerK, heaterLossWPerK: lossWPerK, heaterW } = heaterAlone;
  const tauS = massJPerK / lossWPerK;

  it('cools by Newton: T = Ta + (T0 - Ta) e^(-t/tau)', () => {
    for (const tS of [1, 60, 500, 3000]) {
      const { heaterC } = advanceBody(heaterAlone, hot(180), atRest(null), tS);
      expect(heaterC).toBeCloseTo(20 + 160 * Math.exp(-tS / tauS), 9);
    }
  });

  it('warms towards Ta + P/loss', () => {
    for (const tS of [1, 60, 500, 3000]) {
      const { heaterC } = advanceBody(heaterAlone, coldBody(20), fullHeat, tS);
      expect(heaterC).toBeCloseTo(20 + (heaterW / lossWPerK) * (1 - Math.exp(-tS / tauS)), 8);
    }
  });

  it('without losses warms evenly: P t / C', () => {
    const body = { ...heaterAlone, heaterLossWPerK: 0 };
    expect(advanceBody(body, coldBody(20), fullHeat, 30).heaterC).toBeCloseTo(20 + (1000 * 30) / 250, 9);
  });

  it('cycles with the closed form of a hysteresis thermostat', () => {
    // On from low to high: tau ln((Ts - low)/(Ts - high)); off: tau ln((high - Ta)/(low - Ta)).
    const [lowC, highC] = [145, 155];
    const steadyC = 20 + heaterW / lossWPerK;
    const onS = tauS * Math.log((steadyC - lowC) / (steadyC - highC));
    const offS = tauS * Math.log((highC - 20) / (lowC - 20));
    const clicks = clickTimes(heaterAlone, 150, 0.037, 400);
    const spans = clicks.slice(1).map((tS, i) => tS - (clicks[i] ?? 0));
    expect(spans.length).toBeGreaterThan(8);
    for (const [i, span] of spans.entries()) {
      // A click is seen at the end of the 0.037 s step that it falls into.
      expect(Math.abs(span - (i % 2 === 0 ? offS : onS))).toBeLessThan(0.038);
    }
    // Over many cycles the error of the last step is all that is left of it.
    const cycles = (spans.length - (spans.length % 2)) / 2;
    const meanS = ((clicks[cycles * 2] ?? 0) - (clicks[0] ?? 0)) / cycles;
    expect(Math.abs(meanS - onS - offS)).toBeLessThan(0.038 / cycles);
  });
});

describe('two masses', () => {
  it('go the way of their eigenvalues', () => {
    // T' = A T + b with A = [[-(G+Lh)/Ch, G/Ch], [G/Cp, -(G+Lp+W)/Cp]]; T(t) = T* + sum of v_i k_i e^(r_i t).
    for (const onWork of [false, true]) {
      for (const tS of [0.5, 7, 90, 1200]) {
        const around = { ...fullHeat, onWork };
        const got = advanceBody(roundBody, { heaterC: 130, plateC: 90, heaterOn: true }, around, tS);
        const want = byEigenvalues(roundBody, onWork, [130, 90], tS);
        expect(got.heaterC).toBeCloseTo(want[0], 7);
        expect(got.plateC).toBeCloseTo(want[1], 7);
      }
    }
  });

  it('keep the balance of energy: what was put in is in the masses, the air and the cloth', () => {
    const around = { ...atRest(150), onWork: true };
    let state: BodyState = { heaterC: 152, plateC: 149, heaterOn: false };
    let inJ = 0;
    let outJ = 0;
    const dtS = 0.01;
    const before = storedJ(state);
    for (let i = 0; i < 60_000; i++) {
      const next = advanceBody(roundBody, state, around, dtS);
      // A step with a click in it heats for a part of it that is not seen from here.
      inJ += ((Number(state.heaterOn) + Number(next.heaterOn)) / 2) * roundBody.heaterW * dtS;
      outJ += ((lossW(state) + lossW(next)) / 2) * dtS;
      state = next;
    }
    const clicksJ = 20 * roundBody.heaterW * dtS * 0.5;
    expect(inJ).toBeGreaterThan(100_000);
    expect(Math.abs(storedJ(state) - before - inJ + outJ)).toBeLessThan(clicksJ);
  });

  it('keep it to a part in ten million between clicks', () => {
    const dtS = 0.01;
    let state: BodyState = coldBody(20);
    let outJ = 0;
    for (let i = 0; i < 10_000; i++) {
      const next = advanceBody(roundBody, state, { ...fullHeat, onWork: true }, dtS);
      outJ += ((lossW(state) + lossW(next)) / 2) * dtS;
      state = next;
    }
    const inJ = roundBody.heaterW * 100;
    expect(Math.abs(storedJ(state) - storedJ(coldBody(20)) - inJ + outJ) / inJ).toBeLessThan(1e-7);
  });
});

describe('steps', () => {
  it('of any size give the same way, clicks and all', () => {
    const ends = [0.013, 0.1, 1, 7, 60].map((dtS) => {
      let state = coldBody(20);
      let tS = 0;
      for (; tS + dtS <= 600; tS += dtS) state = advanceBody(roundBody, state, atRest(150), dtS);
      return advanceBody(roundBody, state, atRest(150), 600 - tS);
    });
    for (const end of ends) {
      expect(end.heaterOn).toBe(ends[0]?.heaterOn);
      expect(end.plateC).toBeCloseTo(ends[0]?.plateC ?? Number.NaN, 6);
      expect(end.heaterC).toBeCloseTo(ends[0]?.heaterC ?? Number.NaN, 6);
    }
  });

  it('of no time change nothing but the thermostat', () => {
    const state = hot(150);
    expect(advanceBody(roundBody, state, atRest(null), 0)).toEqual(state);
    expect(advanceBody(roundBody, state, atRest(180), 0)).toEqual({ ...state, heaterOn: true });
  });
});

describe('the thermostat', () => {
  it('feels the mass that it sits on', () => {
    const state = { heaterC: 170, plateC: 140, heaterOn: true };
    expect(advanceBody({ ...roundBody, thermostatOn: 'heater' }, state, atRest(150), 0).heaterOn).toBe(false);
    expect(advanceBody({ ...roundBody, thermostatOn: 'plate' }, state, atRest(150), 0).heaterOn).toBe(true);
  });

  it('stays as it is between its edges', () => {
    for (const heaterOn of [false, true]) {
      const state = { heaterC: 150, plateC: 150, heaterOn };
      expect(advanceBody(roundBody, state, atRest(150), 0).heaterOn).toBe(heaterOn);
    }
  });

  it('is off when switched off and heats on when stuck, whatever the dial says', () => {
    expect(advanceBody(roundBody, { ...hot(50), heaterOn: true }, atRest(null), 1).heaterOn).toBe(false);
    const stuck = advanceBody(roundBody, hot(150), { ...atRest(100), runaway: true }, 60);
    expect(stuck.heaterOn).toBe(true);
    expect(stuck.plateC).toBeGreaterThan(180);
  });

  it('without hysteresis is refused', () => {
    for (const hysteresisK of [0, -1, Number.NaN])
      expect(() => advanceBody({ ...roundBody, hysteresisK }, hot(150), atRest(150), 1)).toThrow(RangeError);
  });

  it('lets the plate overshoot by the heat that the heater body still holds', () => {
    // Without losses both masses meet at their common mean.
    const lossless = { ...roundBody, heaterLossWPerK: 0, plateLossWPerK: 0 };
    let state = coldBody(20);
    while (state.plateC < 155) state = advanceBody(lossless, state, atRest(150), 0.05);
    const meetC = (250 * state.heaterC + 600 * state.plateC) / 850;
    expect(meetC).toBeGreaterThan(159);
    expect(advanceBody(lossless, state, atRest(150), 200).plateC).toBeCloseTo(meetC, 9);
  });
});

const hot = (c: number): BodyState => ({ heaterC: c, plateC: c, heaterOn: false });

const storedJ = (s: BodyState): number =>
  roundBody.heaterMassJPerK * s.heaterC + roundBody.plateMassJPerK * s.plateC;

const lossW = (s: BodyState): number =>
  roundBody.heaterLossWPerK * (s.heaterC - 20) +
  roundBody.plateLossWPerK * (s.plateC - 20) +
  roundBody.clothWPerK * (s.plateC - 20);

function clickTimes(body: IronBody, dialC: number, stepS: number, untilS: number): readonly number[] {
  const clicks: number[] = [];
  let state = advanceBody(body, coldBody(20), atRest(dialC), 0);
  for (let i = 1; i * stepS < untilS; i++) {
    const next = advanceBody(body, state, atRest(dialC), stepS);
    if (next.heaterOn !== state.heaterOn) clicks.push(i * stepS);
    state = next;
  }
  return clicks;
}

/** The 2 x 2 system solved by its characteristic polynomial, heater always on, air at 20 degC. */
function byEigenvalues(
  b: IronBody,
  onWork: boolean,
  t0: readonly [number, number],
  tS: number,
): [number, number] {
  const w = onWork ? b.clothWPerK : 0;
  const [a11, a12] = [
    -(b.couplingWPerK + b.heaterLossWPerK) / b.heaterMassJPerK,
    b.couplingWPerK / b.heaterMassJPerK,
  ];
  const [a21, a22] = [
    b.couplingWPerK / b.plateMassJPerK,
    -(b.couplingWPerK + b.plateLossWPerK + w) / b.plateMassJPerK,
  ];
  const b1 = (b.heaterW + b.heaterLossWPerK * 20) / b.heaterMassJPerK;
  const b2 = ((b.plateLossWPerK + w) * 20) / b.plateMassJPerK;
  const det = a11 * a22 - a12 * a21;
  const steady = [(-b1 * a22 + b2 * a12) / det, (-b2 * a11 + b1 * a21) / det] as const;
  const root = Math.sqrt((a11 - a22) ** 2 + 4 * a12 * a21);
  const [r1, r2] = [(a11 + a22 + root) / 2, (a11 + a22 - root) / 2];
  // Eigenvectors (a12, r - a11).
  const [d1, d2] = [t0[0] - steady[0], t0[1] - steady[1]];
  const k2 = (d2 - (d1 * (r1 - a11)) / a12) / (r2 - r1);
  const k1 = d1 / a12 - k2;
  const [e1, e2] = [k1 * Math.exp(r1 * tS), k2 * Math.exp(r2 * tS)];
  return [steady[0] + a12 * (e1 + e2), steady[1] + (r1 - a11) * e1 + (r2 - a11) * e2];
}
