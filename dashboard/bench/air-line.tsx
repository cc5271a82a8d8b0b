import { useEffect } from 'preact/hooks';
import type { AirAnswer } from '../../shared/messages/cure.ts';
import { airLine, concernText } from '../../shared/words/air.ts';
import { benchWords } from '../../shared/words/coats.ts';
import { coatsNowMs } from '../coats/coats.ts';
import { followCure } from '../coats/follow-cure.ts';
import { lengthText } from '../coats/range-text.ts';
import { isLive } from '../link/daemon.ts';
import { Note } from '../parts/note.tsx';
import { unit } from '../parts/unit.ts';
import { air, airTrouble, readAir } from '../setup/air/air.ts';

/** The shop's air in one line, and what is amiss with it. */
export function AirLine() {
  useEffect(() => followCure(readAir), []);
  return (
    <section class="bench-air" aria-labelledby="bench-air-title" data-testid="bench-air">
      <h2 id="bench-air-title" class="bench-title">
        {benchWords.air}
      </h2>
      {airTrouble.value === '' || !isLive.value ? null : <p>{benchWords.airNotRead(airTrouble.value)}</p>}
      {air.value === null ? null : <Air answer={air.value} />}
      <p>
        <a class="way" href="#setup/air">
          {benchWords.toAir}
        </a>
      </p>
      <p class="quiet">{benchWords.instructions}</p>
    </section>
  );
}

const Air = ({ answer: { now, concerns } }: { readonly answer: AirAnswer }) => (
  <>
    <p class="bench-air-line">{airLine(now, unit.value, agoText(now))}</p>
    {concerns.map((concern) => (
      <Note key={`${concern.kind} ${concern.by}`} hatch="know" testId="air-concern">
        {concernText(concern, unit.value)}
      </Note>
    ))}
  </>
);

function agoText(now: AirAnswer['now']): string {
  const nowMs = coatsNowMs.value;
  return now === null || nowMs === null ? '' : lengthText(nowMs - Date.parse(now.at));
}
