import { type PatternName, patterns } from './patterns.ts';
import { SAMPLE_RATE, samplesOf } from './synth.ts';

/** Stopping takes so long, s: at once to the ear, and without a click. */
const FADE_S = 0.03;

interface Playing {
  readonly source: AudioBufferSourceNode;
  readonly fade: GainNode;
}

/**
 * Plays patterns into an audio context. A repeated one is a loop of the audio system's own: it goes on where a browser
 * slows a hidden page's timers down.
 */
export class Player {
  readonly #context: BaseAudioContext;
  readonly #out: GainNode;
  readonly #buffers = new Map<string, AudioBuffer>();
  #repeated: Playing | null = null;
  #trial: Playing | null = null;

  constructor(context: BaseAudioContext, loudness: number) {
    this.#context = context;
    this.#out = context.createGain();
    this.#out.gain.value = loudness;
    this.#out.connect(context.destination);
  }

  /** 0 to 1, from now on. */
  setLoudness(loudness: number): void {
    this.#out.gain.value = loudness;
  }

  /** Plays a pattern over and over, in place of all that plays now. */
  repeat(name: PatternName): void {
    this.quiet();
    this.#repeated = this.#start(name, true);
  }

  /** Plays a pattern once, beside what is repeated. */
  once(name: PatternName): void {
    this.#stop(this.#trial);
    this.#trial = this.#start(name, false);
  }

  /** What is repeated ends after so long, s, unless it is allowed more time before that. False: nothing is repeated. */
  allow(seconds: number): boolean {
    this.#repeated?.source.stop(this.#context.currentTime + seconds);
    return this.#repeated !== null;
  }

  quiet(): void {
    this.#stop(this.#repeated);
    this.#stop(this.#trial);
    this.#repeated = null;
    this.#trial = null;
  }

  #stop(playing: Playing | null): void {
    if (playing === null) return;
    const nowS = this.#context.currentTime;
    playing.fade.gain.setTargetAtTime(0, nowS, FADE_S / 4);
    playing.source.stop(nowS + FADE_S);
  }

  #start(name: PatternName, loop: boolean): Playing {
    const source = new AudioBufferSourceNode(this.#context, { buffer: this.#buffer(name, loop), loop });
    const fade = this.#context.createGain();
    source.connect(fade).connect(this.#out);
    source.addEventListener('ended', () => {
      fade.disconnect();
      if (this.#repeated?.source === source) this.#repeated = null;
    });
    source.start();
    return { source, fade };
  }

  #buffer(name: PatternName, withRest: boolean): AudioBuffer {
    const key = `${name} ${withRest}`;
    const known = this.#buffers.get(key);
    if (known !== undefined) return known;
    const samples = samplesOf(patterns[name], withRest);
    const buffer = this.#context.createBuffer(1, samples.length, SAMPLE_RATE);
    buffer.copyToChannel(samples, 0);
    this.#buffers.set(key, buffer);
    return buffer;
  }
}
