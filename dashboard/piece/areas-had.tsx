import type { PieceHeat } from '../../shared/messages/piece.ts';
import type { Area } from '../../shared/piece/piece.ts';
import { formatDuration } from '../../shared/units/time.ts';
import { hadWords } from '../../shared/words/pieces.ts';
import { sessionTimes } from '../parts/session-times.ts';
import { difference, temperature } from '../parts/unit.ts';

/** What each area has had, over all its visits; those that had nothing are named together. */
export function AreasHad({ heat }: { readonly heat: PieceHeat }) {
  const { areas } = heat.piece;
  const bare = areas.filter((area) => lapsOf(heat, area) === 0);
  return (
    <section data-testid="areas-had">
      <h3>{hadWords.title}</h3>
      <ul class="visit-list">
        {areas.map((area) =>
          lapsOf(heat, area) === 0 ? null : (
            <li key={area.id}>
              <span>
                <b>{nameOf(heat, area)}</b>: {hadText(heat, area)}
              </span>
            </li>
          ),
        )}
      </ul>
      {bare.length === 0 ? null : (
        <p class="quiet">{hadWords.nothing(bare.map((area) => nameOf(heat, area)).join('; '))}</p>
      )}
    </section>
  );
}

const lapsOf = ({ areas }: PieceHeat, { id }: Area): number => areas[id]?.laps ?? 0;

const nameOf = ({ piece: { sides } }: PieceHeat, { name, side }: Area): string =>
  sides.length < 2 ? name : `${name}, ${sides[side - 1] ?? ''}`;

function hadText({ areas }: PieceHeat, { id }: Area): string {
  const had = areas[id];
  if (had === undefined) return '';
  const { reached, presumed, peakC, guardBandK, contactMs, inBandMs, laps, lastAt } = had;
  const parts = [
    reached === null ? hadWords.noStage : hadWords.covered(reached.name),
    presumed ? hadWords.presumed : '',
    peakC === null ? '' : hadWords.peak(temperature(peakC), difference(guardBandK)),
    hadWords.contact(formatDuration(contactMs), formatDuration(inBandMs)),
    hadWords.laps(Math.round(laps)),
    lastAt === null ? '' : hadWords.last(sessionTimes('').dateTime(Date.parse(lastAt))),
  ];
  return parts.filter((part) => part !== '').join(', ');
}
