import type { AlarmChange, AlarmRecord } from '../alarm/record.ts';
import type { Visit } from '../heat/work/visit.ts';
import type { Cycle } from '../iron/cycle.ts';
import type { LoadFound } from '../iron/dial/load.ts';
import type { StretchFound } from '../iron/dial/stretch.ts';
import type { IronPhase } from '../iron/phase.ts';
import type { Quality } from '../thermometer/reading.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import type { Check, Typed } from './checks.ts';

/** What the watch concluded. */

export type Finding =
  /** An alarm went from one state to another; the record is as it stands after that. */
  | { readonly kind: 'alarm'; readonly change: AlarmChange; readonly alarm: AlarmRecord }
  /** A probe's readings went from one quality to another. */
  | { readonly kind: 'quality'; readonly probe: ProbeId; readonly quality: Quality }
  | { readonly kind: 'phase'; readonly phase: IronPhase }
  /** A whole thermostat cycle, trough to trough. */
  | { readonly kind: 'cycle'; readonly cycle: Cycle }
  /** What the iron does on its rest at a mark of its dial; told again as the same stretch goes on. */
  | { readonly kind: 'stretch'; readonly probe: ProbeId; readonly stretch: StretchFound }
  /** How far a spell of work has drawn the plate down. */
  | { readonly kind: 'load'; readonly load: LoadFound }
  /** A check on a pad: told as it settles and as it ends, with the same begin. */
  | { readonly kind: 'check'; readonly check: Check }
  /** A reading that was typed from a hand thermometer. */
  | { readonly kind: 'typed'; readonly typed: Typed }
  /** A stay of the iron on the work: told again as it goes on, with the same number. */
  | { readonly kind: 'visit'; readonly visit: Visit }
  /** The plate has passed 45 degC rising (a session is due), or has been measured cold for long enough. */
  | { readonly kind: 'heat'; readonly change: 'hot' | 'cold' }
  /** A mark, acknowledgement or silence that could not be taken, with the reason. */
  | { readonly kind: 'refused'; readonly commandId: string; readonly reason: string };

/** A finding with the input that caused it. Its identity is (session, seq, subject). */
export interface FoundEntry {
  readonly seq: number;
  readonly tMs: number;
  readonly finding: Finding;
}

/** What a finding is about, as text: with session and sequence number it names the finding. */
export function findingSubject(finding: Finding): string {
  switch (finding.kind) {
    case 'alarm':
      return `alarm:${finding.alarm.kind}:${finding.change}:${finding.alarm.probe ?? ''}`;
    case 'quality':
      return `quality:${finding.probe}`;
    case 'phase':
      return 'phase';
    case 'cycle':
      return 'cycle';
    case 'stretch':
      return 'stretch';
    case 'load':
      return 'load';
    case 'check':
      return `check:${finding.check.probe}:${finding.check.ended ?? 'settled'}`;
    case 'typed':
      return 'typed';
    case 'visit':
      return `visit:${finding.visit.n}`;
    case 'heat':
      return `heat:${finding.change}`;
    case 'refused':
      return `refused:${finding.commandId}`;
  }
}
