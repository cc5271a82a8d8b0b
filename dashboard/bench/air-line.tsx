import { useEffect } from 'preact/hooks';
import { airLine } from '../../shared/words/air.ts';
import { benchWords } from '../../shared/words/coats.ts';
import { air, airAgo, airTrouble, followAir } from '../cure/air.ts';
import { AirNotes, counting } from '../cure/air-notes.tsx';
import { ConcernNotes } from '../cure/concern-notes.tsx';
import { isLive } from '../link/daemon.ts';
import { unit } from '../parts/unit.ts';

/** The shop's air in one line, and what is amiss with it. */
export function AirLine() {
  useEffect(followAir, []);
  const answer = air.value;
  return (
    <section class="bench-air" aria-labelledby="bench-air-title" data-testid="bench-air">
      <h2 id="bench-air-title" class="bench-title">
        {benchWords.air}
      </h2>
      {airTrouble.value === '' || !isLive.value ? null : <p>{benchWords.airNotRead(airTrouble.value)}</p>}
      {answer === null ? null : (
        <>
          <p class="bench-air-line">{airLine(answer.now, unit.value, airAgo.value)}</p>
          <AirNotes {...answer} probes={counting(answer)} />
          <ConcernNotes concerns={answer.concerns} />
        </>
      )}
      <p>
        <a class="way" href="#setup/air">
          {benchWords.toAir}
        </a>
      </p>
      <p class="quiet">{benchWords.instructions}</p>
    </section>
  );
}
