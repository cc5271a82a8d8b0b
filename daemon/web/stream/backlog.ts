import type { Live, ProbeLive, Situation } from '../../../shared/messages/live.ts';
import type { LiveChange } from '../desk.ts';
import type { StreamLimits } from './limits.ts';
import { Message } from './message.ts';

/** What must reach everybody: an alarm's change or a mark. */
export type StreamEvent = Extract<LiveChange, { kind: 'alarm' | 'mark' }>;

/**
 * Numbers the messages of one run of the daemon and keeps what a client may have missed: the last alarms and marks
 * one by one, and of readings and situation the newest. Its size is bounded.
 */
export class Backlog {
  readonly #epoch: string;
  readonly #limits: Pick<StreamLimits, 'keptEvents' | 'keptBytes'>;
  #seq = 0;
  readonly #newest = new Map<string, { readonly probe: ProbeLive; readonly seq: number }>();
  #situation: Message | null = null;
  readonly #events: Message[] = [];
  #eventBytes = 0;
  /** The last event that is no longer kept; a client that saw less can't be helped with events. */
  #forgottenSeq = 0;

  constructor(epoch: string, limits: Pick<StreamLimits, 'keptEvents' | 'keptBytes'>) {
    this.#epoch = epoch;
    this.#limits = limits;
  }

  get epoch(): string {
    return this.#epoch;
  }

  snapshot(live: Live): Message {
    return new Message({ epoch: this.#epoch, seq: this.#seq, kind: 'snapshot', live });
  }

  beat(): Message {
    return new Message({ ...this.#stamp(), kind: 'beat' });
  }

  readings(probes: readonly ProbeLive[]): Message {
    const stamp = this.#stamp();
    for (const probe of probes) this.#newest.set(probe.id, { probe, seq: stamp.seq });
    return new Message({ ...stamp, kind: 'readings', probes });
  }

  situation(situation: Situation): Message {
    this.#situation = new Message({ ...this.#stamp(), kind: 'situation', situation });
    keepOnly(probesOf(situation), this.#newest);
    return this.#situation;
  }

  event(event: StreamEvent): Message {
    const message = new Message({ ...this.#stamp(), ...event });
    this.#events.push(message);
    this.#eventBytes += message.text.length;
    while (this.#events.length > this.#limits.keptEvents || this.#eventBytes > this.#limits.keptBytes)
      this.#forgetOldest();
    return message;
  }

  /**
   * The newest readings and situation where they changed after `seq`, in order. Each reading stands under its own
   * number: under a later one, a client that breaks off in between would take it for seen.
   */
  changedSince(seq: number): Message[] {
    const bySeqOfReading = new Map<number, ProbeLive[]>();
    for (const one of this.#newest.values()) {
      if (one.seq <= seq) continue;
      const probes = bySeqOfReading.get(one.seq) ?? [];
      bySeqOfReading.set(one.seq, [...probes, one.probe]);
    }
    const changed = [...bySeqOfReading].map(
      ([own, probes]) => new Message({ epoch: this.#epoch, seq: own, kind: 'readings', probes }),
    );
    if (this.#situation !== null && this.#situation.seq > seq) changed.push(this.#situation);
    return changed.sort(bySeq);
  }

  /** All that a client which has seen everything up to `seq` has missed; null where that is no longer at hand. */
  missedSince(seq: number): Message[] | null {
    if (seq > this.#seq || seq < this.#forgottenSeq) return null;
    return [...this.#events.filter((event) => event.seq > seq), ...this.changedSince(seq)].sort(bySeq);
  }

  #stamp(): { epoch: string; seq: number } {
    this.#seq += 1;
    return { epoch: this.#epoch, seq: this.#seq };
  }

  #forgetOldest(): void {
    const oldest = this.#events.shift();
    if (oldest === undefined) return;
    this.#eventBytes -= oldest.text.length;
    this.#forgottenSeq = oldest.seq;
  }
}

/** A probe that no iron has any more is gone; only the situation says so. */
export const probesOf = (situation: Situation): ReadonlySet<string> =>
  new Set(situation.irons.flatMap((iron) => iron.probes));

/** Takes out of `map` what is not in `known`. */
export function keepOnly(known: ReadonlySet<string>, map: Map<string, unknown>): void {
  for (const id of map.keys()) if (!known.has(id)) map.delete(id);
}

const bySeq = (a: Message, b: Message): number => a.seq - b.seq;
