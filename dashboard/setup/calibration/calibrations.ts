import { computed, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type ProbeCalibrations, probeCalibrationsSchema } from '../../../shared/messages/calibration.ts';
import { situation } from '../../link/daemon.ts';
import { unit } from '../../parts/unit.ts';
import { type Answered, get, post } from '../ask-daemon.ts';

/** The calibrations of probes as the daemon has them, and the steps of making one. */

type ByProbe<T> = Readonly<Record<string, T>>;

const known = signal<ByProbe<ProbeCalibrations>>({});
/** Why the last step, or the last look, came to nothing. */
const whys = signal<ByProbe<string>>({});

export const calibrationsOf = (probe: string): ProbeCalibrations | null => known.value[probe] ?? null;
export const whyOf = (probe: string): string => whys.value[probe] ?? '';

/** While something is being measured the daemon is asked again so often, ms. */
const AGAIN_MS = 1000;

let asked = 0;
const answered = new Map<string, number>();

/** Takes an answer in, unless one that was asked for later is there already. */
async function takeIn(
  probe: string,
  ask: () => Promise<Answered<ProbeCalibrations>>,
): Promise<Answered<ProbeCalibrations>> {
  asked += 1;
  const turn = asked;
  const answer = await ask();
  if (answer.kind === 'done' && turn > (answered.get(probe) ?? 0)) {
    answered.set(probe, turn);
    known.value = { ...known.peek(), [probe]: answer.value };
  }
  return answer;
}

const path = (probe: string, step = ''): string =>
  `/api/probes/${encodeURIComponent(probe)}/calibrations${step}?unit=${unit.peek()}`;

export const lookAt = (probe: string): Promise<Answered<ProbeCalibrations>> =>
  takeIn(probe, () => get(path(probe), probeCalibrationsSchema));

type Step = 'begin' | 'wait' | 'keep' | 'drop' | 'save' | 'give-up';

/** Takes one step; true where the daemon took it. */
export async function take(probe: string, step: Step, body: unknown): Promise<boolean> {
  const answer = await takeIn(probe, () => post(path(probe, `/${step}`), body, probeCalibrationsSchema));
  whys.value = { ...whys.peek(), [probe]: answer.kind === 'done' ? '' : answer.why };
  return answer.kind === 'done';
}

const revision = computed(() => situation.value?.settingsRevision ?? 0);

/** Keeps what is known of a probe's calibrations fresh: at every change of settings, and steadily while `often`. */
export function useCalibrations(probe: string, often: boolean): ProbeCalibrations | null {
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
  return calibrationsOf(probe);
}
