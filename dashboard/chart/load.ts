import { useEffect, useRef, useState } from 'preact/hooks';
import type { TraceChart, TraceOptions } from './mount.ts';

/**
 * Mounts a trace on a canvas once what draws it has been loaded: it is the larger part of the page and comes after the
 * rest, so that a plate temperature never waits for it.
 * @param mounted told of the chart; gives what has to be ended with it
 */
export function useTrace(options: () => TraceOptions, mounted: (chart: TraceChart) => () => void) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let end: (() => void) | null = null;
    let gone = false;
    const mount = async (): Promise<void> => {
      const { mountTrace } = await import('./mount.ts');
      if (gone || canvas.current === null) return;
      const chart = mountTrace(canvas.current, options());
      const endUse = mounted(chart);
      end = () => {
        endUse();
        chart.destroy();
      };
    };
    mount().catch(() => setFailed(true));
    return () => {
      gone = true;
      end?.();
    };
  }, []);
  return { canvas, failed };
}
