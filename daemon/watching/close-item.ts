import { recordWords } from '../../shared/words/records.ts';
import type { Book, BookReader, ItemClosing, SuspectItem } from '../book/book.ts';
import { Refusal } from '../refusal.ts';

export interface ItemKeeping {
  readonly reader: Pick<BookReader, 'items'>;
  readonly book: Pick<Book, 'closeItem'>;
  /** The present time, ISO 8601 with offset. */
  readonly nowUtc: () => string;
}

/**
 * Closes an open item with what a named person found. A retry under the same id is answered as the first time; anything
 * else that comes second is refused with who came first. Rejects with `Refusal` or `BookFailure`.
 */
export async function closeItem(
  { reader, book, nowUtc }: ItemKeeping,
  id: string,
  said: Pick<ItemClosing, 'by' | 'found' | 'commandId'>,
): Promise<SuspectItem> {
  const item = (await reader.items()).find((one) => one.id === id);
  if (item === undefined) throw new Refusal('unknown', recordWords.noSuchItem(id), 'id');
  if (item.closing === null && item.crossing.toMs === null && item.session.endWhy === null)
    throw new Refusal('conflict', recordWords.stillOver);
  const stands = item.closing ?? (await book.closeItem({ ...said, item: id, atUtc: nowUtc() }));
  if (stands.commandId !== said.commandId)
    throw new Refusal('conflict', recordWords.closedAlready(stands.by, stands.atUtc, stands.found));
  return { ...item, closing: stands };
}
