import { useEffect, useId, useState } from 'preact/hooks';
import type { VisitAnswer } from '../../shared/messages/piece.ts';
import { type Piece, type SideId, sideIds } from '../../shared/piece/piece.ts';
import { formatDuration } from '../../shared/units/time.ts';
import { pieceWords, visitWords, workCommandWords } from '../../shared/words/pieces.ts';
import { viewOnly } from '../link/daemon.ts';
import { sessionTimes } from '../parts/session-times.ts';
import { Target } from '../parts/target.tsx';
import { temperature } from '../parts/unit.ts';
import { Pick } from '../setup/fields/field.tsx';
import { AreasHad } from './areas-had.tsx';
import { PersonForm } from './person-form.tsx';
import { followHeat, heats, pieceOf } from './pieces.ts';
import { note } from './say.ts';

/** What the piece has had, visit by visit, and what nobody assigned; each can be put right by a named person. */
export function VisitsPage({ id }: { readonly id: string }) {
  useEffect(() => followHeat(id), [id]);
  const heat = heats.value[id];
  const piece = heat?.piece ?? pieceOf(id);
  if (piece === null) return <p role="status">{pieceWords.noSuch}</p>;
  return (
    <div class="visits" data-testid="visits">
      <h2 class="piece-title">
        {piece.name}: {visitWords.title}
      </h2>
      <a class="way" href={`#piece/${encodeURIComponent(id)}`}>
        {pieceWords.backTo(piece.name)}
      </a>
      {heat === undefined ? (
        <p role="status">{pieceWords.reading}</p>
      ) : (
        <>
          <AreasHad heat={heat} />
          <VisitList title={visitWords.unassigned} piece={piece} visits={heat.unassigned} />
          <VisitList title={visitWords.title} piece={piece} visits={heat.visits} />
        </>
      )}
    </div>
  );
}

interface VisitListProps {
  readonly title: string;
  readonly piece: Piece;
  readonly visits: readonly VisitAnswer[];
}

const VisitList = ({ title, piece, visits }: VisitListProps) => (
  <section>
    <h3>{title}</h3>
    {visits.length === 0 ? <p class="quiet">{visitWords.none}</p> : null}
    <ul class="visit-list">
      {visits.map((visit) => (
        <li key={`${visit.session} ${visit.n}`} data-testid="visit">
          <VisitLine piece={piece} visit={visit} />
        </li>
      ))}
    </ul>
  </section>
);

type Place = VisitAnswer['place'];

/** An area that an earlier map had is called by its id. */
function placeText(piece: Piece, place: Place): string {
  if (place === null) return visitWords.nowhere;
  if (place.piece !== piece.id) return pieceOf(place.piece)?.name ?? visitWords.otherPiece;
  const area =
    place.area === null
      ? visitWords.wholeSide
      : (piece.areas.find((one) => one.id === place.area)?.name ?? place.area);
  return `${piece.sides[place.side - 1] ?? place.side}, ${area}`;
}

function VisitLine({ piece, visit }: { readonly piece: Piece; readonly visit: VisitAnswer }) {
  const [asked, setAsked] = useState(false);
  const times = sessionTimes('');
  const name = visitWords.line(
    times.dateTime(Date.parse(visit.at)),
    formatDuration(visit.lengthMs),
    visit.iron,
  );
  const { corrected } = visit;
  const facts = [
    placeText(piece, corrected === null ? visit.place : corrected.place),
    visit.reached?.name ?? '',
    visit.peakC === null ? '' : temperature(visit.peakC),
    visit.lapDone ? visitWords.lap : '',
    visit.presumed ? visitWords.presumed : '',
    visit.simulated ? visitWords.simulated : '',
  ];
  return (
    <>
      <p>
        <b>{name}</b>: {facts.filter((fact) => fact !== '').join(', ')}
      </p>
      {corrected === null ? null : (
        <p class="quiet">
          {visitWords.was(placeText(piece, visit.place))},{' '}
          {visitWords.correctedBy(corrected.by, times.dateTime(Date.parse(corrected.at)))}
        </p>
      )}
      {viewOnly.value ? null : asked ? (
        <Correction piece={piece} visit={visit} name={name} onDone={() => setAsked(false)} />
      ) : (
        <Target label={visitWords.putRightOf(name)} onPress={() => setAsked(true)}>
          {visitWords.putRight}
        </Target>
      )}
    </>
  );
}

interface CorrectionProps {
  readonly piece: Piece;
  readonly visit: VisitAnswer;
  readonly name: string;
  readonly onDone: () => void;
}

const NONE = 'none';
const WHOLE = '';

/** Where it was really: kept beside what was marked. */
function Correction({ piece, visit, name, onDone }: CorrectionProps) {
  const marked = visit.corrected === null ? visit.place : visit.corrected.place;
  const own = marked?.piece === piece.id ? marked : null;
  const [side, setSide] = useState<SideId | null>(own?.side ?? 1);
  const [area, setArea] = useState(own?.area ?? WHOLE);
  const id = useId();
  const sides = sideIds
    .slice(0, piece.sides.length)
    .map((one) => [String(one), piece.sides[one - 1] ?? ''] as const);
  const areas = piece.areas.filter((one) => one.side === side);
  return (
    <div class="correction">
      <Pick
        label={visitWords.toSide}
        options={[...sides, [NONE, visitWords.onNone] as const]}
        chosen={side === null ? NONE : String(side)}
        onPick={(picked) => {
          setSide(sideIds.find((one) => String(one) === picked) ?? null);
          setArea(WHOLE);
        }}
      />
      {side === null ? null : (
        <div class="field">
          <label for={id}>{visitWords.toArea}</label>
          <select id={id} value={area} onChange={(event) => setArea(event.currentTarget.value)}>
            <option value={WHOLE}>{visitWords.wholeSide}</option>
            {areas.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </div>
      )}
      <p class="quiet">{visitWords.beside}</p>
      <PersonForm
        label={visitWords.putRightOf(name)}
        send={visitWords.send}
        onNever={onDone}
        onSend={(by) => {
          const to = side === null ? null : { side, area: area === WHOLE ? null : area };
          const { session, n } = visit;
          note(piece.id, { kind: 'corrected', session, visit: n, to, by }, workCommandWords.corrected(by));
          onDone();
        }}
      />
    </div>
  );
}
