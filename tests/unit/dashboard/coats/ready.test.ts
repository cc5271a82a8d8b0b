import { describe, expect, it } from 'vitest';
import {
  noticeKey,
  noticeKeys,
  readTold,
  readyStep,
  stillReady,
  type Told,
} from '../../../../dashboard/coats/ready.ts';
import { instructedS } from '../../../../shared/cure/cement.ts';
import type { CoatAnswer } from '../../../../shared/messages/cure.ts';
import { coat, drying, due, fourCoats, inMin, mayBeReady, stage } from '../../../fixtures/coats.ts';
import { clockOf, water } from '../../cure/clocked.ts';
import { probed } from '../../cure/curing.ts';

/** What is told over answers that come one after the other: the ids told at each. */
function toldOver(answers: readonly (readonly CoatAnswer[])[]): readonly (readonly string[])[] {
  let told: Told = {};
  return answers.map((coats) => {
    const step = readyStep(told, coats);
    // As it is kept over a reload.
    told = readTold(JSON.stringify(step.told));
    return step.ready.map(({ id }) => id);
  });
}

const at = (state: CoatAnswer['state'], saidTacky: string | null = null): CoatAnswer =>
  coat({ state, stages: [stage('ready-for-iron', [1, 2, 3], { saidTacky })] });

describe('what is told as it may be ready', () => {
  it('is each coat once a stage', () => {
    expect(toldOver([fourCoats, fourCoats])).toEqual([['coat-due', 'coat-may'], []]);
    const stages = [...mayBeReady.stages, stage('cured', [60, 90, 120])];
    const later = { ...mayBeReady, stages, stage: 'cured', state: 'may-be-ready' } as const;
    expect(toldOver([[mayBeReady], [{ ...later, state: 'drying' }], [later]])).toEqual([
      ['coat-may'],
      [],
      ['coat-may'],
    ]);
    expect(toldOver([[drying], [due, drying]])).toEqual([[], ['coat-due']]);
  });

  it('is not told again as its latest time passes, nor where the air moves its range to and fro', () => {
    expect(toldOver([[at('may-be-ready')], [at('drying')], [at('may-be-ready')], [at('due')]])).toEqual([
      ['coat-drying'],
      [],
      [],
      [],
    ]);
  });

  it('is told again where it was found tacky and went on drying, and not as long as it didn’t', () => {
    const tacky = inMin(1);
    expect(
      toldOver([
        [at('may-be-ready')],
        [at('may-be-ready', tacky)],
        [at('drying', tacky)],
        [at('may-be-ready', tacky)],
        [at('may-be-ready', tacky)],
      ]),
    ).toEqual([['coat-drying'], [], [], ['coat-drying'], []]);
  });

  const two = (stage_: CoatAnswer['stage'], overlayTacky: string | null = null): CoatAnswer =>
    coat({
      state: 'may-be-ready',
      stage: stage_,
      stages: [
        stage('ready-for-iron', [-9, -8, -7]),
        stage('ready-for-overlay', [1, 2, 3], { saidTacky: overlayTacky }),
      ],
    });
  const [iron, overlay, ironAgain] = [
    two('ready-for-iron'),
    two('ready-for-overlay'),
    two('ready-for-iron', inMin(1)),
  ];

  it('is a coat again at its next stage, but not at an earlier one that it goes back to', () => {
    expect(toldOver([[iron], [overlay], [ironAgain], [two('ready-for-overlay', inMin(1))]])).toEqual([
      ['coat-drying'],
      ['coat-drying'],
      [],
      ['coat-drying'],
    ]);
    // Of what comes before the stage that was told nobody need hear.
    expect(toldOver([[overlay], [ironAgain]])).toEqual([['coat-drying'], []]);
  });

  it('is each stage as its likely time comes, where nobody says anything', () => {
    const utc = (ms: number | null): string | null => (ms === null ? null : new Date(ms).toISOString());
    const likelyMin = water.stages.map((one) => instructedS(one) / 60);
    const askedMin = likelyMin.flatMap((atMin) => [atMin - 5, atMin, atMin + 5, atMin + 10]);
    const over = askedMin.map((atMin): readonly CoatAnswer[] => {
      const { state, stage: kind, stages } = clockOf({ atMin, points: probed(0, 60 * 60) });
      const told = stages.map(({ earliestMs, likelyMs, latestMs, ...one }) => ({
        ...stage(one.kind, null),
        earliest: utc(earliestMs),
        likely: utc(likelyMs),
        latest: utc(latestMs),
      }));
      return [coat({ state, stage: kind, stages: told })];
    });
    const heardAtMin = toldOver(over).flatMap((ids, i) => ids.map(() => askedMin[i]));
    expect(heardAtMin).toEqual(likelyMin);
  });

  it('forgets coats that are gone', () => {
    expect(readyStep({ 'gone ready-for-iron': null }, [drying]).told).toEqual({});
  });

  it('begins anew where nothing that can be read was kept', () => {
    for (const text of [null, '', '[1]', '{"a":1}']) expect(readTold(text)).toEqual({});
  });

  it('is understood for a coat at a stage, until it is found tacky again', () => {
    const keys = [at('due'), at('due', inMin(1)), at('due', inMin(2)), { ...at('due'), id: 'other' }].map(
      noticeKey,
    );
    expect(new Set(keys).size).toBe(4);
    expect(noticeKey(at('may-be-ready'))).toBe(noticeKey(at('due')));
    expect(noticeKeys(overlay)).toEqual([noticeKey(iron), noticeKey(overlay)]);
    expect(noticeKeys(iron)).toEqual([noticeKey(iron)]);
  });

  it('that waited to be heard is heard only where it is to be tested still, at that stage', () => {
    const waiting = [due, mayBeReady, iron];
    expect(stillReady(waiting, [iron, mayBeReady, due])).toEqual([iron, mayBeReady, due]);
    expect(stillReady(waiting, [mayBeReady, { ...iron, state: 'drying' }])).toEqual([mayBeReady]);
    expect(stillReady([iron], [overlay])).toEqual([]);
    expect(stillReady(waiting, [])).toEqual([]);
  });
});
