import * as fc from 'fast-check';
import pino from 'pino';
import { describe, expect, it } from 'vitest';
import type { StreamClient } from '../../daemon/web/stream/client.ts';
import { type StreamLimits, streamLimits } from '../../daemon/web/stream/limits.ts';
import { Stream } from '../../daemon/web/stream/stream.ts';
import type { StreamMessage } from '../../shared/messages/stream.ts';
import { EPOCH, type FakeDesk, fakeDesk } from '../unit/web/support/fake-desk.ts';
import { ManualTimers } from '../unit/web/support/manual-timers.ts';
import { Picture } from '../unit/web/support/picture.ts';
import { alarmLive, iron, probeLive, situation } from '../unit/web/support/samples.ts';
import { SimPipe } from '../unit/web/support/sim-pipe.ts';

/** Small enough that slowness, dropping and forgetting all happen within a few dozen actions. */
const tight: StreamLimits = {
  ...streamLimits,
  slowFromBytes: 3000,
  slowUntilBytes: 1000,
  dropOverBytes: 12_000,
  dropOverMessages: 30,
  keptEvents: 6,
};

type Action =
  | { readonly do: 'reading'; readonly probe: number; readonly plateC: number }
  | { readonly do: 'alarm'; readonly probe: number; readonly stands: boolean }
  | { readonly do: 'mark' }
  | { readonly do: 'situation'; readonly probes: number }
  | { readonly do: 'pass'; readonly ms: number }
  | { readonly do: 'read' | 'break' | 'return'; readonly client: number; readonly most: number };

const action: fc.Arbitrary<Action> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constant('reading' as const),
      probe: fc.nat(3),
      plateC: fc.integer({ min: 0, max: 250 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('alarm' as const), probe: fc.nat(3), stands: fc.boolean() }),
  },
  { weight: 2, arbitrary: fc.constant({ do: 'mark' as const }) },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('situation' as const), probes: fc.integer({ min: 1, max: 4 }) }),
  },
  {
    weight: 4,
    arbitrary: fc.record({ do: fc.constant('pass' as const), ms: fc.constantFrom(1, 10, 16, 40, 400, 3000) }),
  },
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constantFrom(
        'read' as const,
        'read' as const,
        'read' as const,
        'break' as const,
        'return' as const,
      ),
      client: fc.nat(2),
      most: fc.constantFrom(1, 3, 1000),
    }),
  },
);

const probeId = (n: number): string => `/dev/ttyT0/${n}`;

/** A page: folds what it reads, and goes on where it left off after a break. */
class Page {
  readonly #stream: Stream;
  #pipe: SimPipe | null = null;
  #client: StreamClient | null = null;
  picture = new Picture();
  lastSeq = -1;
  drops = 0;
  resumes = 0;
  readings = 0;
  #fresh = false;
  /** Numbers of alarms and marks, in the stretches between snapshots. */
  stretches: { fromSeq: number; toSeq: number; readonly events: string[] }[] = [];

  constructor(stream: Stream) {
    this.#stream = stream;
  }

  get connected(): boolean {
    return this.#pipe?.open === true;
  }

