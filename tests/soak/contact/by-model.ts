import { type Draw, drawOf } from '../../../daemon/probe/simulated/draw.ts';
import type { IronTraits } from '../../../daemon/probe/simulated/irons.ts';
import { advanceBody, type BodyState, coldBody } from '../../../daemon/probe/simulated/physics.ts';
import { followPlate } from '../../../daemon/probe/simulated/probe.ts';

/**
 * What readings can tell of contact to somebody who knows the iron, its dial and its probe exactly, as no program can: a
 * particle filter over the simulator's own physics.
 */
interface Particle {
  readonly body: BodyState;
  readonly junctionC: number;
  readonly place: 'rest' | 'lifted' | 'work';
  readonly draws: number;
}

const COUNT = 100;
/** Mean lengths of a pass, a lift and a rest, s; one lift in so many ends on the rest. */
const PASS_S = 14;
const LIFT_S = 3;
const REST_S = 120;
const TO_REST = 0.12;
/** Cloth under an iron that rests takes little: one pass in so many. */
const STILL = 0.1;
/** Particles are spread by so much a second, K, so that none is lost for good. */
const SPREAD_K = 0.05;

export class ModelContact {
  readonly #traits: IronTraits;
  readonly #ambientC: number;
  readonly #draw: Draw;
  #particles: readonly Particle[];

  constructor(traits: IronTraits, ambientC: number, seed: number) {
    this.#traits = traits;
    this.#ambientC = ambientC;
    this.#draw = drawOf(seed);
    const cold: Particle = { body: coldBody(ambientC), junctionC: ambientC, place: 'rest', draws: 1 };
    this.#particles = Array.from({ length: COUNT }, () => cold);
  }

  /**
   * Goes on by `dtS` seconds and takes in the mean of `count` readings.
   * @returns how likely the iron is on the work, 0 to 1
   */
  step(dtS: number, dialC: number | null, readC: number | null, count: number): number {
    const ahead = this.#particles.map((p) => this.#goOn(p, dtS, dialC));
    const weights = ahead.map((p) => (readC === null ? 1 : this.#weight(p, readC, count)));
    const total = weights.reduce((sum, w) => sum + w, 0);
    // All of them equally far off: what was so is kept.
    const shares = total > 0 ? weights.map((w) => w / total) : weights.map(() => 1 / COUNT);
    const onWork = ahead.reduce((sum, p, i) => sum + (p.place === 'work' ? (shares[i] ?? 0) : 0), 0);
    this.#particles = this.#resampled(ahead, shares);
    return onWork;
  }

  #goOn(was: Particle, dtS: number, dialC: number | null): Particle {
    const place = this.#placeAfter(was.place, dtS);
    const draws = place === 'work' && was.place !== 'work' ? this.#drawsAnew() : was.draws;
    const around = { ambientC: this.#ambientC, dialC, onWork: place === 'work', draws, runaway: false };
    const body = advanceBody(this.#traits.body, this.#spread(was.body, dtS), around, dtS);
    const plate = { fromC: was.body.plateC, toC: body.plateC, dtS };
    return { body, junctionC: followPlate(this.#traits.probe.lagS, was.junctionC, plate), place, draws };
  }

  #drawsAnew(): number {
    return this.#draw.chance(STILL) ? this.#draw.between(0.2, 0.4) : this.#draw.between(0.8, 1.6);
  }

  #spread(body: BodyState, dtS: number): BodyState {
    const byK = SPREAD_K * Math.sqrt(dtS);
    const { between } = this.#draw;
    return {
      ...body,
      heaterC: body.heaterC + between(-byK, byK),
      plateC: body.plateC + between(-byK, byK),
    };
  }

  #placeAfter(place: Particle['place'], dtS: number): Particle['place'] {
    const { chance } = this.#draw;
    if (place === 'work') return chance(dtS / PASS_S) ? 'lifted' : 'work';
    if (place === 'rest') return chance(dtS / REST_S) ? 'lifted' : 'rest';
    if (!chance(dtS / LIFT_S)) return 'lifted';
    return chance(TO_REST) ? 'rest' : 'work';
  }

  #weight({ junctionC }: Particle, readC: number, count: number): number {
    const { noiseK, resolutionK, offsetK } = this.#traits.probe;
    // Rounding is not averaged away where the noise is smaller than a step; a little stays of what particles don't try.
    const sigmaK = Math.hypot(noiseK / Math.sqrt(count), resolutionK / Math.sqrt(12), 0.05);
    const off = (readC - offsetK - junctionC) / sigmaK;
    return Math.exp((-off * off) / 2);
  }

  /** Systematic resampling: each particle as often as its share says. */
  #resampled(particles: readonly Particle[], shares: readonly number[]): readonly Particle[] {
    const chosen: Particle[] = [];
    let sum = 0;
    let at = this.#draw.between(0, 1 / COUNT);
    for (const [i, particle] of particles.entries()) {
      sum += shares[i] ?? 0;
      for (; at < sum && chosen.length < COUNT; at += 1 / COUNT) chosen.push(particle);
    }
    const last = particles.at(-1);
    if (last === undefined) return chosen;
    return [...chosen, ...Array.from({ length: COUNT - chosen.length }, () => last)];
  }
}

/** The iron as somebody would know it who measured each of its figures to 5 %. */
export function nearly(traits: IronTraits, seed: number): IronTraits {
  const { between } = drawOf(seed);
  const about = (value: number): number => value * between(0.95, 1.05);
  const { body } = traits;
  return {
    ...traits,
    body: {
      ...body,
      heaterW: about(body.heaterW),
      heaterMassJPerK: about(body.heaterMassJPerK),
      plateMassJPerK: about(body.plateMassJPerK),
      couplingWPerK: about(body.couplingWPerK),
      heaterLossWPerK: about(body.heaterLossWPerK),
      plateLossWPerK: about(body.plateLossWPerK),
      clothWPerK: about(body.clothWPerK),
      hysteresisK: about(body.hysteresisK),
    },
  };
}
