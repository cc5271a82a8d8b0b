import { describe, expect, it } from 'vitest';
import type { SourceEvent } from '../../../daemon/probe/source.ts';
import { withChecksum } from '../../../daemon/probe/wire/checksum.ts';
import { readerFor } from '../../../daemon/probe/wire/forms/reader.ts';
import { BOOT_MS, lineStack } from '../../../daemon/probe/wire/stack.ts';
import { LineTally } from '../../../daemon/probe/wire/tally.ts';
import type { LineForm } from '../../../shared/messages/line-form.ts';

const form: LineForm = {
  kind: 'columns',
  separator: 'semicolon',
  columns: [
    { is: 'n', probe: '1' },
    { is: 't', probe: 'a' },
    { is: 't', probe: 'b' },
  ],
};

async function readAs(tally: LineTally, settled: LineForm): Promise<void> {
  const read = await readerFor(settled);
  if (read.kind === 'problem') throw new Error(read.problem.message);
  tally.readAs(read.reader);
}

function bench(tally = new LineTally()) {
  let nowMs = 0;
  const events: SourceEvent[] = [];
  const emit = (event: SourceEvent): void => {
    events.push(event);
  };
  const stack = lineStack({ deviceId: 'dev', nowMs: () => nowMs, emit, tally });
  return {
    tally,
    boot: () => {
      nowMs += BOOT_MS;
      stack.settle();
    },
    /** What comes of these bytes. */
    write: (text: string): readonly string[] => {
      const before = events.length;
      stack.write(Buffer.from(text, 'latin1'));
      return events.slice(before).map((event) => {
        if (event.kind === 'link') return event.link;
        return event.kind === 'rejected' ? event.cause : `${event.sample.probe}=${event.sample.tC}`;
      });
    },
  };
}

describe('a form that is settled', () => {
  it('takes effect with the next line of the open connection, and the counters begin anew', async () => {
    const { tally, write, boot } = bench();
    write('\n');
    boot();
    expect(write('1;20;21\n')).toEqual(['malformed']);
    await readAs(tally, form);
    expect(write('2;20,5;21\n')).toEqual(['dev/a=20.5', 'dev/b=21']);
    expect(tally.counts()).toMatchObject({ linesAccepted: 1, rejected: [], checksummed: false });
    await readAs(tally, { kind: 'protocol' });
    expect(write('2;20,5;21\nt=7\n8\n')).toEqual(['malformed', 'dev/1=7', 'malformed']);
  });

  it('leaves the counters alone where it is the same one again', async () => {
    const { tally, write, boot } = bench();
    boot();
    await readAs(tally, form);
    write('\n1;20;21\n');
    await readAs(tally, form);
    expect(tally.counts().linesAccepted).toBe(1);
  });

  it('counts a line that doesn’t fit by its cause, and samples missed for every probe of the line', async () => {
    const { tally, write, boot } = bench();
    await readAs(tally, form);
    boot();
    expect(write('x\n1;20;21\n2;20\n4;20;21\n5;2x;21\n')).toEqual([
      'dev/a=20',
      'dev/b=21',
      'malformed',
      'dev/a=20',
      'dev/b=21',
      'bad-value',
    ]);
    expect(tally.counts()).toMatchObject({ linesAccepted: 2, samplesMissed: 4 });
  });

  it('drops the first line of a connection, and what may be boot text in the first two seconds', async () => {
    const { tally, write, boot } = bench();
    await readAs(tally, form);
    expect(write(`${withChecksum('1;20;21')}\n1;22;23\n`)).toEqual([]);
    boot();
    expect(write('1;20;21\n')).toEqual(['dev/a=20', 'dev/b=21']);
  });

  it('takes a line with a checksum in those two seconds, and holds the device to checksums from then on', async () => {
    const { tally, write } = bench();
    await readAs(tally, form);
    expect(write(`\nboot\n${withChecksum('1;20;21')}\n2;20;21\n`)).toEqual([
      'connected',
      'dev/a=20',
      'dev/b=21',
      'checksum',
    ]);
  });

  it('outlives the connection', async () => {
    const { tally } = bench();
    await readAs(tally, form);
    const next = bench(tally);
    next.boot();
    expect(next.write('\n1;20;21\n')).toEqual(['dev/a=20', 'dev/b=21']);
  });
});

describe('the last lines', () => {
  it('are kept as they came, the newest first, without a connection’s first', () => {
    const { tally, write } = bench();
    write('art of one\nA\x01\r\n\nB\nC\nD\nE\nF\nG');
    expect(tally.recentLines()).toEqual(['F', 'E', 'D', 'C', 'B', 'A\x01']);
  });
});
