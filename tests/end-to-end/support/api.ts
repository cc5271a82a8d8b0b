import { outcomeSchema, problemSchema } from '../../../shared/messages/command.ts';
import { coatsAnswerSchema } from '../../../shared/messages/cure.ts';
import { healthSchema } from '../../../shared/messages/health.ts';
import { itemListSchema } from '../../../shared/messages/items.ts';
import { type AlarmLive, type Live, liveSchema, type ProbeLive } from '../../../shared/messages/live.ts';
import { pieceHeatSchema, pieceListSchema } from '../../../shared/messages/piece.ts';
import {
  type FindingAnswer,
  findingListSchema,
  type Session,
  sessionListSchema,
  verificationSchema,
} from '../../../shared/messages/sessions.ts';
import { ironListSchema, probeListSchema, scheduleListSchema } from '../../../shared/messages/settings.ts';

export interface Answer {
  readonly status: number;
  readonly body: unknown;
}

/** The program's API as another program uses it; every answer is checked against its schema. */
export class Api {
  readonly #address: string;

  constructor(address: string) {
    this.#address = address;
  }

  async live(): Promise<Live> {
    return liveSchema.parse(await this.#get('/api/live'));
  }

  /** The only probe there is; null while there is none, or several. */
  async probe(): Promise<ProbeLive | null> {
    const { probes } = await this.live();
    return probes.length === 1 ? (probes[0] ?? null) : null;
  }

  async alarm(kind: AlarmLive['kind']): Promise<AlarmLive | null> {
    return (await this.live()).alarms.find((one) => one.kind === kind) ?? null;
  }

  /** The session that is being recorded; null where there is none. */
  async running(): Promise<string | null> {
    return (await this.live()).situation.irons.find((iron) => iron.session !== null)?.session ?? null;
  }

  async health() {
    return healthSchema.parse(await this.#get('/api/health'));
  }

  /** Newest first. */
  async sessions(): Promise<readonly Session[]> {
    return sessionListSchema.parse(await this.#get('/api/sessions')).sessions;
  }

  async session(id: string): Promise<Session | null> {
    return (await this.sessions()).find((one) => one.id === id) ?? null;
  }

  async findings(session: string): Promise<readonly FindingAnswer[]> {
    return findingListSchema.parse(await this.#get(`/api/sessions/${session}/findings`)).findings;
  }

  /** What a session holds of one kind of alarm, in order. */
  async alarmFindings(session: string, kind: AlarmLive['kind']) {
    return (await this.findings(session)).flatMap((found) =>
      found.kind === 'alarm' && found.alarm.kind === kind ? [found] : [],
    );
  }

  async verification(session: string) {
    return verificationSchema.parse(await this.#get(`/api/sessions/${session}/verification`));
  }

  /** Rows of cells by the name of their column. */
  async readings(session: string): Promise<readonly Readonly<Record<string, string>>[]> {
    const response = await fetch(`${this.#address}/api/sessions/${session}/readings.csv`);
    const [head = '', ...rows] = (await response.text()).trimEnd().split('\n');
    const names = head.split(',');
    return rows.map((row) => Object.fromEntries(row.split(',').map((cell, i) => [names[i] ?? '', cell])));
  }

  async irons() {
    return ironListSchema.parse(await this.#get('/api/irons')).irons;
  }

  async probes() {
    return probeListSchema.parse(await this.#get('/api/probes')).probes;
  }

  async schedules() {
    return scheduleListSchema.parse(await this.#get('/api/schedules')).schedules;
  }

  async pieces() {
    return pieceListSchema.parse(await this.#get('/api/pieces')).pieces;
  }

  async heat(piece: string) {
    return pieceHeatSchema.parse(await this.#get(`/api/pieces/${piece}/heat`));
  }

  async coats() {
    return coatsAnswerSchema.parse(await this.#get('/api/coats'));
  }

  async items() {
    return itemListSchema.parse(await this.#get('/api/items')).items;
  }

  post(path: string, body: unknown): Promise<Answer> {
    return this.#send('POST', path, body);
  }

  put(path: string, body: unknown): Promise<Answer> {
    return this.#send('PUT', path, body);
  }

  async #send(method: string, path: string, body: unknown): Promise<Answer> {
    const response = await fetch(this.#address + path, {
      method,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    const text = await response.text();
    return { status: response.status, body: text === '' ? null : JSON.parse(text) };
  }

  async #get(path: string): Promise<unknown> {
    const response = await fetch(this.#address + path);
    if (!response.ok) throw new Error(`${path} answered ${response.status}: ${await response.text()}`);
    return await response.json();
  }
}

/** Whether a command took effect and is in the book. */
export const isKept = ({ status, body }: Answer): boolean => status === 200 && outcomeSchema.parse(body).kept;

/** The sentence with which a request was refused. */
export const refusalOf = ({ body }: Answer): string => problemSchema.parse(body).error.message;
