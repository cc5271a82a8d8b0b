import { beginLoad, followLoad, type Load, type LoadFound, loadFound, type Unloaded } from './load.ts';
import { type Look, timedCycleOf, UNSEEN_MS } from './look.ts';
import type { DialMark } from './mark.ts';
import { addCycle, beginStretch, isUnlike, type Stretch, type StretchFound, untold } from './stretch.ts';
import { followWarmUp, heatedUpBy, type WarmUp } from './warm-up.ts';

/**
 * Learns what an iron does at the marks of its dial, by itself and without a special sitting: whenever it sits on its
 * rest at a mark that the user has told, its cycles are measured; whenever it then works at the same mark, the drop
 * under load is. A slice of the watch: plain data, bounded.
 */
export interface Sitting {
  readonly warmUp: WarmUp | null;
  readonly stretch: Stretch | null;
  readonly load: Load | null;
  /** What the last stretch gave, for the work to be held against. */
  readonly unloaded: Unloaded | null;
  /**
   * When the mark was told that is not believed any more: on its rest the plate has gone where that mark doesn't keep
   * it, so the dial was turned or switched off without a word. The next telling is believed again.
   */
  readonly doubtedMs: number | null;
  readonly last:
    | (Pick<Look, 'tMs' | 'probe' | 'stageId'> & { readonly phase: Look['behaviour']['phase'] })
    | null;
}

export const noSitting: Sitting = {
  warmUp: null,
  stretch: null,
  load: null,
  unloaded: null,
  doubtedMs: null,
  last: null,
};

export type SittingFound =
  | { readonly kind: 'stretch'; readonly stretch: StretchFound }
  | { readonly kind: 'load'; readonly load: LoadFound };

export interface SittingStep {
  readonly sitting: Sitting;
  readonly found: readonly SittingFound[];
}

/** Takes one more valid reading of the leading probe. */
export function sit(before: Sitting, look: Look): SittingStep {
  const broken = isBroken(before, look);
  const whole = broken ? { ...before, warmUp: null } : before;
  const doubted = withDoubt(whole, look, broken);
  const rested = stepStretch(doubted, look, broken);
  const worked = stepLoad(rested.sitting, look, broken);
  const { tMs, probe, stageId } = look;
  const sitting: Sitting = {
    ...worked.sitting,
    warmUp: followWarmUp(whole.warmUp, look),
    last: { tMs, probe, stageId, phase: look.behaviour.phase },
  };
  return { sitting, found: [...rested.found, ...worked.found] };
}

/** What was seen before doesn't go on in this look: time has passed unseen, or another probe leads. */
function isBroken({ last }: Sitting, { tMs, probe }: Look): boolean {
  return last === null || tMs - last.tMs > UNSEEN_MS || probe !== last.probe;
}

const sameMark = (mark: DialMark, { dial }: Look): boolean => dial?.mark === mark;
const sameStage = ({ last }: Sitting, { stageId }: Look): boolean => last?.stageId === stageId;

/** Doubts the mark where the plate leaves it by itself, having kept to it for a whole cycle at least. */
function withDoubt(before: Sitting, look: Look, broken: boolean): Sitting {
  const { stretch, last } = before;
  if (stretch === null || look.dial === null || broken || !goesOn(stretch, before, look)) return before;
  const left = last?.phase === 'regulating' && look.behaviour.phase !== 'regulating' && stretch.settled;
  return left || isUnlike(stretch) ? { ...before, doubtedMs: look.dial.toldMs } : before;
}

const goesOn = (stretch: Stretch, before: Sitting, look: Look): boolean =>
  look.place === 'on-rest' && sameMark(stretch.mark, look) && sameStage(before, look);

/** Whether the mark that was told last is not believed any more: the user is to say it again. */
export const isDoubted = ({ doubtedMs }: Sitting, dial: Look['dial']): boolean =>
  dial !== null && dial.toldMs === doubtedMs;

const isBelieved = (sitting: Sitting, { dial }: Look): boolean => dial !== null && !isDoubted(sitting, dial);

function stepStretch(before: Sitting, look: Look, broken: boolean): SittingStep {
  const { stretch } = before;
  if (stretch !== null && !broken && goesOn(stretch, before, look) && isBelieved(before, look))
    return tell(before, goOn(stretch, before, look), false);
  const ended = stretch === null ? { sitting: before, found: [] } : tell(before, stretch, true);
  const begins = look.place === 'on-rest' && isBelieved(before, look) && look.dial !== null;
  const next = begins ? beginStretch(look.dial.mark, look.tMs) : null;
  return { ...ended, sitting: { ...ended.sitting, stretch: next } };
}

function goOn(stretch: Stretch, { warmUp, last }: Sitting, look: Look): Stretch {
  const { phase, peak } = look.behaviour;
  const cycle = timedCycleOf(look);
  const longer = cycle === null ? stretch : addCycle(stretch, cycle);
  if (warmUp === null || phase !== 'regulating' || last?.phase !== 'warming') return longer;
  // Until its first peak the iron heats alike whatever the dial asks for: the mark must stand by then, not before.
  const marked = peak !== null && peak.tMs >= stretch.fromMs;
  return marked ? { ...longer, heatedUp: heatedUpBy(warmUp, look) } : longer;
}

/** Tells of a stretch where it has something new to say; the work that follows is held against that. */
function tell(before: Sitting, stretch: Stretch, ended: boolean): SittingStep {
  const said = untold(stretch, ended);
  if (said === null) return { sitting: { ...before, stretch }, found: [] };
  const { meanC, troughC, periodS } = said.figures;
  const unloaded = { mark: stretch.mark, meanC, troughC, periodS };
  const sitting = { ...before, stretch: { ...stretch, told: stretch.count }, unloaded };
  return { sitting, found: [{ kind: 'stretch', stretch: said }] };
}

function stepLoad(before: Sitting, look: Look, broken: boolean): SittingStep {
  const { load } = before;
  const next = isBelieved(before, look) ? beginLoad(look) : null;
  if (load === null) return { sitting: { ...before, load: next }, found: [] };
  const goesOn = !broken && look.place === 'on-work' && sameMark(load.mark, look) && sameStage(before, look);
  if (goesOn) return { sitting: { ...before, load: followLoad(load, look) }, found: [] };
  // A plate that was let down at the end was switched off or turned down, not loaded.
  const held = before.last?.phase === 'regulating' || before.last?.phase === 'warming';
  const said = held && before.last !== null ? loadFound(load, before.unloaded, before.last.tMs) : null;
  return {
    sitting: { ...before, load: next },
    found: said === null ? [] : [{ kind: 'load', load: said }],
  };
}
