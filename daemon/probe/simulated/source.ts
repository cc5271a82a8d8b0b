import type { DeviceLink } from '../../../shared/watch/input.ts';
import { simulatedWords } from '../../../shared/words/simulated.ts';
import type { Clock } from '../../clock.ts';
import type { Device, ProbeSource, SourceEvent, SourceStatus } from '../source.ts';
import { type LineStack, lineStack } from '../wire/stack.ts';
import { LineTally } from '../wire/tally.ts';
import { demoScenario } from './demo-scenario.ts';
import { bigIron, type IronTraits } from './irons.ts';
import { type Pace, paceFor } from './pace.ts';
import type { Seed } from './random.ts';
import type { Scenario } from './scenario.ts';
import { type IronState, type Said, type SimulatedIron, simulateIron } from './simulated-iron.ts';

export interface SimulatedOptions {
  /** A `SteppedClock` is pushed from line to line; any other is followed. */
  readonly clock: Clock;
  /** Simulated time for real time; other than 1 only with a `SteppedClock`. Default 1. */
  readonly speed?: number;
  readonly traits?: IronTraits;
  readonly scenario?: Scenario;
  readonly seed?: Seed;
}

/** What the board was last told to show: the level of `alarm=`, and whether `ack=1` came since. */
export interface Lamp {
  readonly level: number;
  readonly acknowledged: boolean;
}

export interface SimulatedSource extends ProbeSource {
  lamp(): Lamp;
}

const TURN_MS = 20;

const device: Device = { id: 'simulated', path: 'simulated', simulated: true };

class SimulatedIronSource implements SimulatedSource {
  readonly device = device;
  readonly #clock: Clock;
  readonly #begin: () => Pace;
  readonly #iron: SimulatedIron;
  readonly #tally = new LineTally();
  #state: IronState;
  #stack: LineStack | null = null;
  #link: DeviceLink = 'starting';
  #detail = '';
  #lamp: Lamp = { level: 0, acknowledged: false };
  #timer: NodeJS.Timeout | undefined;
  #listen: ((event: SourceEvent) => void) | null = null;

  constructor(options: SimulatedOptions) {
    const { clock, speed = 1, traits = bigIron, scenario = demoScenario, seed = 1 } = options;
    this.#clock = clock;
    this.#begin = paceFor(clock, speed);
    this.#iron = simulateIron(traits, scenario, seed);
    this.#state = this.#iron.start;
  }

  start(listen: (event: SourceEvent) => void): void {
    this.#listen = listen;
    const pace = this.#begin();
    this.#timer = setInterval(() => this.#turn(pace), TURN_MS);
  }

  send(line: string): void {
    const level = /^alarm=([0-3])$/.exec(line)?.[1];
    if (level !== undefined) this.#lamp = { level: Number(level), acknowledged: false };
    else if (line === 'ack=1') this.#lamp = { ...this.#lamp, acknowledged: true };
  }

  lamp(): Lamp {
    return this.#lamp;
  }

  status(): SourceStatus {
    return { device, link: this.#link, detail: this.#detail, ...this.#tally.counts() };
  }

  async stop(): Promise<void> {
    this.#listen = null;
    clearInterval(this.#timer);
    this.#stack?.end();
    this.#stack = null;
  }

  /** Lets the world come as far as it may; whoever listens may stop it in the middle. */
  #turn(pace: Pace): void {
    const reachMs = pace.reach();
    while (this.#listen !== null && this.#state.tMs <= reachMs) {
      const { said, state } = this.#iron.next(this.#state);
      this.#state = state;
      pace.at(said.tMs);
      this.#hear(said, reachMs - said.tMs <= pace.keptMs);
    }
    if (this.#listen === null) return;
    pace.at(reachMs);
    this.#stack?.settle();
  }

  #hear(said: Said, kept: boolean): void {
    if (said.link === 'lost') {
      this.#lose();
      return;
    }
    this.#stack ??= lineStack({
      deviceId: device.id,
      nowMs: () => this.#clock.nowMs(),
      emit: (event) => this.#emit(event),
      tally: this.#tally,
    });
    if (!kept) return;
    const text = said.lines.map((line) => `${line}\r\n`).join('');
    this.#stack.write(Buffer.from(text, 'latin1'));
  }

  #lose(): void {
    if (this.#link === 'lost') return;
    this.#stack?.end();
    this.#stack = null;
    const detail = simulatedWords.unplugged;
    this.#emit({ kind: 'link', link: 'lost', detail, tMs: this.#clock.nowMs() });
  }

  #emit(event: SourceEvent): void {
    if (event.kind === 'link') {
      this.#link = event.link;
      this.#detail = event.detail;
    }
    this.#listen?.(event);
  }
}

/**
 * A probe source that is a simulated iron: by default the big demo iron through the demo's scenario, in a loop.
 * @throws RangeError for a speed that its clock can't go at.
 */
export const simulatedSource = (options: SimulatedOptions): SimulatedSource =>
  new SimulatedIronSource(options);