  connect(): void {
    if (this.connected) return;
    const pipe = new SimPipe();
    const resume = this.lastSeq < 0 ? null : { epoch: EPOCH, after: this.lastSeq };
    const client = this.#stream.join(pipe, resume);
    pipe.answer = (id) => this.#stream.heard(client, id);
    pipe.drained = () => this.#stream.drained(client);
    if (this.#pipe !== null) this.drops += 1;
    this.#fresh = resume !== null;
    this.#pipe = pipe;
    this.#client = client;
  }

  /** The connection breaks: what is under way is lost. */
  break(): void {
    if (this.#client !== null) this.#stream.leave(this.#client);
    this.#pipe = null;
    this.#client = null;
  }

  read(most?: number): void {
    for (const message of this.#pipe?.read(most) ?? []) this.#take(message);
    expect(this.#pipe?.mostWaitingBytes ?? 0).toBeLessThan(2 * tight.dropOverBytes);
  }

  #take(message: StreamMessage): void {
    if (this.#fresh && message.kind !== 'snapshot') this.resumes += 1;
    this.#fresh = false;
    if (message.kind === 'readings') this.readings += 1;
    if (message.kind === 'snapshot') {
      expect(message.seq).toBeGreaterThanOrEqual(this.lastSeq);
      this.picture = Picture.of(message.live);
      this.stretches.push({ fromSeq: message.seq, toSeq: message.seq, events: [] });
    } else {
      expect(message.seq).toBeGreaterThan(this.lastSeq);
      if (message.kind !== 'beat') this.picture.take(message);
      const stretch = this.stretches.at(-1);
      if (stretch === undefined) throw new Error('a change came before how things stand');
      stretch.toSeq = message.seq;
      const event = eventOf(message);
      if (event !== null) stretch.events.push(event);
    }
    this.lastSeq = message.seq;
  }
}

const eventOf = (message: StreamMessage): string | null => {
  if (message.kind === 'alarm') return `${message.seq} ${message.alarm.detail}`;
  return message.kind === 'mark' && message.mark.kind === 'note'
    ? `${message.seq} ${message.mark.text}`
    : null;
};

function perform(
  act: Action,
  n: number,
  world: { desk: FakeDesk; timers: ManualTimers; pages: Page[] },
): void {
  const { desk, timers, pages } = world;
  switch (act.do) {
    case 'reading':
      desk.change({ kind: 'readings', probes: [probeLive(act.plateC, probeId(act.probe))] });
      return;
    case 'alarm':
      desk.change({
        kind: 'alarm',
        change: act.stands ? 'raised' : 'cleared',
        alarm: alarmLive({
          probe: probeId(act.probe),
          state: act.stands ? 'unacknowledged' : 'normal',
          detail: `event ${n}`,
        }),
      });
      return;
    case 'mark':
      desk.change({ kind: 'mark', iron: iron.id, mark: { kind: 'note', text: `event ${n}` } });
      return;
    case 'situation': {
      const probes = Array.from({ length: act.probes }, (_, i) => probeId(i));
      const irons = situation().irons.map((one) => ({ ...one, probes }));
      const before = desk.live().situation.irons[0]?.probes ?? [];
      desk.change({ kind: 'situation', situation: situation({ irons }) });
      // A probe that joins an iron is told, as the desk promises.
      const joined = probes.filter((id) => !before.includes(id));
      if (joined.length > 0) desk.change({ kind: 'readings', probes: joined.map((id) => probeLive(0, id)) });
      return;
    }
    case 'pass':
      timers.advance(act.ms);
      return;
    case 'read':
      pages[act.client]?.read(act.most);
      return;
    case 'break':
      pages[act.client]?.break();
      return;
    case 'return':
      pages[act.client]?.connect();
  }
}

describe('the stream, whatever the order of changes, reads, breaks and returns', () => {
  it('numbers strictly upwards, leaves out or doubles no alarm or mark, and ends at how things stand', () => {
    const seen = { snapshots: 0, resumes: 0, drops: 0, thinned: 0 };
    fc.assert(
      fc.property(fc.array(action, { minLength: 20, maxLength: 120 }), (actions) => {
        const desk = fakeDesk();
        const timers = new ManualTimers();
        const log = pino({ level: 'silent' });
        const stream = new Stream({ desk, epoch: EPOCH, limits: tight, timers, log });
        const all = Array.from({ length: 4 }, (_, i) => probeId(i));
        const irons = situation().irons.map((one) => ({ ...one, probes: all }));
        desk.change({ kind: 'situation', situation: situation({ irons }) });
        const witness = new Page(stream);
        const pages = [new Page(stream), new Page(stream), new Page(stream)];
        for (const page of [witness, ...pages]) page.connect();
        witness.read();
        for (const [n, act] of actions.entries()) {
          // A real program tells a probe's readings only while an iron has it.
          const gone =
            act.do === 'reading' && !desk.live().situation.irons[0]?.probes.includes(probeId(act.probe));
          if (!gone) perform(act, n, { desk, timers, pages });
          // The witness reads at once, so that it is never slow.
          witness.read();
        }
        for (let rounds = 0; rounds < 3; rounds += 1) {
          for (const page of [witness, ...pages]) {
            page.connect();
            page.read();
          }
          timers.advance(20);
          for (const page of [witness, ...pages]) page.read();
        }
        const events = witness.stretches.flatMap((stretch) => stretch.events);
        expect(witness.stretches.length).toBe(1);
        for (const page of pages) {
          expect(page.picture.state).toEqual(Picture.of(desk.live()).state);
          seen.snapshots += page.stretches.length - 1;
          seen.resumes += page.resumes;
          seen.drops += page.drops;
          if (page.resumes + page.drops === 0 && page.readings < witness.readings) seen.thinned += 1;
          for (const { fromSeq, toSeq, events: got } of page.stretches) {
            const due = events.filter((event) => {
              const seq = Number.parseInt(event, 10);
              return seq > fromSeq && seq <= toSeq;
            });
            expect(got).toEqual(due);
          }
        }
        expect(witness.picture.state).toEqual(Picture.of(desk.live()).state);
        stream.close(1001, '');
      }),
      { numRuns: 400 },
    );
    // The runs did reach what they are for.
    expect(Math.min(seen.snapshots, seen.resumes, seen.drops, seen.thinned)).toBeGreaterThan(10);
  });
});
