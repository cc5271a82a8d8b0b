/** Asks for work that is done once in the next frame, however often it is asked for until then. */
export interface OnceAFrame {
  ask(): void;
  stop(): void;
}

export function onceAFrame(
  work: () => void,
  frames: Pick<Window, 'requestAnimationFrame' | 'cancelAnimationFrame'> = window,
): OnceAFrame {
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
