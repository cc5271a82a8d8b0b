import type { Database } from 'better-sqlite3';
import { type KeptVisit, keptVisit } from '../../../shared/heat/work/visit.ts';
import type { SessionHead } from '../book.ts';
import { parseFinding, parseHead } from '../store/parse.ts';

/** A visit is told again as it goes on: the last telling of each counts. The index on visits finds them. */
const VISITS = `SELECT l.session AS session, f.json AS json FROM finding f JOIN link l ON l.n = f.link
  WHERE f.kind = 'visit' ORDER BY f.link, f.place`;

/** What all sessions did to the pieces, the earliest told first. */
export function visitsIn(db: Database): readonly KeptVisit[] {
  const heads = new Map<number, SessionHead>();
  const headText = db.prepare<[number], string>('SELECT head FROM session WHERE n = ?').pluck();
  const headOf = (session: number): SessionHead => {
    const head = heads.get(session) ?? parseHead(headText.get(session) ?? '');
    heads.set(session, head);
    return head;
  };
  const last = new Map<string, KeptVisit>();
  for (const { session, json } of db.prepare<[], { session: number; json: string }>(VISITS).all()) {
    const finding = parseFinding(json);
    if (finding.kind !== 'visit') continue;
    last.set(`${session}/${finding.visit.n}`, keptVisit(finding.visit, headOf(session)));
  }
  return [...last.values()];
}
