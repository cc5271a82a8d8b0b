import { signal } from '@preact/signals';
import { Player } from './player.ts';

/** The browser's audio output and how it really stands. */

/** `none`: not asked for yet. `missing`: this browser has none. */
export const outputState = signal<'none' | 'missing' | 'stopped' | 'running'>(
  typeof AudioContext === 'undefined' ? 'missing' : 'none',
);

/** An output that says it runs and does not go on for so long, ms, has stopped. */
const STALLED_MS = 2000;

let output: { readonly context: AudioContext; readonly player: Player } | null = null;
let moved = { atMs: 0, timeS: -1 };
let stalled = false;

/** How many outputs there have been: a new one plays nothing yet. */
export const outputMade = signal(0);

export const player = (): Player | null => output?.player ?? null;

/** Asks the browser to let the output run. Without a tap or key it may refuse; the state then says so. */
export function runOutput(loudness: number): void {
  if (outputState.peek() === 'missing') return;
  if (output !== null && (stalled || output.context.state === 'closed')) letGo();
  if (output === null) {
    output = makeOutput(loudness);
    if (output !== null) outputMade.value += 1;
  }
  // A refusal leaves the state as it is, and that is what is shown.
  output?.context.resume().catch(() => undefined);
  look();
}

export function stopOutput(): void {
  output?.player.quiet();
  output?.context.suspend().catch(() => undefined);
}

/** Looks whether time goes on in an output that says so. @param nowMs the page's clock */
export function checkOutput(nowMs: number): void {
  if (output === null) return;
  const timeS = output.context.currentTime;
  if (timeS !== moved.timeS || output.context.state !== 'running') moved = { atMs: nowMs, timeS };
  stalled = nowMs - moved.atMs >= STALLED_MS;
  look();
}

function look(): void {
  if (output === null) return;
  outputState.value = output.context.state === 'running' && !stalled ? 'running' : 'stopped';
}

function makeOutput(loudness: number) {
  try {
    const context = new AudioContext();
    context.addEventListener('statechange', look);
    stalled = false;
    return { context, player: new Player(context, loudness) };
  } catch {
    outputState.value = 'missing';
    return null;
  }
}

function letGo(): void {
  output?.context.removeEventListener('statechange', look);
  output?.context.close().catch(() => undefined);
  output = null;
}
