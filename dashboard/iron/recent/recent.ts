import type { Columns } from '../../chart/columns.ts';

/** The last minutes of every probe, in memory that does not grow however long the page stays open. */

/** So much is kept, ms. */
export const RECENT_MS = 15 * 60_000;
/** Readings of so much time stand together as their lowest and highest, ms. */
export const CELL_MS = 2000;
/** A probe that comes and goes all the time gets no more rows than this. */
export const ROWS_AT_MOST = (4 * RECENT_MS) / CELL_MS;

interface Row {
  tMs: number;
  /** Null: no reading, because of `fault`. */
  minC: number | null;
  maxC: number | null;
  fault: string | null;
}

export class Recent {
  readonly #probes = new Map<string, Row[]>();

  get ids(): readonly string[] {
    return [...this.#probes.keys()];
  }

  /** Takes in a reading, or the fault that stands in its place. */
  add(probe: string, tMs: number, read: { readonly plateC: number } | { readonly fault: string }): void {
    const rows = this.#probes.get(probe) ?? [];
    this.#probes.set(probe, rows);
    const last = rows.at(-1);
    if ('fault' in read) {
      if (last?.fault !== read.fault) rows.push({ tMs, minC: null, maxC: null, fault: read.fault });
    } else if (last !== undefined && last.minC !== null && isSameCell(last.tMs, tMs)) {
      last.minC = Math.min(last.minC, read.plateC);
      last.maxC = Math.max(last.maxC ?? read.plateC, read.plateC);
    } else rows.push({ tMs, minC: read.plateC, maxC: read.plateC, fault: null });
    drop(rows, tMs - RECENT_MS);
  }

  /** Nothing is heard any more of any probe. */
  lose(tMs: number, fault: string): void {
    for (const probe of this.#probes.keys()) this.add(probe, tMs, { fault });
  }

  /** What was before the first that is known of a probe. */
  putBefore(columns: Columns): void {
    const rows = this.#probes.get(columns.id) ?? [];
    const firstMs = rows[0]?.tMs ?? Number.POSITIVE_INFINITY;
    const earlier = columns.tMs.flatMap((tMs, i): Row[] =>
      tMs >= firstMs
        ? []
        : [
            {
              tMs,
              minC: columns.minC[i] ?? null,
              maxC: columns.maxC[i] ?? null,
              fault: columns.fault[i] ?? null,
            },
          ],
    );
    const all = [...earlier, ...rows];
    drop(all, (all.at(-1)?.tMs ?? 0) - RECENT_MS);
    this.#probes.set(columns.id, all);
  }

  /** Forgets every probe but these. */
  keepOnly(ids: ReadonlySet<string>): void {
    for (const id of this.#probes.keys()) if (!ids.has(id)) this.#probes.delete(id);
  }

  /** When a probe's first row is, ms; null where nothing is known of it. */
  firstMs(probe: string): number | null {
    return this.#probes.get(probe)?.[0]?.tMs ?? null;
  }

  columns(probe: string): Columns {
    const rows = this.#probes.get(probe) ?? [];
    return {
      id: probe,
      tMs: rows.map((row) => row.tMs),
      minC: rows.map((row) => row.minC),
      maxC: rows.map((row) => row.maxC),
      fault: rows.map((row) => row.fault),
    };
  }
}

const isSameCell = (a: number, b: number): boolean => Math.floor(a / CELL_MS) === Math.floor(b / CELL_MS);

/** Drops what is older, but for the last row of it: a gap that began then may still hold. */
function drop(rows: Row[], beforeMs: number): void {
  let old = 0;
  while (old + 1 < rows.length && (rows[old + 1]?.tMs ?? 0) < beforeMs) old += 1;
  rows.splice(0, Math.max(old, rows.length - ROWS_AT_MOST));
}
