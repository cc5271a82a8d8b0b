import { expect, it } from 'vitest';
import { onceAFrame } from '../../../../dashboard/parts/once-a-frame.ts';

const framesByHand = () => {
  const waiting = new Map<number, FrameRequestCallback>();
  let last = 0;
  return {
    requestAnimationFrame: (work: FrameRequestCallback) => {
      waiting.set(++last, work);
      return last;
    },
    cancelAnimationFrame: (id: number) => void waiting.delete(id),
    next: () => {
      const due = [...waiting.values()];
      waiting.clear();
      for (const work of due) work(0);
      return due.length;
    },
  };
};

it('does what was asked for a hundred times once in the next frame, and not in the one after', () => {
  const frames = framesByHand();
  let done = 0;
  const once = onceAFrame(() => (done += 1), frames);
  for (let i = 0; i < 100; i++) once.ask();
  expect([frames.next(), done]).toEqual([1, 1]);
  expect([frames.next(), done]).toEqual([0, 1]);
  once.ask();
  expect([frames.next(), done]).toEqual([1, 2]);
});

it('does nothing once it was stopped', () => {
  const frames = framesByHand();
  let done = 0;
  const once = onceAFrame(() => (done += 1), frames);
  once.ask();
  once.stop();
  expect([frames.next(), done]).toEqual([0, 0]);
});
