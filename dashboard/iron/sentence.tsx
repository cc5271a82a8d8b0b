import type { IronLive, ProbeLive, Standing } from '../../shared/messages/live.ts';
import type { AtLive } from '../../shared/messages/piece.ts';
import { whereWords } from '../../shared/words/pieces.ts';
import { ironWords, phaseWords, placeWords, standingWords, trendWords } from '../../shared/words/standing.ts';
import { momentText } from './moments/moment-text.ts';
import type { Plate } from './plate.ts';

/** Where a plate stands, in words; of several stages with one band, the one that is being worked. */
export function standingText(standing: Standing, worked: string | null): string {
  if (standing.kind !== 'in-stage') return standingWords[standing.kind];
  const { stages } = standing;
  return standingWords['in-stage'](worked !== null && stages.includes(worked) ? worked : listed(stages));
}

/** "tack, initial shrink or tape smoothing": one band may serve several stages. */
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1) ?? ''}`;

export const workedStage = (iron: IronLive): string | null =>
  iron.schedule.stages.find((stage) => stage.id === iron.stageId)?.name ?? null;

/** The standing that may be shown: none but "no reading" without a live number. */
export const shownStanding = (plate: Plate): Standing =>
  plate.view.kind === 'number' && plate.probe !== null
    ? plate.probe.standing
    : { kind: 'no-reading', stages: [] };

interface SentenceProps {
  readonly iron: IronLive;
  readonly plate: Plate;
  readonly testId: string;
  /** Whether it says where the iron works; left out: yes. */
  readonly placed?: boolean;
}

/** The iron, where it stands, and which way it goes, as one sentence. */
export function Sentence({ iron, plate, testId, placed = true }: SentenceProps) {
  const where = placed ? workedPlace(iron) : '';
  if (plate.view.kind === 'apart') return <ApartSentence iron={iron} testId={testId} where={where} />;
  const standing = shownStanding(plate);
  const trend = trendOf(plate.probe, plate);
  return (
    <p class="sentence">
      {standing.kind === 'no-reading' ? `${iron.name}: ` : ironWords.is(iron.name)}
      <strong data-testid={testId} data-kind={standing.kind}>
        {standingText(standing, workedStage(iron))}
      </strong>
      {trend === null ? '' : `, ${trend}`}
      {where}.
    </p>
  );
}

interface ApartSentenceProps extends Pick<SentenceProps, 'iron' | 'testId'> {
  readonly where: string;
}

/** The standing of the last check or typed reading, said as one of back then. */
function ApartSentence({ iron, testId, where }: ApartSentenceProps) {
  const { check, typed, watched } = iron;
  const standing =
    watched === 'checked' ? check?.last?.standing : watched === 'typed' ? typed?.standing : undefined;
  return (
    <p class="sentence">
      {iron.name}:{' '}
      <strong data-testid={testId} data-kind={standing?.kind ?? 'no-reading'}>
        {standing === undefined ? '' : `${standingText(standing, workedStage(iron))}, `}
        {momentText(iron)}
      </strong>
      {where}.
    </p>
  );
}

/** Piece, side and area, as far as the user said. */
export function whereText({ pieceName, sideName, areaName, presumed }: AtLive): string {
  const where = whereWords.on(pieceName, sideName, areaName);
  return presumed ? whereWords.presumed(where) : where;
}

/** An iron on its rest is on no piece, whichever it is taken up for. */
const workedPlace = ({ at, place }: IronLive): string =>
  at === null || place === 'on-rest' ? '' : whereWords.at(whereText(at));

const trendOf = (probe: ProbeLive | null, plate: Plate): string | null =>
  plate.view.kind === 'number' && probe !== null && probe.trend !== null ? trendWords[probe.trend] : null;

/** What is being worked, where, and what the thermostat does. */
export function WorkLine({ iron }: { readonly iron: IronLive }) {
  const worked = workedStage(iron);
  const parts = [
    worked === null ? ironWords.noStageChosen : ironWords.working(worked),
    placeWords[iron.place],
    phaseWords[iron.phase],
  ];
  return <p class="work-line">{parts.filter((part) => part !== '').join(' · ')}</p>;
}
