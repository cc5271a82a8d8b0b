import { randomId } from './ids.ts';

/** Ids for what one part of a page asks for, so that a retry never doubles, and nothing else passes for a retry. */
export interface RequestIds {
  /** The same one for as long as the same is asked for and has not arrived. @param asked as JSON has it */
  idOf(asked: unknown): string;
  /** It has arrived: whatever is asked for next is something new. */
  arrived(): void;
}

export function requestIds(newId: () => string = randomId): RequestIds {
  let last: { readonly text: string; readonly id: string } | null = null;
  return {
    idOf(asked) {
      const text = JSON.stringify(asked);
      if (last?.text !== text) last = { text, id: newId() };
      return last.id;
    },
    arrived() {
      last = null;
    },
  };
}
