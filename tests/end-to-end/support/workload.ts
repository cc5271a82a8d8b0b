import { setTimeout as delay } from 'node:timers/promises';
import { type Api, isKept } from './api.ts';

/** What was asked of the program, and which of it was acknowledged. */
export interface Asked {
  readonly commandId: string;
  readonly kept: boolean;
}

export interface Setting {
  readonly value: string;
  readonly acknowledged: boolean;
}

/**
 * Somebody at work while the program may be killed at any moment: says what is marked, changes settings and acknowledges
 * alarms, one after the other in each kind, and notes what was acknowledged.
 */
export class Workload {
  readonly marks: Asked[] = [];
  readonly acknowledgements: Asked[] = [];
  readonly labels: Setting[] = [];
  readonly schedules: Setting[] = [];
  #stopped = false;
  readonly #api: Api;
  readonly #name: string;
  readonly #random: () => number;
  readonly #done: Promise<unknown>;

  /** `acknowledges`: whether alarms are acknowledged too. */
  constructor(api: Api, name: string, random: () => number, acknowledges: boolean) {
    this.#api = api;
    this.#name = name;
    this.#random = random;
    const all = [this.#mark(), this.#label(), this.#schedule()];
    if (acknowledges) all.push(this.#acknowledge());
    // A program that is killed in the middle of an answer breaks it off: what was asked is then not acknowledged.
    this.#done = Promise.allSettled(all);
  }

  /** Asks nothing more; settles when nothing is under way. */
  async stop(): Promise<void> {
    this.#stopped = true;
    await this.#done;
  }

  async #mark(): Promise<void> {
    for (let i = 1; !this.#stopped; i += 1) {
      const commandId = `${this.#name}-mark-${i}`;
      const session = await this.#api.running();
      await this.#note(this.marks, commandId, `/api/sessions/${session}/marks`, {
        mark: { kind: 'note', text: commandId },
      });
      await delay(this.#random() * 80);
    }
  }

  async #acknowledge(): Promise<void> {
    for (let i = 1; !this.#stopped; i += 1) {
      const alarm = await this.#api.alarm('over-limit');
      if (alarm?.state === 'unacknowledged') {
        const { iron, kind, probe } = alarm;
        await this.#note(this.acknowledgements, `${this.#name}-seen-${i}`, '/api/alarms/acknowledge', {
          iron,
          kind,
          probe,
        });
      }
      await delay(30);
    }
  }

  async #label(): Promise<void> {
    const [probe] = await this.#api.probes();
    if (probe === undefined) return;
    const { id, ...draft } = probe;
    for (let i = 1; !this.#stopped; i += 1) {
      const value = `${this.#name}-label-${i}`;
      const path = `/api/probes/${encodeURIComponent(id)}`;
      await this.#set(this.labels, value, path, { ...draft, label: value });
      await delay(this.#random() * 150);
    }
  }

  async #schedule(): Promise<void> {
    for (let i = 1; !this.#stopped; i += 1) {
      const [newest] = await this.#api.schedules();
      if (newest === undefined) return;
      const { id, version, madeAt: _, ...draft } = newest;
      const value = `${this.#name}-schedule-${i}`;
      await this.#set(this.schedules, value, `/api/schedules/${id}`, {
        ...draft,
        name: value,
        basedOn: version,
      });
      await delay(this.#random() * 150);
    }
  }

  async #note(into: Asked[], commandId: string, path: string, body: object): Promise<void> {
    into.push({ commandId, kept: false });
    const answer = await this.#api.post(path, { commandId, ...body });
    if (answer.status === 200) into[into.length - 1] = { commandId, kept: isKept(answer) };
  }

  async #set(into: Setting[], value: string, path: string, body: object): Promise<void> {
    into.push({ value, acknowledged: false });
    const { status } = await this.#api.put(path, body);
    into[into.length - 1] = { value, acknowledged: status === 200 };
  }
}

/** The values that a setting may have after a break: the last one that was acknowledged, or one that was asked after it. */
export function possibleValues(before: string, asked: readonly Setting[]): readonly string[] {
  const last = asked.findLastIndex((one) => one.acknowledged);
  const after = asked.slice(Math.max(0, last)).map((one) => one.value);
  return last === -1 ? [before, ...after] : after;
}
