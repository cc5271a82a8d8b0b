import { useEffect, useState } from 'preact/hooks';
import { type LineForm, type LinesRead, linesReadSchema } from '../../../../shared/messages/line-form.ts';
import { post } from '../../ask-daemon.ts';

/** What the daemon makes of a device's last lines. */
export interface Tried {
  /** The last answer; null before the first. */
  readonly read: LinesRead | null;
  /** Why there is no newer one; empty while all is well. */
  readonly why: string;
}

/** Asked again so often: lines come in meanwhile. */
const AGAIN_MS = 1000;
/** Whoever types goes on typing for so long. */
const TYPING_MS = 200;

/** Has the last lines read in a form that is being set up, and again as they come in. */
export function useTried(id: string, form: LineForm): Tried {
  const [tried, setTried] = useState<Tried>({ read: null, why: '' });
  const text = JSON.stringify(form);
  useEffect(() => {
    let over = false;
    let timer: number | undefined;
    const ask = async (): Promise<void> => {
      if (!document.hidden) {
        const path = `/api/devices/${encodeURIComponent(id)}/lines`;
        const answer = await post(path, JSON.parse(text), linesReadSchema);
        if (over) return;
        setTried(({ read }) =>
          answer.kind === 'done' ? { read: answer.value, why: '' } : { read, why: answer.why },
        );
      }
      timer = window.setTimeout(() => void ask(), AGAIN_MS);
    };
    timer = window.setTimeout(() => void ask(), TYPING_MS);
    return () => {
      over = true;
      clearTimeout(timer);
    };
  }, [id, text]);
  return tried;
}
