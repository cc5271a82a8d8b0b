import BetterSqlite3, { type Database, type Statement } from 'better-sqlite3';
import type { Connect } from '../../../daemon/book/store/connect.ts';

/** Decides before each statement whether it fails: returns SQLite's result code, or null to let it through. */
export type Trouble = (statement: string) => string | null;

/**
 * Opens files as usual, but asks `trouble` before every statement, the begin and the commit of transactions included.
 * What fails never reaches the file.
 */
export function faultyDisk(trouble: Trouble): Connect {
  const check = (statement: string): void => {
    const code = trouble(statement);
    if (code !== null)
      throw new BetterSqlite3.SqliteError(`made to fail: ${statement.trim().slice(0, 40)}`, code);
  };
  return (file, options) => {
    check(`open ${file}`);
    return faulty(new BetterSqlite3(file, options), check);
  };
}

function faulty(db: Database, check: (statement: string) => void): Database {
  const transaction = (work: (...values: unknown[]) => unknown) => ({
    immediate: (...values: unknown[]) => {
      check('BEGIN');
      const all = (): unknown => {
        const result = work(...values);
        check('COMMIT');
        return result;
      };
      return db.transaction(all).immediate();
    },
  });
  const own = {
    exec: (sql: string) => {
      check(sql);
      return db.exec(sql);
    },
    pragma: (sql: string, options?: BetterSqlite3.PragmaOptions) => {
      check(`PRAGMA ${sql}`);
      return db.pragma(sql, options);
    },
    prepare: (sql: string) => faultyStatement(db.prepare(sql), sql, check),
    transaction,
  };
  return standingIn(db, own);
}

function faultyStatement(statement: Statement, sql: string, check: (statement: string) => void): Statement {
  const checked =
    <R>(method: (values: unknown[]) => R) =>
    (...values: unknown[]): R => {
      check(sql);
      return method(values);
    };
  const standIn: Statement = standingIn(statement, {
    run: checked((values) => statement.run(...values)),
    get: checked((values) => statement.get(...values)),
    all: checked((values) => statement.all(...values)),
    pluck: () => {
      statement.pluck();
      return standIn;
    },
  });
  return standIn;
}

/** The object itself, but for the methods given. */
function standingIn<T extends object>(real: T, own: Record<string, unknown>): T {
  return new Proxy(real, {
    get: (target, name) => {
      if (typeof name === 'string' && Object.hasOwn(own, name)) return own[name];
      const value: unknown = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
