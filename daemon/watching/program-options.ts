import type { ShopEntry } from '../../shared/shop/entry.ts';
import type { Clock } from '../clock.ts';
import type { SettingsKeeper } from '../settings/keeper.ts';
import type { Keep } from './recorder.ts';

export interface ProgramOptions {
  readonly clock: Clock;
  /** UTC at the clock's zero, ms since 1970. */
  readonly originUtcMs: number;
  /** UTC as coats live by it, ms since 1970: the wall clock, or where time is simulated its own. */
  readonly utcNowMs: () => number;
  /** Whether that is the wall clock, which may be set. */
  readonly byWallClock: boolean;
  readonly version: string;
  readonly epoch: string;
  readonly viewOnly: boolean;
  readonly simulated: () => boolean;
  readonly settings: SettingsKeeper;
  readonly keep: Keep;
  /** Keeps what happened in the shop; tells whether it is in the book by now. */
  readonly keepInShop: (entry: ShopEntry) => Promise<boolean>;
  /** What the program could not do and no user waits for. */
  readonly complain: (message: string, error: unknown) => void;
}
