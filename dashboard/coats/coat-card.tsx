import type { CoatAnswer, CoatStageAnswer } from '../../shared/messages/cure.ts';
import { coatFoundWords, coatStateWords, coatWords, dryingStageWords } from '../../shared/words/coats.ts';
import { cements, isExpired } from '../cure/cements.ts';
import { outbox } from '../link/commands.ts';
import { viewOnly } from '../link/daemon.ts';
import { clockTime } from '../parts/clock-time.ts';
import { isoDay } from '../parts/day.ts';
import { Hatch, type HatchName } from '../parts/hatch.tsx';
import { useSettled } from '../parts/settled.ts';
import { Target } from '../parts/target.tsx';
import {
  type CoatLook,
  lookOf,
  putOnText,
  rangeOf,
  stageNow,
  stageText,
  tackyText,
  whyText,
} from './coat-text.ts';
import { noteTap } from './order.ts';
import { clockRange, waitText } from './range-text.ts';
import { checkCoat, endCoat, takeBackTap } from './say.ts';
import { tapOf } from './taps.ts';
import './coats.css';

/** How a coat is hatched; null: nothing is. */
const hatchOf: Readonly<Record<CoatLook, HatchName | null>> = {
  drying: 'wet',
  'may-be-ready': 'coat-may-be-ready',
  due: 'coat-due',
  stands: 'coat-stands',
  dry: null,
};

interface CoatProps {
  readonly coat: CoatAnswer;
  /** Now, by the daemon's clock. */
  readonly nowMs: number;
}

interface CardProps extends CoatProps {
  /** Its place in the list. */
  readonly place: number;
}

/** Lets a press do something where it was meant for what stands here now. */
type Press = (act: () => void) => () => void;

/** One coat: where, how it stands, when it may be ready and why that is so wide, and what one finds. */
export function CoatCard({ coat, nowMs, place }: CardProps) {
  const counts = useSettled(`${place} ${coat.stage} ${coat.lastTap}`);
  const press: Press = (act) => () => {
    noteTap();
    if (counts()) act();
  };
  const look = lookOf(coat);
  const hatch = hatchOf[look];
  const stage = stageNow(coat);
  return (
    <li class={`coat coat--${look}`} data-testid="coat" data-coat={coat.id} data-look={look}>
      <span class="coat-edge">{hatch === null ? null : <Hatch name={hatch} />}</span>
      <div class="coat-text">
        <div class="coat-name">
          <h3 class="coat-place">{coat.placeName}</h3>
          <p class="coat-state">{coatStateWords[look]}</p>
        </div>
        {stage === null ? null : <Wait stage={stage} nowMs={nowMs} />}
        <Stages coat={coat} nowMs={nowMs} />
        <p class="quiet">{whyText(coat)}</p>
        <PutOn coat={coat} nowMs={nowMs} />
      </div>
      {viewOnly.value ? null : (
        <div class="coat-said">
          {stage === null ? null : <Answers coat={coat} stage={stage} press={press} />}
          <Endings coat={coat} press={press} />
        </div>
      )}
    </li>
  );
}

/** The stage that it dries towards, and when it may come to it. */
function Wait({ stage, nowMs }: { readonly stage: CoatStageAnswer; readonly nowMs: number }) {
  return (
    <>
      <p class="coat-wait" data-testid="coat-wait">
        {coatWords.towards(dryingStageWords[stage.kind])} <b>{waitText(rangeOf(stage), nowMs)}</b>
      </p>
      <p class="coat-clock">{clockText(stage, nowMs)}</p>
    </>
  );
}

/** As times of day, and what was said of it. */
function clockText(stage: CoatStageAnswer, nowMs: number): string {
  const parts = [clockRange(rangeOf(stage), nowMs, clockTime), tackyText(stage, nowMs, clockTime)];
  return parts.filter((part) => part !== '').join(coatWords.and);
}

interface AnswersProps {
  readonly coat: CoatAnswer;
  readonly stage: CoatStageAnswer;
  readonly press: Press;
}

const Answers = ({ coat, stage, press }: AnswersProps) => (
  <div class="coat-answers" role="group" aria-label={coatWords.answers(coat.placeName)}>
    <Target
      label={coatWords.dryOf(coatFoundWords.dry, dryingStageWords[stage.kind], coat.placeName)}
      onPress={press(() => checkCoat(coat, stage.kind, 'dry'))}
    >
      {coatFoundWords.dry} <small>{dryingStageWords[stage.kind]}</small>
    </Target>
    <Target
      label={coatWords.of(coatFoundWords.tacky, coat.placeName)}
      onPress={press(() => checkCoat(coat, stage.kind, 'tacky'))}
    >
      {coatFoundWords.tacky}
    </Target>
  </div>
);

const PutOn = ({ coat, nowMs }: CoatProps) => (
  <p class="quiet">
    {putOnText(coat, nowMs, clockTime)}{' '}
    {coat.cement.unconfirmed ? (
      <span class="tag" title={coatWords.unconfirmedMeans}>
        {coatWords.unconfirmed}
      </span>
    ) : null}
    {wasExpired(coat) ? (
      <span class="tag" title={coatWords.expiredMeans}>
        {coatWords.expired}
      </span>
    ) : null}
    {coat.fire === null ? null : (
      <> {coatWords.fire[coat.fire.answer](clockTime(Date.parse(coat.fire.until), nowMs))}</>
    )}
  </p>
);

/** Whether its cement was past its day when it was put on, by what stands of the cement now. */
function wasExpired({ cement, startedAt }: CoatAnswer): boolean {
  const known = cements.value?.find(({ id }) => id === cement.id);
  return known !== undefined && isExpired(known, isoDay(Date.parse(startedAt)));
}

/** Its other stages, one after the other: those that were said dry, and those that come later. */
const Stages = ({ coat, nowMs }: CoatProps) => (
  <ol class="coat-stages" aria-label={coatWords.stages}>
    {coat.stages.map((stage) =>
      stage.kind === coat.stage ? null : (
        <li key={stage.kind}>
          <b>{dryingStageWords[stage.kind]}</b> {stageText(stage, nowMs, clockTime)}
        </li>
      ),
    )}
  </ol>
);

/** They keep their places: nothing else may come under a finger. */
function Endings({ coat, press }: Omit<AnswersProps, 'stage'>) {
  const tap = tapOf(coat, outbox.value.waiting);
  return (
    <div class="coat-endings">
      <Target
        disabled={tap === null}
        label={coatWords.takeBackLastOf(coat.placeName)}
        onPress={press(() => (tap === null ? undefined : takeBackTap(coat, tap)))}
      >
        {coatWords.takeBack}
      </Target>
      <Target
        label={coatWords.of(coatWords.mistake, coat.placeName)}
        onPress={press(() => endCoat(coat, 'mistake'))}
      >
        {coatWords.mistake}
      </Target>
      <Target label={coatWords.doneOf(coat.placeName)} onPress={press(() => endCoat(coat, 'done'))}>
        {coatWords.done} <small>{coatWords.doneMeans}</small>
      </Target>
    </div>
  );
}
