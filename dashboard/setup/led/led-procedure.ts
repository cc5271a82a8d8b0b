import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { z } from 'zod';
import { situation } from '../../link/daemon.ts';
import { unit } from '../../parts/unit.ts';
import { type Answered, get, post } from '../ask-daemon.ts';

/** A procedure that the daemon leads for a probe: what it says of it, and the steps that are taken. */
export interface Led<T, Step extends string> {
  /** What is known of a probe; null before it was asked. */
  readonly of: (probe: string) => T | null;
  /** Why the last step came to nothing; empty where it did not. */
  readonly whyOf: (probe: string) => string;
  /** Takes one step; true where the daemon took it. */
  readonly take: (probe: string, step: Step, body: unknown) => Promise<boolean>;
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

  /** Takes an answer in, unless one that was asked for later is there already. */
  const takeIn = async (probe: string, ask: () => Promise<Answered<T>>): Promise<Answered<T>> => {
    asked += 1;
    const turn = asked;
    const answer = await ask();
    if (answer.kind === 'done' && turn > (answered.get(probe) ?? 0)) {
      answered.set(probe, turn);
      known.value = { ...known.peek(), [probe]: answer.value };
    }
    return answer;
  };

  const path = (probe: string, step = ''): string =>
    `/api/probes/${encodeURIComponent(probe)}/${what}${step}?unit=${unit.peek()}`;

  const of = (probe: string): T | null => known.value[probe] ?? null;
  const lookAt = (probe: string): Promise<Answered<T>> => takeIn(probe, () => get(path(probe), schema));

  return {
    of,
    whyOf: (probe) => whys.value[probe] ?? '',
    take: async (probe, step, body) => {
      const answer = await takeIn(probe, () => post(path(probe, `/${step}`), body, schema));
      whys.value = { ...whys.peek(), [probe]: answer.kind === 'done' ? '' : answer.why };
      return answer.kind === 'done';
    },
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
