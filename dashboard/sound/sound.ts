import { computed, effect, signal, untracked } from '@preact/signals';
import { lead } from '../iron/irons.ts';
import { shownStanding, workedStage } from '../iron/sentence.tsx';
import { alarms, isLive, link, situation, stream } from '../link/daemon.ts';
import { daemonUtcMs } from '../link/stream.ts';
import { nowMs } from '../parts/now.ts';
import { choices, choose, loudnesses } from './choices.ts';
import { checkOutput, outputMade, outputState, player, runOutput, stopOutput } from './output.ts';
import type { OncePattern } from './patterns.ts';
import { beginsAnew, type SoundPlan, soundPlan } from './plan.ts';

/** The sound of this page: what it should be, and that it is. */

/** How the sound really stands, for the views. */
export const soundState = computed(() => {
  if (outputState.value === 'missing') return 'missing';
  if (!choices.value.wanted) return 'off';
  return outputState.value === 'running' ? 'on' : 'stopped';
});

/** Whether the user wants quiet until the daemon is back. */
const quieted = signal(false);

export const quietWhileLost = (): void => {
  quieted.value = true;
};

const inStage = computed(() => {
  const view = lead.value;
  if (view === null) return false;
  const { kind, stages } = shownStanding(view.plates[0]);
  const worked = workedStage(view.iron);
  return kind === 'in-stage' && (worked === null || stages.includes(worked));
});

const lostForMs = computed(() => {
  const { heardAtMs } = stream.value;
  return link.value === 'lost' && heardAtMs !== null ? nowMs.value - heardAtMs : null;
});

export const plan = computed(() =>
  soundPlan({
    alarms: alarms.value,
    utcMs: daemonUtcMs(stream.value, nowMs.value),
    lostForMs: lostForMs.value,
    hot: situation.value?.irons.some((iron) => iron.hot) ?? false,
    quieted: quieted.value,
    ticks: choices.value.tick && inStage.value,
  }),
);

export function turnOn(): void {
  choose({ wanted: true });
  runOutput(loudness());
  // That it is on can be heard.
  if (plan.peek().pattern === null) player()?.once('know');
}

export function turnOff(): void {
  choose({ wanted: false });
  stopOutput();
}

/** Whether an alarm, or the lost daemon, is to be heard now. */
export const alarmSounds = computed(() => plan.value.pattern !== null && plan.value.pattern !== 'tick');

/** Plays a sound once. An alarm that is to be heard comes first. */
export function playOnce(name: OncePattern): void {
  if (!alarmSounds.value) player()?.once(name);
}

const loudness = (): number => loudnesses[choices.value.loudness];

/** A tick goes on for so long after the last look, s: a page that stands still must not say that all is well. */
const TICK_ALLOWED_S = 3;

const silence: SoundPlan = { pattern: null, causes: [] };

/** Lets what should sound sound, from now on. */
export function startSound(): void {
  if (choices.value.wanted) runOutput(loudness());
  for (const gesture of ['pointerdown', 'pointerup', 'keydown'])
    document.addEventListener(gesture, resumeAtGesture, { capture: true, passive: true });
  effect(() => checkOutput(nowMs.value));
  effect(() => {
    const chosen = loudness();
    player()?.setLoudness(chosen);
  });
  effect(() => {
    if (isLive.value) quieted.value = false;
  });
  follow();
}

/** A browser that has stopped the sound lets it go on only in answer to the user. */
function resumeAtGesture(): void {
  if (choices.value.wanted && outputState.value !== 'running') runOutput(loudness());
}

function follow(): void {
  let playing = silence;
  let made = 0;
  effect(() => {
    const wanted = choices.value.wanted ? plan.value : silence;
    const anew = outputMade.value !== made || beginsAnew(playing, wanted);
    made = outputMade.value;
    playing = wanted;
    if (anew) untracked(() => begin(wanted));
    if (wanted.pattern === 'tick') untracked(keepTicking);
  });
}

function begin({ pattern }: SoundPlan): void {
  if (pattern === null) player()?.quiet();
  else player()?.repeat(pattern);
}

/** A tick that ended while the page stood still begins again. */
function keepTicking(): void {
  const output = player();
  if (output === null || output.allow(TICK_ALLOWED_S)) return;
  output.repeat('tick');
  output.allow(TICK_ALLOWED_S);
}
