import { keepIn } from './keep.ts';

/** What this browser keeps from one visit to the next. */
export const keep = keepIn(() => window.localStorage);

/** What it keeps while the tab is open. */
export const tabKeep = keepIn(() => window.sessionStorage);
