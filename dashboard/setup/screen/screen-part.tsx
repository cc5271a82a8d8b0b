import { useEffect } from 'preact/hooks';
import { alarmId } from '../../../shared/alarm/record.ts';
import { keyWords, pageWords } from '../../../shared/words/page.ts';
import { screenSetupWords } from '../../../shared/words/setup.ts';
import { canAcknowledge } from '../../alarms/answer.ts';
import { KeyList } from '../../frame/foot.tsx';
import { alarms, viewOnly } from '../../link/daemon.ts';
import { Target } from '../../parts/target.tsx';
import { chooseUnit, unit, unitKept } from '../../parts/unit.ts';
import { SoundSettings } from '../../sound/sound-settings.tsx';
import { Pick } from '../fields/field.tsx';
import { chooseLook, look, lookKept, looks } from './look.ts';
import {
  forgetPedal,
  isLetter,
  isTeaching,
  pedal,
  pedalKept,
  pedalPresses,
  refusedKey,
  stopTeaching,
  teachPedal,
} from './pedal.ts';
import { SpokenPart } from './spoken-part.tsx';

/** What holds for this screen alone: units, light or dark, sound, keys and pedal. Kept in this browser. */
export const ScreenPart = () => (
  <>
    {unitKept.value && lookKept.value && pedalKept.value ? null : <p>{screenSetupWords.notKept}</p>}
    <div class="card">
      <Pick
        label={screenSetupWords.units}
        options={[
          ['F', `°F ${pageWords.fahrenheit}`],
          ['C', `°C ${pageWords.celsius}`],
        ]}
        chosen={unit.value}
        onPick={chooseUnit}
      />
      <Pick
        label={screenSetupWords.look}
        options={looks.map((one) => [one, screenSetupWords.looks[one]] as const)}
        chosen={look.value}
        onPick={chooseLook}
      />
    </div>
    {viewOnly.value ? null : (
      <>
        <section class="card" aria-labelledby="pedal-title">
          <h3 id="pedal-title">{screenSetupWords.pedal}</h3>
          <p>{screenSetupWords.pedalMeans}</p>
          <Pedal />
        </section>
        <section class="card" aria-labelledby="keys-title">
          <h3 id="keys-title">{keyWords.title}</h3>
          <KeyList />
        </section>
      </>
    )}
    <div class="card">
      <SoundSettings />
    </div>
    <SpokenPart />
  </>
);

const keyName = (key: string): string =>
  screenSetupWords.keyNames[key] ??
  (isLetter(key) ? key.toUpperCase() : key.replace(/(?<=[a-z])(?=[A-Z])/g, ' '));

function Pedal() {
  const key = pedal.value;
  const unseen = alarms.value
    .filter(canAcknowledge)
    .map((alarm) => `${alarmId(alarm.iron, alarm)} ${alarm.since}`)
    .join('|');
  // A lesson takes every key: one that is meant for an alarm raised meanwhile, or pressed on another page, is none for it.
  useEffect(() => stopTeaching, [unseen]);
  return (
    <>
      <p role="status" class="pedal-state" data-testid="pedal" data-key={key ?? ''}>
        {pedalText(key)}
      </p>
      {key !== null && isLetter(key) && !isTeaching.value ? (
        <p class="quiet">{screenSetupWords.inFields}</p>
      ) : null}
      <div class="choice-row">
        {isTeaching.value ? (
          <Target key="teach" onPress={stopTeaching}>
            {screenSetupWords.cancel}
          </Target>
        ) : (
          <Target key="teach" main={key === null} onPress={teachPedal}>
            {key === null ? screenSetupWords.teach : screenSetupWords.again}
          </Target>
        )}
        {key === null || isTeaching.value ? null : (
          <Target onPress={forgetPedal}>{screenSetupWords.forget}</Target>
        )}
      </div>
    </>
  );
}

function pedalText(key: string | null): string {
  if (isTeaching.value) {
    const refused = refusedKey.value;
    return refused === null ? screenSetupWords.press : screenSetupWords.taken(keyName(refused));
  }
  if (key === null) return screenSetupWords.noPedal;
  const { value: presses } = pedalPresses;
  return presses === 0 ? screenSetupWords.taught(keyName(key)) : screenSetupWords.pressed(presses);
}
