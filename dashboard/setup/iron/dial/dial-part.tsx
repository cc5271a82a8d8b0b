import type { Iron } from '../../../../shared/iron/iron.ts';
import type { IronDial } from '../../../../shared/messages/dial.ts';
import { dialSetupWords, dialWords, driftWords, markFigure } from '../../../../shared/words/dial.ts';
import { adviceText } from '../../../dial/advice-text.ts';
import { useDial } from '../../../dial/dials.ts';
import { viewOnly } from '../../../link/daemon.ts';
import { dayAndTime } from '../../../parts/day.ts';
import { Target } from '../../../parts/target.tsx';
import { difference, temperature } from '../../../parts/unit.ts';
import { schedules } from '../../daemon-settings.ts';
import { changeDial, dialSaid } from './ask-dial.ts';
import { ChartDrawn, CyclesDrawn } from './dial-drawings.tsx';
import { DialFiguresOf, DialLoadOf, DialWarmUpOf } from './dial-figures.tsx';
import { DialPoints } from './dial-points.tsx';
import { TypedPoint } from './typed-point.tsx';
import './dial.css';

/** What is charted of an iron's dial, where to set it for each stage, its drift, and readings to type. */
export function DialPart({ iron }: { readonly iron: Iron }) {
  const dial = useDial(iron.id);
  if (dial === null) return null;
  return (
    <section class="dial-part" aria-label={`${dialSetupWords.title}: ${iron.name}`} data-testid="dial-part">
      <h3>{dialSetupWords.title}</h3>
      {dial.chart.points.length === 0 ? <p>{dialSetupWords.none}</p> : <DialPoints dial={dial} />}
      <ChartDrawn dial={dial} />
      <DriftOf dial={dial} />
      {dial.chart.points.length === 0 ? null : <AdviceOf iron={iron} dial={dial} />}
      {dial.last === null ? null : <DialFiguresOf last={dial.last} />}
      <CyclesDrawn dial={dial} />
      {dial.warmUp === null ? null : <DialWarmUpOf warmUp={dial.warmUp} />}
      {dial.load === null ? null : <DialLoadOf load={dial.load} />}
      {viewOnly.value ? null : <TypedPoint iron={iron.id} />}
      <p role="status" class="dial-said" data-testid="dial-said">
        {dialSaid.value[iron.id] ?? ''}
      </p>
    </section>
  );
}

function DriftOf({ dial }: { readonly dial: IronDial }) {
  const { drift } = dial;
  if (drift === null) return null;
  const words = drift.byK > 0 ? driftWords.hotter : driftWords.colder;
  return (
    <div class="dial-drift" data-testid="dial-drift">
      <p>
        <strong>{words(difference(Math.abs(drift.byK)), dayAndTime(drift.sinceAt))}</strong>{' '}
        {driftWords.rests(drift.stretches, difference(drift.sigmaK))}
      </p>
      <p>
        {driftWords.action} {dialSetupWords.acceptMeans}
      </p>
      {viewOnly.value ? null : (
        <Target onPress={() => void changeDial(dial.iron, 'acceptance', {}, dialSetupWords.accepted)}>
          {dialSetupWords.accept}
        </Target>
      )}
    </div>
  );
}

function AdviceOf({ iron, dial }: { readonly iron: Iron; readonly dial: IronDial }) {
  const cementLimitC = schedules.value?.find((one) => one.id === iron.scheduleId)?.cementLimitC ?? null;
  const texts = dial.advice.map((one) => ({
    ...adviceText(one, cementLimitC, { temperature, difference }),
    stage: one.stage,
    says: one.advice.kind === 'set',
  }));
  return (
    <div class="dial-advice">
      <h4>{dialSetupWords.advice}</h4>
      <ul>
        {texts.map(({ stage, main, more, says }) => (
          <li key={stage}>
            {says ? '' : `${stage}: `}
            {main} {more.length === 0 ? null : <span class="quiet">{more.join(' ')}</span>}
          </li>
        ))}
      </ul>
      <p class="quiet">
        {highestText(dial)} {dialSetupWords.uncertainty(difference(dial.uncertaintyK))} {unevenText(dial)}{' '}
        {dialWords.settle}
      </p>
    </div>
  );
}

const unevenText = ({ unevennessK }: IronDial): string =>
  unevennessK > 0 ? dialSetupWords.unevenness(difference(unevennessK)) : dialSetupWords.unevennessNone;

function highestText({ highest }: IronDial): string {
  if (highest === null) return dialWords.noneUnderLimit;
  const mark = markFigure(highest.mark);
  return highest.atEnd ? dialWords.highestMeasured(mark) : dialWords.highest(mark);
}
