import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { onTestFinished } from 'vitest';
import { until } from './until.ts';

interface BoardOptions {
  /** What it measures at first, degC. */
  readonly plateC?: number;
  /** What it calls its probe. */
  readonly name?: string;
  /** How often it sends, ms, and how many lines then. */
  readonly everyMs?: number;
  readonly linesAtOnce?: number;
  /** What it sends in place of the protocol's lines. */
  readonly lineAs?: LineAs;
}

/** A line without its end, given what is measured, degC, and the line's number. */
type LineAs = (tC: number, line: number) => string;

/** What a board measures at its next line, degC, given the line's number. */
type Plate = (line: number) => number;

/**
 * A thermocouple board on a real pseudo-terminal: sends ten lines a second unless told otherwise, and can be plugged in
 * and pulled. * socat holds the far end.
 */
export class Board {
  readonly path: string;
  /** What the program has said to it. */
  heard = '';
  /** Number of the last line that was sent. */
  line = 0;
  /** When each line was sent, by its number, ms since 1970. */
  readonly sentAtMs: number[] = [];
  readonly #options: Required<BoardOptions>;
  #socat: ChildProcess | null = null;
  #timer: NodeJS.Timeout | undefined;
  #plate: Plate;
  #reached: (() => void) | null = null;

  /** `path`: where its node appears. */
  constructor(path: string, options: BoardOptions = {}) {
    const { plateC = 22, name = '1', everyMs = 100, linesAtOnce = 1 } = options;
    const { lineAs = (tC, line) => protocolLine(name, tC, line) } = options;
    this.path = path;
    this.#options = { plateC, name, everyMs, linesAtOnce, lineAs };
    this.#plate = steady(plateC);
    onTestFinished(() => this.pull());
  }

  /** Settles when the node is there, with the time at which it was seen, ms since 1970; it sends from then on. */
  async plug(): Promise<number> {
    const socat = spawn('socat', [`pty,raw,echo=0,link=${this.path}`, '-'], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    this.#socat = socat;
    socat.stdout.on('data', (bytes: Buffer) => (this.heard += bytes.toString('latin1')));
    // A line written as the board is pulled has nowhere to go.
    socat.stdin.on('error', () => undefined);
    await until(`${this.path} appears`, () => existsSync(this.path));
    const atMs = Date.now();
    this.speakAgain();
    return atMs;
  }

  /** Pulls the cable; settles when the node is gone. */
  async pull(): Promise<void> {
    clearInterval(this.#timer);
    const socat = this.#socat;
    this.#socat = null;
    if (socat === null) return;
    const gone = once(socat, 'close');
    socat.kill('SIGTERM');
    await gone;
  }

  /** Stays in, but sends nothing more. */
  fallSilent(): void {
    clearInterval(this.#timer);
  }

  speakAgain(): void {
    const { everyMs, linesAtOnce } = this.#options;
    clearInterval(this.#timer);
    this.#timer = setInterval(() => {
      for (let i = 0; i < linesAtOnce; i += 1) this.sendNext();
    }, everyMs);
  }

  /** Sends one line as it is, without waiting for its turn. */
  write(text: string): void {
    this.#socat?.stdin?.write(Buffer.from(text, 'latin1'));
  }

  sendNext(): void {
    this.line += 1;
    const tC = this.#plate(this.line);
    this.sentAtMs[this.line] = Date.now();
    this.write(`${this.#options.lineAs(tC, this.line)}\n`);
  }

  /** From now on the plate is at what `plate` says. */
  follow(plate: Plate): void {
    this.#plate = plate;
  }

  /**
   * Its probe meets something that is `toC` hot, and follows with this time constant: by the clock, whose time each line
   * carries, so that lines that come late on a busy machine are still true.
   */
  meet(toC: number, tauS: number): void {
    const fromC = this.#plate(this.line);
    const fromMs = performance.now();
    this.#plate = (line) => {
      const sinceS = (performance.now() - fromMs) / 1000;
      return toC + (fromC - toC) * Math.exp(-sinceS / tauS) + 0.1 * Math.sin(line * line);
    };
  }

  /** Brings the plate to `toC` by up to 4 K a line and holds it there; settles when it is there. */
  bring(toC: number): Promise<void> {
    const from = this.line;
    const fromC = this.#plate(from);
    const lines = Math.ceil(Math.abs(toC - fromC) / STEP_K);
    const held = steady(toC);
    this.#plate = (line) => {
      const share = (line - from) / lines;
      if (share < 1) return fromC + (toC - fromC) * share;
      this.#reached?.();
      return held(line);
    };
    return new Promise((resolve) => {
      this.#reached = resolve;
    });
  }
}

const STEP_K = 4;

/** Its motion tells by which line a reading came, g: no use is made of it yet. */
const motionOf = (line: number): string => (line / 1_000_000).toFixed(6);

/** The line that a row of readings.csv came by. */
export const lineOf = (row: Readonly<Record<string, string>>): number =>
  Math.round(Number(row['motion_g']) * 1_000_000);

function protocolLine(name: string, tC: number, line: number): string {
  const ms = Math.floor(performance.now());
  return checked(`p=${name} n=${line % 65_536} ms=${ms} t=${tC.toFixed(2)} g=${motionOf(line)}`);
}

/** A line with its checksum (NMEA 0183: the XOR of all bytes before the `*`). */
export function checked(payload: string): string {
  const sum = Buffer.from(payload, 'latin1').reduce((all, byte) => all ^ byte, 0);
  return `${payload}*${sum.toString(16).toUpperCase().padStart(2, '0')}`;
}

/** A plate that is held: it is never still, or its probe would count as frozen. Never above `plateC`. */
const steady =
  (plateC: number): Plate =>
  (line) =>
    plateC - (line % 3) * 0.1;
