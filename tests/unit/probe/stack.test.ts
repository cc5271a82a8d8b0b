import { describe, expect, it } from 'vitest';
import type { SourceEvent } from '../../../daemon/probe/source.ts';
import { withChecksum } from '../../../daemon/probe/wire/checksum.ts';
import { BOOT_MS, type LineStack, lineStack } from '../../../daemon/probe/wire/stack.ts';
import { LineTally } from '../../../daemon/probe/wire/tally.ts';

interface Bench {
  readonly events: SourceEvent[];
  readonly stack: LineStack;
  readonly tally: LineTally;
  at(ms: number): void;
  write(text: string): readonly SourceEvent[];
}

/** A stack on a clock that stands still, with all that it told. */
function bench(tally = new LineTally()): Bench {
  let nowMs = 1000;
  const events: SourceEvent[] = [];
  const stack = lineStack({
    deviceId: 'dev',
    nowMs: () => nowMs,
    emit: (event) => events.push(event),
    tally,
  });
  return {
    events,
    stack,
    tally,
    at: (ms) => {
      nowMs = 1000 + ms;
    },
    write: (text) => {
      const before = events.length;
      stack.write(Buffer.from(text, 'latin1'));
      return events.slice(before);
    },
  };
}

/** A stack past its boot text and its first line. */
function running(tally?: LineTally): Bench {
  const b = bench(tally);
  b.write('\n');
  b.at(BOOT_MS);
  b.stack.settle();
  b.events.length = 0;
  return b;
}

const short = (events: readonly SourceEvent[]): readonly string[] =>
  events.map((e) => {
    if (e.kind === 'link') return e.link;
    return e.kind === 'rejected' ? `${e.cause}: ${e.raw}` : `${e.sample.probe}=${e.sample.tC}`;
  });

describe('lines', () => {
  it('come out within the write that ends them, from the very first on', () => {
    const b = bench();
    expect(short(b.write(`${withChecksum('t=1')}\n`))).toEqual(['connected', 'dev/1=1']);
    expect(short(b.write(`${withChecksum('t=2')}\n${withChecksum('t=3')}\n`))).toEqual([
      'dev/1=2',
      'dev/1=3',
    ]);
  });

  it('come out within the write even where there are a thousand', () => {
    const b = running();
    const many = Array.from({ length: 1000 }, (_, i) => `${withChecksum(`t=${i}`)}\n`).join('');
    expect(b.write(many + withChecksum('t=1000'))).toHaveLength(1000);
    expect(short(b.write('\n'))).toEqual(['dev/1=1000']);
  });

  it('carry the time at which their write was made', () => {
    const b = running();
    b.at(5000);
    b.write('t=1\n');
    b.at(5100);
    b.write('t=2\n');
    expect(b.events.map((e) => e.tMs)).toEqual([6000, 6100]);
  });

  it('may end in LF or CRLF and may be split anywhere', () => {
    for (const end of ['\n', '\r\n']) {
      const b = running();
      const text = ['t=1', withChecksum('t=2', 'crc'), withChecksum('t=3', 'crc')].join(end) + end;
      for (const byte of text) b.write(byte);
      expect(short(b.events)).toEqual(['dev/1=1', 'dev/1=2', 'dev/1=3']);
    }
  });

  it('that are empty are passed over', () => {
    const b = running();
    expect(b.write('\n\r\n  \r\n')).toEqual([]);
    expect(b.tally.counts().rejected).toEqual([]);
  });

  it('of 256 characters are taken with CRLF, longer ones are refused and the next one is whole', () => {
    const b = running();
    const line = `t=1 x=${'9'.repeat(250)}`;
    expect(short(b.write(`${line}\r\n`))).toEqual(['dev/1=1']);
    for (const extra of ['9', '99', '9'.repeat(5000)]) {
      const [event, next] = b.write(`${line}${extra}\r\nt=2\r\n`);
      expect(event).toMatchObject({ kind: 'rejected', cause: 'too-long', raw: line.slice(0, 256) });
      expect(next).toMatchObject({ kind: 'sample' });
    }
  });

  it('keep a stray byte at the end of one from harming the next', () => {
    const b = running();
    expect(short(b.write(`t=1\u00e2\n${withChecksum('t=2')}\n`))).toEqual(['not-ascii: t=1\\xe2', 'dev/1=2']);
  });
});

