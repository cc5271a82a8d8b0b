import { take } from '../../../build/shared/watch/replay.js';
import { resume } from '../../../build/shared/watch/watch.js';
import { freshlyCarried, PROBES, sampleAt } from './fold-watch.mjs';

/** An iron with one probe at work on a piece of 200 areas, without a device. DEMO DATA. */

const AREAS = 200;
const MARK_MS = 15_000;

/** Area `i` of the piece as a mark has it: every tenth bonded. */
export const areaAt = (i) => ({
  piece: 'left-wing-panel',
  version: 1,
  side: i % AREAS < AREAS / 2 ? 1 : 2,
  area: `bay-${i % AREAS}`,
  presumed: i % 3 === 0,
  pieceName: 'Left wing panel',
  sideName: i % AREAS < AREAS / 2 ? 'Upper' : 'Lower',
  areaName: `bay ${i % AREAS}`,
  bonded: i % 10 === 0,
  limitMs: 40_000,
});

const mark = (state, what, tMs) => take(state, { kind: 'mark', commandId: `m${tMs}`, mark: what }, tMs);

/** A watch that begins anew, with a stage chosen; with a place, a visit is open. */
export function begunAt(at) {
  const begun = resume(freshlyCarried(PROBES), 0, 0);
  const staged = mark(begun, { kind: 'stage', stageId: 'initial' }, 0).state;
  return at === null ? staged : mark(staged, { kind: 'at', said: 'area', at }, 0).state;
}

/**
 * Works for so many hours, ten lines a second of one probe and a mark every 15 s: an area, now and then a lap, a rest,
 * an undo.
 * @param told hears each finding
 */
export function* worked(hours, told) {
  const probe = PROBES[0];
  let state = resume(freshlyCarried([probe]), 0, 0);
  const give = (step) => {
    state = step.state;
    for (const { finding } of step.found) told(finding);
  };
  give(mark(state, { kind: 'stage', stageId: 'initial' }, 0));
  for (let n = 0; n < hours * 36_000; n += 1) {
    const { sample, tMs } = sampleAt(probe, n);
    if (n % (MARK_MS / 100) === 0) give(mark(state, markAt(n / (MARK_MS / 100)), tMs));
    give(take(state, { kind: 'sample', sample }, tMs));
    if ((n + 1) % 36_000 === 0) yield { hours: (n + 1) / 36_000, state };
  }
}

function markAt(i) {
  if (i % 40 === 39) return { kind: 'lap-done' };
  if (i % 20 === 19) return { kind: 'place', place: 'on-rest' };
  if (i % 33 === 32) return { kind: 'undo' };
  return { kind: 'at', said: 'area', at: areaAt(i) };
}
