import { computed, effect, signal } from '@preact/signals';
import { deviceOf } from '../../shared/thermometer/sample.ts';
import { ironSetupWords, unitQuestionWords } from '../../shared/words/setup.ts';
import { isLive, live, viewOnly } from '../link/daemon.ts';
import { keep } from '../parts/browser.ts';
import { Note } from '../parts/note.tsx';
import { Target } from '../parts/target.tsx';
import { changeProbe } from './changing.ts';
import { devicesSettled, probes, readSettings } from './daemon-settings.ts';
import { type UnitQuestion, unitQuestion } from './unit-question.ts';

const NAME = 'units-right';

/** Probes whose unit the user has said is right: `id unit`, one a line. */
const right = signal<readonly string[]>((keep.read(NAME) ?? '').split('\n'));

const mark = ({ probe: { id, unit } }: UnitQuestion): string => `${id} ${unit}`;

function sayRight(question: UnitQuestion): void {
  right.value = [...right.peek(), mark(question)];
  keep.write(NAME, right.value.join('\n'));
}

/** The hottest that each probe has been seen, degC. */
const hottest = signal<Readonly<Record<string, number>>>({});

/** A reading in another unit than before begins anew. */
const forget = (id: string): void => {
  const { [id]: _forgotten, ...others } = hottest.peek();
  hottest.value = others;
};

const none: readonly UnitQuestion[] = [];

const questions = computed(() => {
  const now = live.value;
  if (now === null || !isLive.value) return none;
  const asked = now.probes.flatMap((probe) => {
    const settings = probes.value?.find((one) => one.id === probe.id);
    const iron = now.situation.irons.find((one) => one.id === probe.iron);
    const device = now.situation.devices.find((one) => one.id === deviceOf(probe.id)) ?? null;
    if (settings === undefined || iron === undefined || probe.simulated) return [];
    const question = unitQuestion({
      settings,
      now: probe,
      iron,
      device,
      form: devicesSettled.value?.find((one) => one.id === device?.id)?.form,
      hottestC: hottest.value[probe.id] ?? 0,
    });
    return question === null || right.value.includes(mark(question)) ? [] : [question];
  });
  return asked.length === 0 ? none : asked;
});

/** Watches what is read, and reads the settings once, so that a wrong unit is asked about wherever the user is. */
export function watchUnits(): void {
  effect(() => {
    const seen = hottest.peek();
    const hotter = (live.value?.probes ?? []).filter(
      ({ id, plateC }) => plateC !== null && plateC > (seen[id] ?? Number.NEGATIVE_INFINITY) + 1,
    );
    if (hotter.length > 0)
      hottest.value = { ...seen, ...Object.fromEntries(hotter.map(({ id, plateC }) => [id, plateC ?? 0])) };
  });
  const ids = computed(() => (isLive.value ? (live.value?.probes ?? []).map(({ id }) => id).join('\n') : ''));
  effect(() => {
    if (ids.value !== '') void readSettings();
  });
}

/** Asks about the unit of each probe whose number can hardly be right, with one tap to settle it. */
export const UnitQuestions = () => (
  <>
    {questions.value.map((question) => (
      <UnitNote key={question.probe.id} question={question} />
    ))}
  </>
);

function UnitNote({ question }: { readonly question: UnitQuestion }) {
  const { probe, number, instead } = question;
  const change = (): void => {
    forget(probe.id);
    void changeProbe(probe, { unit: instead }, ironSetupWords.countsIn(ironSetupWords.units[instead]));
  };
  return (
    <Note hatch="act-soon" testId="unit-question">
      <span>
        {probe.unit === 'degC'
          ? unitQuestionWords.tooWarm(probe.label, number)
          : unitQuestionWords.tooCold(probe.label, number)}
      </span>
      {viewOnly.value ? null : (
        <div class="choice-row">
          <Target main onPress={change}>
            {instead === 'degF' ? unitQuestionWords.isF : unitQuestionWords.isC}
          </Target>
          <Target onPress={() => sayRight(question)}>
            {unitQuestionWords.right(number, ironSetupWords.units[probe.unit])}
          </Target>
        </div>
      )}
    </Note>
  );
}
