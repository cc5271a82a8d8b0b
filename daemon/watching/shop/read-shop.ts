import { setTimeout as delay } from 'node:timers/promises';
import type { BookReader } from '../../book/book.ts';
import type { DryingKeeper } from '../drying/drying-keeper.ts';
import type { ShopKeeper } from './shop-keeper.ts';

const RETRY_MS = 5000;

export interface ReadingShop {
  readonly reader: Pick<BookReader, 'shop'>;
  readonly shop: ShopKeeper;
  readonly drying: Pick<DryingKeeper, 'takeBook'>;
  /** Aborted as the program ends: what can't be read then is nothing to complain of. */
  readonly ending: AbortSignal;
  readonly complain: (message: string, error: unknown) => void;
}

/** Reads what earlier sessions did to the pieces, and what happened in the shop; where that fails it is said, and tried again. Never rejects. */
export async function readShop({ reader, shop, drying, ending, complain }: ReadingShop): Promise<void> {
  while (!ending.aborted) {
    try {
      // oxlint-disable-next-line eslint/no-await-in-loop -- one try after the other
      const { entries, unreadable, ...before } = await reader.shop();
      shop.take({ kind: 'book', ...before });
      drying.takeBook(entries);
      if (unreadable > 0)
        complain(`Rows of the shop's journal that can't be read, and are left out: ${unreadable}.`, null);
      return;
    } catch (error) {
      if (ending.aborted) return;
      complain('What earlier sessions did to the pieces could not be read.', error);
    }
    // oxlint-disable-next-line eslint/no-await-in-loop -- waiting is the purpose
    await delay(RETRY_MS, undefined, { ref: false, signal: ending }).catch(() => undefined);
  }
}
