import { useEffect, useId, useState } from 'preact/hooks';
import type { Cement } from '../../shared/cure/cement.ts';
import { LONGEST_AGO_S } from '../../shared/messages/cure.ts';
import type { Piece, SideId } from '../../shared/piece/piece.ts';
import { startCoatWords as words } from '../../shared/words/coats.ts';
import { CementDoubts } from '../coats/cement-doubts.tsx';
import { cementsByUse, lastCement } from '../coats/cements-by-use.ts';
import { type Chosen, noneChosen, placesOf, placesText, toggleArea, toggleSide } from '../coats/places.ts';
import { startCoats } from '../coats/say.ts';
import { part } from '../frame/nav-view.ts';
import { Opening } from '../parts/opening.tsx';
import { Target } from '../parts/target.tsx';
import { recentPieces, shownPiece } from '../piece/bench.ts';
import { followPieces, pieceOf, pieces } from '../piece/pieces.ts';
import { isFine, Sheet } from '../piece/sheet.tsx';
import { Field, Pick } from '../setup/fields/field.tsx';
import { readFigure } from '../setup/fields/number.ts';

const MOST_MINUTES = LONGEST_AGO_S / 60;

/** Which cement, on which piece, where, and when: each place gets a clock of its own. */
export function StartCoats() {
  useEffect(followPieces, []);
  const [pickedCement, pickCement] = useState<string | null>(null);
  const [pickedPiece, pickPiece] = useState<string | null>(null);
  const [chosen, choose] = useState(noneChosen);
  const cements = cementsByUse.value ?? [];
  const cement =
    cements.find(({ id }) => id === (pickedCement ?? lastCement.value?.id)) ??
    (cements.length === 1 ? cements[0] : undefined);
  const piece = piecesNow().find(({ id }) => id === (pickedPiece ?? (part.value || shownPiece.value)));
  return (
    <section class="start-coats" aria-labelledby="start-coats-title" data-testid="start-coats">
      <h2 id="start-coats-title" class="bench-title">
        {words.title}
      </h2>
      <CementPick cements={cements} chosen={cement?.id ?? null} onPick={pickCement} />
      <PiecePick
        chosen={piece?.id ?? null}
        onPick={(id) => {
          pickPiece(id);
          choose(noneChosen);
        }}
      />
      {piece === undefined ? null : <Where piece={piece} chosen={chosen} onChoose={choose} />}
      {piece === undefined || cement === undefined ? null : (
        <WhenAndStart piece={piece} cement={cement} chosen={chosen} onDone={() => choose(noneChosen)} />
      )}
    </section>
  );
}

/** Those worked last first; none that was put away. */
function piecesNow(): readonly Piece[] {
  const recent = recentPieces.value.flatMap((id) => pieceOf(id) ?? []);
  const others = (pieces.value ?? []).filter((piece) => !recent.includes(piece));
  return [...recent, ...others.toSorted((a, b) => a.name.localeCompare(b.name))].filter(
    ({ archived }) => !archived,
  );
}

interface CementPickProps {
  readonly cements: readonly Cement[];
  readonly chosen: string | null;
  readonly onPick: (id: string) => void;
}

function CementPick({ cements, chosen, onPick }: CementPickProps) {
  if (cementsByUse.value === null) return null;
  if (cements.length === 0)
    return (
      <p>
        {words.noCement}{' '}
        <a class="way" href="#setup/cements">
          {words.toCements}
        </a>
      </p>
    );
  return (
    <Pick
      label={words.cement}
      options={cements.map((cement) => [cement.id, <CementName key={cement.id} cement={cement} />] as const)}
      chosen={chosen}
      onPick={onPick}
    />
  );
}

const CementName = ({ cement }: { readonly cement: Cement }) => (
  <>
    {cement.name}
    <CementDoubts cement={cement} />
  </>
);

const options = (some: readonly Piece[]) => some.map(({ id, name }) => [id, name] as const);

/** More pieces than these are a press away. */
const MOST_PIECES = 6;

