import { useSignal } from '@preact/signals';
import type { ChartPoint } from '../../../../shared/iron/dial/chart.ts';
import type { IronDial } from '../../../../shared/messages/dial.ts';
import { dialFigureWords, dialSetupWords } from '../../../../shared/words/dial.ts';
import { viewOnly } from '../../../link/daemon.ts';
import { dayAndTime } from '../../../parts/day.ts';
import { Target } from '../../../parts/target.tsx';
import { figure, temperature } from '../../../parts/unit.ts';
import { changeDial } from './ask-dial.ts';

/** The marks that are charted, the coldest first; each can be taken out, by two touches. */
export const DialPoints = ({ dial }: { readonly dial: IronDial }) => (
  <ul class="dial-points">
    {dial.chart.points.map((point) => (
      <li key={point.mark} data-testid="dial-point" data-mark={point.mark}>
        <Point point={point} />
        {viewOnly.value ? null : <TakeOut iron={dial.iron} mark={point.mark} />}
      </li>
    ))}
  </ul>
);

function Point({ point }: { readonly point: ChartPoint }) {
  const { mark, kind, meanC, peakC, troughC, cycles, at } = point;
  const range =
    peakC === null || troughC === null
      ? dialSetupWords.noRange
      : dialSetupWords.range(figure(troughC), temperature(peakC));
  const seen = [dialSetupWords[kind], cycles === 0 ? '' : dialFigureWords.cycles(cycles), dayAndTime(at)];
  return (
    <p>
      <strong>{dialSetupWords.mark(String(mark))}</strong>
      <span>
        {dialSetupWords.mean(temperature(meanC))}, {range}
      </span>
      <span class="quiet">{seen.filter((one) => one !== '').join(', ')}</span>
    </p>
  );
}

function TakeOut({ iron, mark }: { readonly iron: string; readonly mark: number }) {
  const asked = useSignal(false);
  const name = String(mark);
  if (!asked.value) {
    return (
      <Target label={dialSetupWords.takeOutOf(name)} onPress={() => (asked.value = true)}>
        {dialSetupWords.takeOut}
      </Target>
    );
  }
  return (
    <div class="choice-row">
      <Target onPress={() => void changeDial(iron, 'removal', { mark }, dialSetupWords.takenOut(name))}>
        {dialSetupWords.reallyTakeOut(name)}
      </Target>
      <Target onPress={() => (asked.value = false)}>{dialSetupWords.keepIt}</Target>
    </div>
  );
}
