import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { type Connect, connectFile, connectForWriting } from '../../../daemon/book/store/connect.ts';
import { dataFolder } from './recording.ts';

const opened = (connect: Connect = connectFile): Database => {
  const folder = dataFolder();
  const db = connectForWriting(join(folder, 'book.sqlite'), folder, connect);
  onTestFinished(() => void db.close());
  return db;
};
const settingOf = (db: Database, name: string): unknown => db.pragma(name, { simple: true });

/** A SQLite that answers a pragma in its own way. */
const answering =
  (sql: string, answer: unknown): Connect =>
  (file, options) => {
    const db = connectFile(file, options);
    return new Proxy(db, {
      get(target, name) {
        if (name === 'pragma')
          return (asked: string, o?: { simple?: boolean }) =>
            asked === sql ? answer : target.pragma(asked, o);
        const value: unknown = Reflect.get(target, name, target);
        return typeof value === 'function' ? value.bind(target) : value;
      },
    });
  };

describe('a connection for writing', () => {
  it('is in WAL, synchronous FULL, with foreign keys, however often it is opened', () => {
    for (let i = 0; i < 2; i++) {
      const db = opened();
      expect(settingOf(db, 'journal_mode')).toBe('wal');
      expect(settingOf(db, 'synchronous')).toBe(2);
      expect(settingOf(db, 'foreign_keys')).toBe(1);
      expect(settingOf(db, 'fullfsync')).toBe(1);
      expect(settingOf(db, 'trusted_schema')).toBe(0);
    }
  });

  it('is refused where there is no write-ahead log', () => {
    expect(() => opened(answering('journal_mode = WAL', 'delete'))).toThrow(/can't hold the book's log/);
  });

  it('is refused where the settings do not take', () => {
    expect(() => opened(answering('synchronous', 1))).toThrow(/last through a power cut/);
    expect(() => opened(answering('foreign_keys', 0))).toThrow(/last through a power cut/);
  });
});