describe('the first line of a connection', () => {
  it('is dropped, since it may be the rest of one', () => {
    const b = bench();
    b.at(BOOT_MS);
    expect(short(b.write('0.2 n=5\nt=150.2 n=6\n'))).toEqual(['connected', 'dev/1=150.2']);
    expect(b.tally.counts()).toMatchObject({ linesAccepted: 1, rejected: [] });
  });

  it('is dropped where it looks whole but nothing proves it', () => {
    const b = bench();
    expect(short(b.write('t=15\nt=150\n'))).toEqual(['connected', 'dev/1=150']);
  });

  it('is taken where its checksum holds', () => {
    const b = bench();
    expect(short(b.write(`${withChecksum('t=150.2')}\n`))).toEqual(['connected', 'dev/1=150.2']);
  });

  it('is dropped where it is a number alone, checksum or not', () => {
    expect(short(bench().write(`${withChecksum('50.2')}\n`))).toEqual([]);
  });

  it('is dropped where its checksum does not hold, and not counted', () => {
    const b = bench();
    b.at(BOOT_MS);
    expect(short(b.write('50.2*13\n'))).toEqual(['connected']);
    expect(b.tally.counts().rejected).toEqual([]);
  });
});

describe('boot text', () => {
  it('says starting when the port opens, and connected at the first good line', () => {
    const b = bench();
    expect(short(b.events)).toEqual(['starting']);
    b.at(300);
    expect(short(b.write('ets Jun  8\nrst:0x1 (POWERON)\n\u00fe\u0001\n'))).toEqual([]);
    expect(short(b.write('id=bench-7 fw=2\nt=20\n'))).toEqual(['connected', 'dev/1=20']);
    expect(b.tally.counts()).toMatchObject({
      rejected: [],
      linesAccepted: 2,
      hello: { id: 'bench-7', fw: '2' },
    });
  });

  it('is over after two seconds, though the device is silent', () => {
    const b = bench();
    b.at(BOOT_MS - 1);
    b.stack.settle();
    expect(short(b.events)).toEqual(['starting']);
    b.at(BOOT_MS);
    b.stack.settle();
    b.stack.settle();
    expect(short(b.events)).toEqual(['starting', 'connected']);
    b.write('\n');
    expect(short(b.write('rst:0x1\n'))).toEqual(['malformed: rst:0x1']);
  });

  it('may hold numbers alone: they are no readings until it is over', () => {
    const b = bench();
    b.write('\n');
    expect(short(b.write('115200\n'))).toEqual([]);
    b.at(BOOT_MS);
    expect(short(b.write('21.5\n'))).toEqual(['connected', 'dev/1=21.5']);
  });
});

describe('the end of a connection', () => {
  it('drops and counts an unfinished line', () => {
    const b = running();
    b.write('t=1\nt=15');
    b.stack.end();
    expect(short(b.events)).toEqual(['dev/1=1', 'unfinished: t=15']);
    expect(b.tally.counts().rejected).toEqual([{ cause: 'unfinished', count: 1, lastRaw: 't=15' }]);
  });

  it('counts nothing where nothing was unfinished, or while starting', () => {
    const b = running();
    b.write('t=1\n');
    b.stack.end();
    b.stack.end();
    const c = bench();
    c.write('rst:0');
    c.stack.end();
    expect([...b.tally.counts().rejected, ...c.tally.counts().rejected]).toEqual([]);
  });

  it('joins nothing to the next connection', () => {
    const b = running();
    b.write('t=1\nt=2');
    b.stack.end();
    const c = running(b.tally);
    expect(short(c.write('7.5\nt=3\n'))).toEqual(['malformed: 7.5', 'dev/1=3']);
  });

  it('is the end: what is written after it is not heard', () => {
    const b = running();
    b.stack.end();
    expect(b.write('t=1\n')).toEqual([]);
  });

  it('may come from whoever listens, in the middle of a write', () => {
    const events: SourceEvent[] = [];
    const stack = lineStack({
      deviceId: 'dev',
      nowMs: () => 0,
      emit: (event) => {
        events.push(event);
        if (event.kind === 'sample') stack.end();
      },
    });
    stack.write(Buffer.from(`${withChecksum('t=1')}\n${withChecksum('t=2')}\n`));
    expect(short(events)).toEqual(['starting', 'connected', 'dev/1=1']);
  });
});