function PiecePick({
  chosen,
  onPick,
}: {
  readonly chosen: string | null;
  readonly onPick: (id: string) => void;
}) {
  const all = piecesNow();
  if (pieces.value === null) return null;
  if (all.length === 0)
    return (
      <p>
        {words.noPiece}{' '}
        <a class="way" href="#piece/new">
          {words.toPieces}
        </a>
      </p>
    );
  // The one that is chosen is always in sight.
  const shown = all.filter(({ id }, i) => i < MOST_PIECES || id === chosen);
  const more = all.filter((piece) => !shown.includes(piece));
  return (
    <>
      <Pick label={words.piece} options={options(shown)} chosen={chosen} onPick={onPick} />
      {more.length === 0 ? null : (
        <Opening summary={words.morePieces(more.length)}>
          {() => <Pick label={words.piece} options={options(more)} chosen={chosen} onPick={onPick} />}
        </Opening>
      )}
    </>
  );
}

interface WhereProps {
  readonly piece: Piece;
  readonly chosen: Chosen;
  readonly onChoose: (chosen: Chosen) => void;
}

/** Its faces, to tap areas on, each with the whole of it as one target. */
const Where = ({ piece, chosen, onChoose }: WhereProps) => (
  <div class="start-sheet" role="group" aria-label={words.where}>
    <p class="pick-label">{words.where}</p>
    <div class={isFine(piece) ? 'facing facing--fine' : 'facing'}>
      {piece.sides.map((name, i) => {
        const side: SideId = i === 0 ? 1 : 2;
        return (
          <div key={side} class="face">
            <h3 class="face-name">{name}</h3>
            <Sheet
              piece={piece}
              side={side}
              schedule={null}
              heat={null}
              here={null}
              next={null}
              onArea={(area) => onChoose(toggleArea(chosen, area))}
              chosen={chosen.areas}
            />
            <Target
              chosen={chosen.sides.has(side)}
              label={words.wholeSideOf(name)}
              onPress={() => onChoose(toggleSide(chosen, side, piece))}
            >
              {words.wholeSide}
            </Target>
          </div>
        );
      })}
    </div>
  </div>
);

interface WhenAndStartProps {
  readonly piece: Piece;
  readonly cement: Cement;
  readonly chosen: Chosen;
  readonly onDone: () => void;
}

type When = 'now' | 'ago';
const whens: readonly (readonly [When, string])[] = [
  ['now', words.justNow],
  ['ago', words.ago],
];

function WhenAndStart({ piece, cement, chosen, onDone }: WhenAndStartProps) {
  const [when, setWhen] = useState<When>('now');
  const [minutes, setMinutes] = useState('');
  const [tried, setTried] = useState(false);
  const [refused, setRefused] = useState('');
  const id = useId();
  const places = placesOf(piece, chosen);
  const agoMin = when === 'now' ? 0 : readFigure(minutes, words.agoSign).value;
  const isRight = agoMin !== null && agoMin >= 0 && agoMin <= MOST_MINUTES;
  const where = placesText(piece, places);
  const start = (): void => {
    setTried(true);
    if (!isRight || places.length === 0) return;
    const why = startCoats({ cement, piece, places, agoS: Math.round(agoMin * 60) });
    setRefused(why);
    if (why !== '') return;
    setTried(false);
    setWhen('now');
    setMinutes('');
    onDone();
  };
  return (
    <>
      <Pick label={words.when} options={whens} chosen={when} onPick={setWhen} />
      {when === 'now' ? null : (
        <Field
          id={id}
          number
          label={words.agoField}
          sign={words.agoSign}
          text={minutes}
          onText={setMinutes}
          error={tried && !isRight ? words.agoWrong(MOST_MINUTES) : ''}
        />
      )}
      <p class="start-summary" data-testid="start-summary">
        {places.length === 0
          ? words.choose
          : words.summary(
              cement.name,
              where,
              when === 'now' ? words.justNow : words.minutesAgo(minutes.trim() || words.noMinutes),
            )}
      </p>
      <Target main disabled={places.length === 0} onPress={start} testId="start-clock">
        {places.length > 1 ? words.startMany(places.length) : words.start}
      </Target>
      <p role="status" data-testid="start-refused">
        {refused}
      </p>
    </>
  );
}
