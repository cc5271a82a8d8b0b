import { useRef } from 'preact/hooks';
import type { HeatSchedule } from '../../shared/heat/schedule.ts';
import type { PieceHeat } from '../../shared/messages/piece.ts';
import type { Place } from '../../shared/piece/cells.ts';
import { type Area, isBonded, type PieceDraft, type SideId } from '../../shared/piece/piece.ts';
import { pieceCoatWords } from '../../shared/words/coats.ts';
import { areaWords } from '../../shared/words/pieces.ts';
import { Hatch } from '../parts/hatch.tsx';
import { isPlainKey } from '../parts/plain-key.ts';
import { type AreaHeatAnswer, areaText, type WetMark } from './area-text.ts';
import { levelHatch, levelOf } from './levels.ts';
import { type Drawn, neighbour, type Tracks, template, tracksOf, uncovered } from './tracks.ts';
import './sheet.css';

interface SheetProps {
  readonly piece: PieceDraft;
  readonly side: SideId;
  /** Null: no stages are drawn. */
  readonly schedule: HeatSchedule | null;
  /** Null: not read yet, and nothing is hatched. */
  readonly heat: PieceHeat | null;
  readonly here: string | null;
  readonly next: string | null;
  /** Null: taps mark nothing. */
  readonly onArea: ((area: Area) => void) | null;
  /** Where areas are chosen: which are. */
  readonly chosen?: ReadonlySet<string>;
  /** Areas with wet cement, by their ids. */
  readonly wet?: ReadonlyMap<string, WetMark>;
}

/** Drawings with no more lines than these; one with more is drawn fine. */
const COARSE = 6;
const MIDDLING = 10;

/** How fine the grid of a piece is drawn. */
function fineness({ rows, columns }: Tracks): 'coarse' | 'middling' | 'fine' {
  const most = Math.max(rows.length, columns.length);
  return most <= COARSE ? 'coarse' : most <= MIDDLING ? 'middling' : 'fine';
}

/** Whether a piece has so many areas that its sides need room. */
export const isFine = (piece: PieceDraft): boolean => fineness(tracksOf(piece, piece.areas)) === 'fine';

/** One face of a piece, each area drawn in its place with the stage that it has had. */
export function Sheet({ piece, side, schedule, heat, here, next, onArea, chosen, wet }: SheetProps) {
  const place = useRef<HTMLDivElement>(null);
  const areas = piece.areas.filter((area) => area.side === side);
  const tracks = tracksOf(piece, areas);
  const tapes = areas.filter((area) => area.kind === 'tape');
  const clear = (area: Area): Place => (area.kind === 'tape' ? area : uncovered(area, tapes));
  const first = areas.find((area) => area.id === here) ?? areas.find((area) => area.id === next) ?? areas[0];
  return (
    <div class="sheet-room">
      {/* biome-ignore lint/a11y/useSemanticElements: areas of a face are no fields of a form */}
      <div
        ref={place}
        class={`sheet sheet--${fineness(tracks)}`}
        role="group"
        aria-label={piece.sides[side - 1]}
        style={templates(tracks)}
        onKeyDown={(event) => moveFocus(event, place.current, areas)}
        data-testid={`sheet-${side}`}
      >
        {areas.toSorted(tapesLast).map((area) => (
          <AreaCell
            key={area.id}
            area={area}
            heat={heat?.areas[area.id]}
            level={schedule === null ? 0 : levelOf(heat?.areas[area.id]?.reached ?? null, schedule)}
            isChosen={chosen?.has(area.id)}
            wet={wet?.get(area.id)}
            isHere={area.id === here}
            isNext={area.id === next}
            isFirst={area === first}
            look={lookOf(clear(area), piece)}
            place={tracks.place(area)}
            wordsAt={clear(area) === area ? null : tracks.place(clear(area))}
            onArea={onArea}
          />
        ))}
      </div>
    </div>
  );
}

const tapesLast = (a: Area, b: Area): number => Number(a.kind === 'tape') - Number(b.kind === 'tape');

const templates = ({ rows, columns }: Tracks) => ({
  gridTemplateRows: template(rows),
  gridTemplateColumns: template(columns),
});

/** How much there is room to write: all, only across it, or a number. */
type Look = 'wide' | 'tall' | 'small';

function lookOf({ rows, columns }: Place, piece: PieceDraft): Look {
  const across = columns / piece.columns;
  const down = rows / piece.rows;
  if (down >= 0.5 && across <= 0.15) return 'tall';
  return across >= 0.12 ? 'wide' : 'small';
}

