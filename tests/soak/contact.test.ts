import { expect, it } from 'vitest';
import type { IronTraits } from '../../daemon/probe/simulated/irons.ts';
import {
  type Mistakes,
  noMistakes,
  usualMistakes,
  type WorkIronId,
  workIrons,
} from '../../daemon/probe/simulated/worker/worker.ts';
import { workerOf } from '../simulated-work/workers.ts';
import { scoreText, Tally } from './contact/score.ts';
import { SpotTally, spotText } from './contact/spots.ts';
import { followContact, type IronFound } from './contact/study.ts';

/** `SOLEPLATE_HOURS` takes another number of simulated hours, for a slice. */
const HOURS = Number(process.env['SOLEPLATE_HOURS'] ?? 120);
const SESSION_HOURS = 4;
const ways = ['bySlope', 'bySureSlope', 'byModel', 'byNearModel', 'byMotion', 'inHand'] as const;
const LIMITS_S = [3, 5, 8];

const cases: readonly { readonly work: string; readonly mistakes: Mistakes; readonly model: boolean }[] = [
  { work: 'with mistakes', mistakes: usualMistakes, model: true },
  {
    work: 'with every mark given',
    mistakes: { ...usualMistakes, forgottenMarks: 0, wrongMarks: 0 },
    model: false,
  },
  { work: 'correct', mistakes: noMistakes, model: false },
];

it.each(cases)(
  `${HOURS} h of simulated work, $work: contact by heat and motion, iron in hand, rest on one spot`,
  ({ work, mistakes, model }) => {
    const all = new Map(ways.map((way) => [way, new Tally()]));
    const spots = LIMITS_S.map((limitS) => ({ marks: new SpotTally(limitS), motion: new SpotTally(limitS) }));
    let refused = 0;
    for (let session = 0; session * SESSION_HOURS < HOURS; session++) {
      const seed = session + 1;
      const worker = workerOf(seed, { mistakes, hours: SESSION_HOURS, motion: true });
      const found = followContact(worker, seed, model);
      for (const iron of workIrons) {
        const own = found[iron];
        if (own.byMotion.length === 0) refused++;
        if (model) console.log(ironText(iron, worker.irons[iron].traits, own));
        for (const way of ways) all.get(way)?.add(own[way]);
        for (const { marks, motion } of spots) {
          marks.add(own.spotsByMarks);
          motion.add(own.spotsByMotion);
        }
      }
    }
    for (const [way, tally] of all)
      if (model || !way.endsWith('Model')) console.log(scoreText(`${work}, ${way}`, tally.score()));
    for (const { marks, motion } of spots) {
      console.log(spotText(`${work}, rest on one spot, place by marks`, marks.score()));
      console.log(spotText(`${work}, rest on one spot, by motion alone`, motion.score()));
    }
    console.log(`still/moving checks refused: ${refused}`);
    const motion = all.get('byMotion')?.score();
    expect(motion?.precision ?? 0).toBeGreaterThan(0.95);
    expect(motion?.recall ?? 0).toBeGreaterThan(0.95);
  },
);

function ironText(iron: WorkIronId, { name, probe, wire }: IronTraits, found: IronFound): string {
  const { lagS, noiseK, resolutionK } = probe;
  const head = `${name}, ${iron}: lag ${lagS.toFixed(1)} s, noise ${noiseK.toFixed(2)} K, step ${resolutionK} K, a line every ${wire.periodMs} ms`;
  return [head, ...ways.map((way) => `  ${scoreText(way, scoreOf(found, way))}`)].join('\n');
}

function scoreOf(found: IronFound, way: (typeof ways)[number]) {
  const tally = new Tally();
  tally.add(found[way]);
  return tally.score();
}
