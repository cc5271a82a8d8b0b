import type { SessionSummary } from '../book.ts';
import { BookDamaged } from '../store/failure.ts';
import { parseEnding, parseHead } from '../store/parse.ts';
import type { BookRows } from '../store/rows.ts';
import { utcText } from '../utc.ts';

/** A session from its head and its newest commit. Throws `BookDamaged`. */
export function summaryOf(rows: BookRows, session: number): SessionSummary {
  const head = parseHead(rows.head(session));
  const tail = rows.tail(session);
  if (tail === null) throw new BookDamaged(`session ${head.id} is without its newest commit`);
  const end = tail.ending === null ? null : parseEnding(tail.ending);
  return {
    ...head,
    startedAtUtc: utcText(head.originUtcMs + head.firstMs),
    endedAtUtc: end?.atUtc ?? null,
    endWhy: end?.why ?? null,
    untilMs: tail.untilMs,
    samples: tail.samples,
    findings: tail.findings,
    peakC: tail.peakC,
    seal: Buffer.from(tail.link).toString('hex'),
  };
}
