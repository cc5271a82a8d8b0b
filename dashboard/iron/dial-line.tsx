import type { IronLive } from '../../shared/messages/live.ts';
import { dialWords } from '../../shared/words/dial.ts';
import { adviceText } from '../dial/advice-text.ts';
import { useDial } from '../dial/dials.ts';
import { difference, temperature } from '../parts/unit.ts';

/** Where to set the dial for the stage that is being worked, or why that can't be said; a mark that is doubted. */
export function DialLine({ iron }: { readonly iron: IronLive }) {
  const advice = useDial(iron.id)?.advice.find((one) => one.stageId === iron.stageId);
  const text =
    advice === undefined ? null : adviceText(advice, iron.schedule.cementLimitC, { temperature, difference });
  return (
    <>
      {iron.dial?.doubted === true ? (
        <p class="dial-doubted" data-testid="dial-doubted">
          {dialWords.doubted(String(iron.dial.mark))}
        </p>
      ) : null}
      {text === null ? null : (
        <p class="dial-line" data-testid="dial-line" data-kind={advice?.advice.kind}>
          {text.main} {text.more.length === 0 ? null : <span class="quiet">{text.more.join(' ')}</span>}
        </p>
      )}
    </>
  );
}
