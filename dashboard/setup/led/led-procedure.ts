import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { z } from 'zod';
import { situation } from '../../link/daemon.ts';
import { unit } from '../../parts/unit.ts';
import { get, post } from '../ask-daemon.ts';

/** A procedure that the daemon leads for a probe: what it says of it, and the steps that are taken. */
export interface Led<T, Step extends string> {
  /** What is known of a probe; null before it was asked. */
  readonly of: (probe: string) => T | null;
  /** Why the last step came to nothing; empty where it did not. */
  readonly whyOf: (probe: string) => string;
  /** Takes one step: what came of it; null where the daemon did not take it. */
  readonly take: (probe: string, step: Step, body: unknown) => Promise<T | null>;
  /** Keeps what is known of a probe fresh: at every change of settings, and steadily while `often`. */
  readonly use: (probe: string, often: boolean) => T | null;
}

type ByProbe<T> = Readonly<Record<string, T>>;

/** While something is being measured the daemon is asked again so often, ms. */
const AGAIN_MS = 1000;

const revision: ReadonlySignal<number> = computed(() => situation.value?.settingsRevision ?? 0);

/** @param what the procedure's name in the API, behind the probe's address */
export function ledProcedure<S extends z.ZodType, Step extends string>(
  what: string,
  schema: S,
): Led<z.output<S>, Step> {
  type T = z.output<S>;
  const known = signal<ByProbe<T>>({});
  const whys = signal<ByProbe<string>>({});
  let asked = 0;
  const answered = new Map<string, number>();
  /** How many steps are on their way: what is seen meanwhile may be neither the state before one nor what comes of it. */
  const underWay = new Map<string, number>();

  /** Takes an answer in, unless one that was asked for later is there already. */
  const takeIn = (probe: string, turn: number, value: T): void => {
    if (turn <= (answered.get(probe) ?? 0)) return;
    answered.set(probe, turn);
    known.value = { ...known.peek(), [probe]: value };
  };

  const path = (probe: string, step = ''): string =>
    `/api/probes/${encodeURIComponent(probe)}/${what}${step}?unit=${unit.peek()}`;

  const of = (probe: string): T | null => known.value[probe] ?? null;
  const lookAt = async (probe: string): Promise<void> => {
    asked += 1;
    const turn = asked;
    const answer = await get(path(probe), schema);
    if (answer.kind === 'done' && !underWay.get(probe)) takeIn(probe, turn, answer.value);
  };
  const take = async (probe: string, step: Step, body: unknown): Promise<T | null> => {
    const steps = (by: 1 | -1) => underWay.set(probe, (underWay.get(probe) ?? 0) + by);
    steps(1);
    const answer = await post(path(probe, `/${step}`), body, schema);
    steps(-1);
    whys.value = { ...whys.peek(), [probe]: answer.kind === 'done' ? '' : answer.why };
    if (answer.kind !== 'done') {
      void lookAt(probe);
      return null;
    }
    // Whatever was asked before this came is older.
    asked += 1;
    takeIn(probe, asked, answer.value);
    return answer.value;
  };

  return {
    of,
    whyOf: (probe) => whys.value[probe] ?? '',
    take,
    use: (probe, often) => {
      const at = revision.value;
      const shownIn = unit.value;
      useEffect(() => {
        let over = false;
        let timer: number | undefined;
        const look = async (): Promise<void> => {
          if (!document.hidden) await lookAt(probe);
          if (!over && often) timer = window.setTimeout(() => void look(), AGAIN_MS);
        };
        void look();
        return () => {
          over = true;
          clearTimeout(timer);
        };
      }, [probe, often, at, shownIn]);
      return of(probe);
    },
  };
}
