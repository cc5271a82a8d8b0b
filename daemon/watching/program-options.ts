import type { Clock } from '../clock.ts';
import type { SettingsKeeper } from '../settings/keeper.ts';
import type { Keep } from './recorder.ts';

export interface ProgramOptions {
  readonly clock: Clock;
  /** UTC at the clock's zero, ms since 1970. */
  readonly originUtcMs: number;
  readonly version: string;
  readonly epoch: string;
  readonly viewOnly: boolean;
  readonly simulated: () => boolean;
  readonly settings: SettingsKeeper;
  readonly keep: Keep;
  /** What the program could not do and no user waits for. */
  readonly complain: (message: string, error: unknown) => void;
}
