type Frames = Pick<Window, 'requestAnimationFrame' | 'cancelAnimationFrame'>;

/** What can wait is done when the page has nothing else to do, this much later at most, ms. */
const IDLE_AT_MOST_MS = 500;

/** Between frames rather than in one, so that a new number is not painted later for it; Safari knows no such time. */
export const betweenFrames = (): Frames =>
  'requestIdleCallback' in window
    ? {
        requestAnimationFrame: (work) =>
          window.requestIdleCallback(() => work(performance.now()), { timeout: IDLE_AT_MOST_MS }),
        cancelAnimationFrame: (id) => window.cancelIdleCallback(id),
      }
    : window;

/** Asks for work that is done once in the next frame, however often it is asked for until then. */
export interface OnceAFrame {
  ask(): void;
  stop(): void;
}

export function onceAFrame(work: () => void, frames: Frames = window): OnceAFrame {
  let asked: number | null = null;
  return {
    ask() {
      asked ??= frames.requestAnimationFrame(() => {
        asked = null;
        work();
      });
    },
    stop() {
      if (asked !== null) frames.cancelAnimationFrame(asked);
      asked = null;
    },
  };
}
