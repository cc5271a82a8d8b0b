import type { Condition } from '../alarm/machine.ts';
import type { CoatFacts } from '../cure/facts.ts';
import type { At, PieceFacts } from '../heat/work/at.ts';
import type { Seen } from './seen.ts';

/** What is seen of the conditions that concern the work: where the heat goes, in which order, and whether anybody is there. */
export interface WorkFacts {
  /** On the work by the user's marks. */
  readonly onWork: boolean;
  readonly at: At | null;
  readonly facts: PieceFacts;
  readonly coats: CoatFacts;
  readonly inUse: boolean;
  /** The plate, degC; null where there is no valid reading. */
  readonly plateC: number | null;
  /** How long the iron has been on the area that was marked, ms. */
  readonly contactMs: number;
  /** How long the iron has rested on one spot of the work, ms; null: not measured. */
  readonly restMs: number | null;
  readonly restLimitMs: number;
  readonly unattended: Readonly<Record<'reminder' | 'alarm', Condition>>;
}

export const seenOfWork = (facts: WorkFacts): readonly Seen[] => [
  { kind: 'dwell', probe: null, condition: resting(facts) },
  { kind: 'wet-cement', probe: null, condition: onWet(facts), detail: facts.coats.wet || facts.coats.near },
  { kind: 'fire-hazard', probe: null, condition: nearVapour(facts), detail: facts.coats.fire },
  { kind: 'wrong-order', probe: null, condition: outOfOrder(facts) },
  { kind: 'long-on-area', probe: null, condition: tooLong(facts) },
  {
    kind: 'imbalance',
    probe: null,
    condition: facts.facts.imbalance === '' ? 'inside' : 'beyond',
    detail: facts.facts.imbalance,
  },
  { kind: 'unattended', probe: null, condition: facts.unattended.reminder },
  { kind: 'left-alone', probe: null, condition: facts.unattended.alarm },
];

/** So long on a side without an area being named, ms, and it is taken to be gone over as a whole. Our own choice. */
const WHOLE_SIDE_MS = 20_000;

function onWet({ onWork, inUse, contactMs, coats: { wet, near } }: WorkFacts): Condition {
  const met = wet !== '' || (near !== '' && contactMs > WHOLE_SIDE_MS);
  return onWork && inUse && met ? 'beyond' : 'inside';
}

const nearVapour = ({ inUse, coats: { fire } }: WorkFacts): Condition =>
  inUse && fire !== '' ? 'beyond' : 'inside';

/** The plate is hotter than the side that is up may be had. */
function outOfOrder({ onWork, at, facts: { capC }, plateC }: WorkFacts): Condition {
  if (!onWork || at === null || capC === null) return 'inside';
  if (plateC === null) return 'unknown';
  return plateC >= capC ? 'beyond' : 'inside';
}

/** What is not measured raises nothing, and clears nothing that was. */
const resting = ({ restMs, restLimitMs }: WorkFacts): Condition =>
  restMs === null ? 'unknown' : restMs > restLimitMs ? 'beyond' : 'inside';

const tooLong = ({ onWork, at, contactMs }: WorkFacts): Condition =>
  onWork && at !== null && at.limitMs !== null && contactMs > at.limitMs ? 'beyond' : 'inside';
