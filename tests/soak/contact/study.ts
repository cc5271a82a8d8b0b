import type { Seed } from '../../../daemon/probe/simulated/random.ts';
import type { Said } from '../../../daemon/probe/simulated/simulated-iron.ts';
import { type Worker, type WorkIronId, workIrons } from '../../../daemon/probe/simulated/worker/worker.ts';
import type { MotionLevels } from '../../../shared/iron/motion/check.ts';
import { type Motion, noMotion, stepMotion } from '../../../shared/iron/motion/motion.ts';
import { inHandByMotion, restOnSpotMs } from '../../../shared/iron/motion/rest.ts';
import type { Place } from '../../../shared/iron/place.ts';
import type { Sample } from '../../../shared/thermometer/sample.ts';
import { COLD_C } from '../../../shared/thermometer/thermometer.ts';
import { checkedLevels } from '../../simulated-work/motion-check.ts';
import { playWork } from '../../simulated-work/play.ts';
import { hearPlaces } from '../../simulated-work/watch.ts';
import { ModelContact, nearly } from './by-model.ts';
import { noSlopeContact, type SlopeContact, stepSlopeContact } from './by-slope.ts';
import type { Moment } from './score.ts';
import type { SpotMoment } from './spots.ts';

/** One iron's work second by second: what was so, and what each way of telling said. */
export interface IronFound {
  /** Looked for eagerly, and only where it is sure. */
  readonly bySlope: Moment[];
  readonly bySureSlope: Moment[];
  /** By the iron's own physics, known exactly, and known to 5 %. */
  readonly byModel: Moment[];
  readonly byNearModel: Moment[];
  readonly byMotion: Moment[];
  /** Only while one of the irons is in hand. */
  readonly inHand: Moment[];
  readonly spotsByMarks: SpotMoment[];
  readonly spotsByMotion: SpotMoment[];
}

/** How one iron stands while it is followed. */
interface Followed {
  readonly found: IronFound;
  readonly levels: MotionLevels | null;
  readonly models: { readonly exact: ModelContact; readonly near: ModelContact } | null;
  motion: Motion;
  slope: SlopeContact;
  sureSlope: SlopeContact;
  place: Place;
  placedMs: number;
  inHandFromMs: number;
  stillFromMs: number | null;
  truth: Said['truth'] | null;
  second: number;
  sumC: number;
  count: number;
}

/** @param model whether the filter that knows everything is run too: it costs the most */
export function followContact(worker: Worker, seed: Seed, model: boolean): Record<WorkIronId, IronFound> {
  const begin = (iron: WorkIronId): Followed => ({
    found: {
      bySlope: [],
      bySureSlope: [],
      byModel: [],
      byNearModel: [],
      byMotion: [],
      inHand: [],
      spotsByMarks: [],
      spotsByMotion: [],
    },
    levels: checkedLevels(worker, iron, seed),
    models: model ? modelsOf(worker, iron, seed) : null,
    motion: noMotion,
    slope: noSlopeContact,
    sureSlope: noSlopeContact,
    place: 'unknown',
    placedMs: 0,
    inHandFromMs: 0,
    stillFromMs: null,
    truth: null,
    second: 0,
    sumC: 0,
    count: 0,
  });
  const irons = { small: begin('small'), big: begin('big') };
  let inHand: string | null = null;
  playWork(worker, seed, {
    sample: (iron, tMs, sample, truth) => {
      hear(irons[iron], tMs, sample, truth);
      const { small, big } = irons;
      const now = inHandByMotion({ small: small.motion, big: big.motion }, tMs, inHand);
      for (const one of workIrons) if (now === one && inHand !== one) irons[one].inHandFromMs = tMs;
      inHand = now;
      if (Math.floor(tMs / 1000) === irons[iron].second) return;
      note(irons[iron], tMs, inHand === iron, inHandTruly(irons));
    },
    mark: (said, tMs) => {
      for (const { iron, input } of hearPlaces(said))
        if (input.kind === 'mark' && input.mark.kind === 'place') put(irons[iron], input.mark.place, tMs);
    },
  });
  return { small: irons.small.found, big: irons.big.found };
}

function put(one: Followed, place: Place, tMs: number): void {
  if (one.place !== place) one.placedMs = tMs;
  one.place = place;
}

function modelsOf({ irons, ambientC }: Worker, iron: WorkIronId, seed: Seed): Followed['models'] {
  const { traits } = irons[iron];
  return {
    exact: new ModelContact(traits, ambientC, seed),
    near: new ModelContact(nearly(traits, seed + 31), ambientC, seed),
  };
}

const inHandTruly = (irons: Readonly<Record<WorkIronId, Followed>>): WorkIronId | null =>
  workIrons.find((i) => (irons[i].truth?.place ?? 'on-rest') !== 'on-rest') ?? null;

function hear(one: Followed, tMs: number, sample: Sample, truth: Said['truth']): void {
  one.truth = truth;
  const resting = truth.place === 'on-work' && truth.still;
  one.stillFromMs = resting ? (one.stillFromMs ?? tMs) : null;
  one.motion = stepMotion(one.motion, { tMs, motionG: sample.motionG, check: one.levels });
  if (sample.tC === null) return;
  const heard = { tMs, readC: sample.tC, taught: truth.place === 'on-rest' };
  one.slope = stepSlopeContact(one.slope, { ...heard, strayTimes: 1 });
  one.sureSlope = stepSlopeContact(one.sureSlope, { ...heard, strayTimes: 3 });
  one.sumC += sample.tC;
  one.count++;
}

/** Once a second: what is so, and what is said. */
function note(one: Followed, tMs: number, inHand: boolean, trulyInHand: WorkIronId | null): void {
  const { found, truth, models, motion, place } = one;
  if (truth === null) return;
  const second = Math.floor(tMs / 1000);
  const so = truth.place === 'on-work';
  const readC = one.count === 0 ? null : one.sumC / one.count;
  found.bySlope.push({ so, said: one.slope.contact });
  found.bySureSlope.push({ so, said: one.sureSlope.contact });
  if (models !== null) {
    const likely = (by: ModelContact): boolean =>
      by.step(second - one.second, truth.dialC, readC, one.count) > 0.5;
    found.byModel.push({ so, said: likely(models.exact) });
    found.byNearModel.push({ so, said: likely(models.near) });
  }
  if (one.levels !== null) {
    const hot = truth.plateC >= COLD_C;
    found.byMotion.push({ so, said: motion.is === 'moving' });
    if (trulyInHand !== null) found.inHand.push({ so: truth.place !== 'on-rest', said: inHand });
    const trueMs = one.stillFromMs === null || !hot ? 0 : tMs - one.stillFromMs;
    const facts = { tMs, hot, inHand };
    const spot = { trueMs, onWork: so };
    const byMarks = { ...facts, place, thereFromMs: one.placedMs };
    found.spotsByMarks.push({ ...spot, saidMs: restOnSpotMs(motion, byMarks) });
    const byMotion = { ...facts, place: 'unknown', thereFromMs: one.inHandFromMs } as const;
    found.spotsByMotion.push({ ...spot, saidMs: restOnSpotMs(motion, byMotion) });
  }
  one.second = second;
  one.sumC = 0;
  one.count = 0;
}