interface AreaCellProps {
  readonly area: Area;
  readonly heat: AreaHeatAnswer | undefined;
  readonly level: number;
  readonly isHere: boolean;
  readonly isNext: boolean;
  /** Left out: nothing can be chosen. */
  readonly isChosen: boolean | undefined;
  readonly wet: WetMark | undefined;
  /** Where Tab leads to on this side. */
  readonly isFirst: boolean;
  readonly look: Look;
  readonly place: Drawn;
  /** Where its words stand clear of the tapes that lie over it; null: in its middle. */
  readonly wordsAt: Drawn | null;
  readonly onArea: ((area: Area) => void) | null;
}

function AreaCell(props: AreaCellProps) {
  const { area, heat, level, isHere, isNext, isFirst, look, isChosen, wet, place, wordsAt, onArea } = props;
  const hatch = wet === undefined ? levelHatch(level) : 'wet';
  const isPresumed = heat?.presumed === true && level > 0;
  const classes = [
    'area',
    `area--${area.kind}`,
    `area--${look}`,
    isBonded(area) ? 'area--bonded' : '',
    isPresumed ? 'area--presumed' : '',
    isChosen === true ? 'area--chosen' : '',
    isHere ? 'area--here' : '',
    isNext ? 'area--next' : '',
  ];
  const words = (
    <span class="area-words">
      <AreaFlag isHere={isHere} isNext={isNext} isShort={look === 'small'} />{' '}
      {wet === undefined || (look === 'small' && (isHere || isNext)) ? null : (
        <strong class="area-wet">{look === 'small' ? pieceCoatWords.wetShort : wet.short}</strong>
      )}{' '}
      {look === 'small' ? null : <span class="area-name">{area.name}</span>}{' '}
      {look === 'small' && (isHere || isNext || wet !== undefined) ? null : (
        <AreaStage look={look} level={level} name={heat?.reached?.name ?? ''} isPresumed={isPresumed} />
      )}
    </span>
  );
  return (
    <>
      <button
        type="button"
        class={classes.filter((one) => one !== '').join(' ')}
        style={place}
        tabIndex={isFirst ? 0 : -1}
        aria-label={areaText(area, heat, level, { isHere, isNext, wet })}
        aria-pressed={isChosen}
        aria-current={isHere ? 'location' : undefined}
        aria-disabled={onArea === null}
        data-area={area.id}
        data-level={level}
        data-wet={wet !== undefined}
        onClick={() => onArea?.(area)}
      >
        {hatch === null ? null : <Hatch name={hatch} />}
        {wordsAt === null ? words : null}
      </button>
      {wordsAt === null ? null : (
        <span
          class={`area-over area--${look} ${isPresumed ? 'area--presumed' : ''}`}
          style={wordsAt}
          aria-hidden="true"
        >
          {words}
        </span>
      )}
    </>
  );
}

interface AreaFlagProps {
  readonly isHere: boolean;
  readonly isNext: boolean;
  readonly isShort: boolean;
}

/** Where the iron is, and where it is proposed to go. */
function AreaFlag({ isHere, isNext, isShort }: AreaFlagProps) {
  if (isHere) return <strong class="area-here">{isShort ? areaWords.hereShort : areaWords.here}</strong>;
  if (isNext) return <strong class="area-next">{isShort ? areaWords.nextShort : areaWords.next}</strong>;
  return null;
}

interface AreaStageProps {
  readonly look: Look;
  readonly level: number;
  readonly name: string;
  readonly isPresumed: boolean;
}

function AreaStage({ look, level, name, isPresumed }: AreaStageProps) {
  if (level === 0) return null;
  if (look === 'small')
    return (
      <span class="area-stage">
        {level}
        {isPresumed ? areaWords.presumedShort : ''}
      </span>
    );
  return (
    <span class="area-stage">
      {level}
      <span class="area-stage-name"> {name}</span>
      {isPresumed ? ` ${areaWords.presumedShort}` : ''}
    </span>
  );
}

const moves: Readonly<Record<string, readonly ['row' | 'column', 1 | -1]>> = {
  ArrowUp: ['row', -1],
  ArrowDown: ['row', 1],
  ArrowLeft: ['column', -1],
  ArrowRight: ['column', 1],
};

/** Goes on to the area in the arrow's direction; the page doesn't scroll meanwhile. */
function moveFocus(event: KeyboardEvent, place: HTMLElement | null, areas: readonly Area[]): void {
  const move = moves[event.key];
  if (move === undefined || !isPlainKey(event) || !(event.target instanceof HTMLElement)) return;
  event.preventDefault();
  const from = areas.find((area) => area.id === (event.target as HTMLElement).dataset['area']);
  const to = from === undefined ? null : neighbour(from, areas, ...move);
  if (to !== null) place?.querySelector<HTMLElement>(`[data-area="${to.id}"]`)?.focus();
}
