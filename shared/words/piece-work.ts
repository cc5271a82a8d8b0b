import type { NextWhy } from '../heat/work/next.ts';

/** Why an area is proposed to be ironed next, in five words at most. */
export const pieceNextWords: Readonly<Record<NextWhy, string>> = {
  'even-out': 'It is behind the rest',
  'skip-about': 'Skip about, not along',
  'change-sides': 'Lap done: change sides',
  'first-shrink': 'It needs the first shrink',
  'finish-lap': 'The last of this lap',
};
