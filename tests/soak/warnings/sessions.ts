import type { IronTraits } from '../../../daemon/probe/simulated/irons.ts';
import type { FaultSpan, Scenario, Turn } from '../../../daemon/probe/simulated/scenario.ts';
import { varyIron } from '../../../daemon/probe/simulated/vary.ts';
import { shippedSchedule } from '../../../shared/heat/shipped.ts';
import { drawer, restCycle, swingingBy, work } from '../../unit/watch/support/worked-iron.ts';

/** An hour's simulated work of one seed, each with an iron, a hand and a mishap (or none) of its own. */

const mishaps = ['none', 'two-stages', 'stuck', 'turned-too-high', 'set-too-high'] as const;
export type Mishap = (typeof mishaps)[number];

export interface WorkSession {
  readonly seed: number;
  readonly mishap: Mishap;
  readonly traits: IronTraits;
  readonly scenario: Scenario;
  readonly lastsS: number;
  /** Whether the user tells the program of each new stage. */
  readonly tellsStage: boolean;
}

type Draw = (low: number, high: number) => number;

export const FABRIC_LIMIT_C = shippedSchedule.fabricLimitC;
/** A probe's allowance as shipped. */
export const GUARDED_LIMIT_C = FABRIC_LIMIT_C - 2.2;

/** Two of six sessions go without a mishap at one setting, one at two settings; the others truly pass the limit. */
const order: readonly Mishap[] = ['none', 'stuck', 'two-stages', 'turned-too-high', 'none', 'set-too-high'];

export function sessionOf(seed: number, lastsS: number): WorkSession {
  const draw = drawer(seed * 48_271 + 11);
  const mishap = order[seed % order.length] ?? 'none';
  const swingK = draw(8, 30);
  const first = swingingBy(varyIron(seed), swingK, meanFor(mishap, swingK, draw));
  const { traits } = first;
  const fromS = draw(100, 400);
  const turnS = draw(0.3, 0.5) * lastsS;
  const second = dialAfter(mishap, traits, draw);
  const turns: Turn[] = [{ atS: 0, dialC: first.dialC }, ...work(fromS, lastsS, draw)];
  if (second !== null) turns.push({ atS: turnS, dialC: second });
  // Somebody turns it down when it has shouted for a while.
  if (mishap === 'turned-too-high') turns.push({ atS: turnS + draw(300, 900), dialC: first.dialC });
  if (mishap === 'two-stages') turns.push({ atS: turnS + draw(0.3, 0.4) * lastsS, dialC: first.dialC });
  if (mishap === 'set-too-high') turns.push({ atS: fromS + draw(300, 900), dialC: first.dialC - 45 });
  const scenario: Scenario = {
    name: `Hour of work ${seed}`,
    ambientC: draw(10, 30),
    lengthS: 1e9,
    turns: turns.toSorted((a, b) => a.atS - b.atS),
    faults: faultsOf(mishap, lastsS, draw),
  };
  return { seed, mishap, traits, scenario, lastsS, tellsStage: seed % 2 === 0 };
}

/** The mean around which the plate first swings on its rest, degC. */
function meanFor(mishap: Mishap, swingK: number, draw: Draw): number {
  const half = swingK / 2;
  switch (mishap) {
    case 'none':
    case 'stuck':
      // Peaks from 3 to 40 K under the limit: tight ones as often as easy ones.
      return GUARDED_LIMIT_C - half - (draw(0, 1) < 0.5 ? draw(3, 12) : draw(12, 40));
    case 'two-stages':
    case 'turned-too-high':
      return draw(118, 140);
    case 'set-too-high':
      return FABRIC_LIMIT_C - half + draw(3, 30);
  }
}

/** Where the dial is turned to later, degC; null: nowhere. */
function dialAfter(mishap: Mishap, { body }: IronTraits, draw: Draw): number | null {
  if (mishap !== 'two-stages' && mishap !== 'turned-too-high') return null;
  const peakC = mishap === 'two-stages' ? GUARDED_LIMIT_C - draw(3, 20) : FABRIC_LIMIT_C + draw(3, 25);
  let dialC = peakC;
  for (let i = 0; i < 6; i++) dialC += peakC - restCycle(body, dialC).peakC;
  return dialC;
}

/** Contacts that stick, two or three times an hour, long enough for most plates to pass the limit. */
function faultsOf(mishap: Mishap, lastsS: number, draw: Draw): readonly FaultSpan[] {
  if (mishap !== 'stuck') return [];
  const spans: FaultSpan[] = [];
  for (let fromS = draw(600, 1200); fromS < lastsS - 300; fromS += draw(900, 1500))
    spans.push({ fromS, toS: fromS + draw(30, 120), kind: 'runaway' });
  return spans;
}
