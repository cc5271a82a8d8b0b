import type { Commit } from '../../../../daemon/book/book.ts';
import type { Keep } from '../../../../daemon/watching/recorder.ts';

/** A book in memory that is as strict as the real one: what doesn't go on from the commit before it is refused. */
export class Shelf {
  /** The commits of each session, in order; those that went aside too. */
  readonly sessions = new Map<string, Commit[]>();
  readonly #aside = new Set<string>();
  /** Whether the disk is full. */
  isFull = false;

  readonly keep: Keep = (commit) => Promise.resolve(this.isFull ? 'not-yet' : this.#append(commit));

  /** The book is set aside and a new one begun: no session that it holds can be added to any more. */
  setAside(): void {
    for (const id of this.sessions.keys()) this.#aside.add(id);
  }

  /** The commits of the session that was begun last, or of another by its place. */
  at(place: number): readonly Commit[] {
    return [...this.sessions.values()].at(place) ?? [];
  }

  /** The numbers of the inputs that a session holds after what was carried into it. */
  seqsAt(place: number): readonly number[] {
    return this.at(place).flatMap(({ entries }) =>
      entries.flatMap(({ seq, input }) => (input.kind === 'carried' ? [] : [seq])),
    );
  }

  get ids(): readonly string[] {
    return [...this.sessions.keys()];
  }

  #append(commit: Commit): 'kept' | 'never' {
    const known = this.sessions.get(commit.session);
    if ((commit.begin === null) !== (known !== undefined && !this.#aside.has(commit.session))) return 'never';
    const last = known?.at(-1);
    if (last !== undefined && last.end !== null) return 'never';
    let seq = last?.untilSeq ?? (commit.begin?.firstSeq ?? 0) - 1;
    for (const entry of commit.entries) {
      if (entry.seq <= seq) throw new Error(`Input ${entry.seq} comes after ${seq}.`);
      seq = entry.seq;
    }
    if (commit.untilSeq < seq) throw new Error(`It ends at ${commit.untilSeq}, before ${seq}.`);
    if (known === undefined) this.sessions.set(commit.session, [commit]);
    else known.push(commit);
    return 'kept';
  }
}
