import type { DeviceLive } from '../../../shared/messages/live.ts';
import { deviceSetupWords } from '../../../shared/words/setup.ts';
import { deviceWords } from '../../../shared/words/source.ts';

/** What is to be said of a device, and done about it. */
export interface Diagnosis {
  readonly well: boolean;
  readonly sentences: readonly string[];
}

/** A device that has more than this share of its lines refused needs a look. */
const BAD_SHARE = 0.02;

export function diagnosis(device: DeviceLive): Diagnosis {
  const { link, detail, linesAccepted, rejected } = device;
  if (link === 'lost') return { well: false, sentences: [detail === '' ? deviceWords.lostAction : detail] };
  if (link === 'starting') return { well: true, sentences: [deviceSetupWords.starting] };
  const bad = rejected.reduce((sum, one) => sum + one.count, 0);
  const said = detail === '' ? [] : [detail];
  if (linesAccepted === 0 && bad === 0) return { well: false, sentences: [...said, deviceSetupWords.silent] };
  if (linesAccepted === 0)
    return { well: false, sentences: [...said, deviceSetupWords.noValid, ...causeSaid(device)] };
  if (bad > (bad + linesAccepted) * BAD_SHARE)
    return {
      well: false,
      sentences: [...said, deviceSetupWords.share(bad, bad + linesAccepted), ...causeSaid(device)],
    };
  return { well: true, sentences: [...said, deviceSetupWords.well] };
}

/** What to do about the cause that most lines were refused for. */
function causeSaid({ rejected }: DeviceLive): readonly string[] {
  const [first] = rejected.toSorted((a, b) => b.count - a.count);
  const advice: Readonly<Record<string, string>> = deviceSetupWords.byCause;
  const said = advice[first?.cause ?? ''];
  return said === undefined ? [] : [said];
}
