import { useSignal } from '@preact/signals';
import { toleranceClasses } from '../../../shared/thermocouple/tolerance.ts';
import { thermocoupleTypes } from '../../../shared/thermocouple/types.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import { readSuspicionDetail } from '../../../shared/thermometer/suspect-probe.ts';
import { MOUNTING_LIMIT_K, PAD_LIMIT_K } from '../../../shared/thermometer/uncertainty.ts';
import { alarmWords } from '../../../shared/words/alarms.ts';
import { trustSettingWords } from '../../../shared/words/calibrating.ts';
import { placeWords } from '../../../shared/words/checks.ts';
import { faultWords, suspicionText } from '../../../shared/words/faults.ts';
import { pageWords } from '../../../shared/words/page.ts';
import { fieldWords, ironSetupWords } from '../../../shared/words/setup.ts';
import { ironWords } from '../../../shared/words/standing.ts';
import { irons as watched } from '../../iron/irons.ts';
import { PlaceAsk, placeText } from '../../iron/moments/place-ask.tsx';
import { alarms, viewOnly } from '../../link/daemon.ts';
import { randomId } from '../../link/ids.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import { difference, figure, unit } from '../../parts/unit.ts';
import { CalibrationPart } from '../calibration/calibration-part.tsx';
import { calibrationsOf } from '../calibration/calibrations.ts';
import { changeProbe, moveProbe } from '../changing.ts';
import { irons } from '../daemon-settings.ts';
import { Pick } from '../fields/field.tsx';
import { KeptField, nameCheck } from '../fields/kept-field.tsx';
import { differenceTyped, readDifference } from '../fields/number.ts';
import { LagPart } from '../lag/lag-part.tsx';
import { lagOf } from '../lag/lags.ts';
import { MotionPart } from '../motion/motion-part.tsx';
import { SaidLine } from '../said-line.tsx';
import { moveTo, moveToNew, sitsOn } from './moves.ts';

/** One probe: what it reads now, where it sits, and how it is read. */
export const ProbeCard = ({ probe }: { readonly probe: ProbeSettings }) => (
  <li class={isBusy(probe.id) ? 'card card--wide' : 'card'} data-testid="probe-card" data-id={probe.id}>
    <ReadingNow id={probe.id} />
    <KeptField
      id={`probe-${probe.id}`}
      label={ironSetupWords.label}
      now={probe.label}
      check={nameCheck(60)}
      keep={(label) => changeProbe(probe, { label: label.trim() }, ironSetupWords.renamed(label.trim()))}
      disabled={viewOnly.value}
    />
    <Seat probe={probe} />
    <PlaceOf probe={probe} />
    <Pick
      label={ironSetupWords.unit}
      options={[
        ['degC', ironSetupWords.units.degC],
        ['degF', ironSetupWords.units.degF],
      ]}
      chosen={probe.unit}
      disabled={viewOnly.value}
      onPick={(picked) =>
        void changeProbe(probe, { unit: picked }, ironSetupWords.countsIn(ironSetupWords.units[picked]))
      }
    />
    <div>
      <Pick
        label={ironSetupWords.thermocouple}
        options={thermocoupleTypes.map((type) => [type, type] as const)}
        chosen={probe.thermocouple}
        disabled={viewOnly.value}
        onPick={(thermocouple) =>
          void changeProbe(probe, { thermocouple }, ironSetupWords.typeIs(thermocouple))
        }
      />
      <p class="quiet">{ironSetupWords.thermocoupleMeans}</p>
    </div>
    <ToleranceClassPick probe={probe} />
    <Mounting probe={probe} />
    <CalibrationPart probe={probe} />
    <LagPart probe={probe} />
    <MotionPart probe={probe} />
    <p class="quiet">
      <code>{probe.id}</code>
    </p>
    <SaidLine subject={`probe ${probe.id}`} />
  </li>
);

/** While something is measured step by step the card takes the whole width. */
const isBusy = (id: string): boolean =>
  calibrationsOf(id)?.procedure?.mounting !== undefined || lagOf(id)?.procedure?.mounting !== undefined;

const ToleranceClassPick = ({ probe }: { readonly probe: ProbeSettings }) => (
  <div>
    <Pick
      label={trustSettingWords.toleranceClass}
      options={toleranceClasses.map((one) => [one, trustSettingWords.classes[one]] as const)}
      chosen={probe.toleranceClass}
      disabled={viewOnly.value}
      onPick={(toleranceClass) =>
        void changeProbe(
          probe,
          { toleranceClass },
          trustSettingWords.classIs(trustSettingWords.classes[toleranceClass]),
        )
      }
    />
    <p class="quiet">{trustSettingWords.toleranceMeans}</p>
  </div>
);

const ironOf = (id: string) => watched.value.find((one) => one.plates.some((plate) => plate.id === id));
const plateOf = (id: string) => ironOf(id)?.plates.find((plate) => plate.id === id);

/** The live number, or what is missing and what to do about it. */
function ReadingNow({ id }: { readonly id: string }) {
  const of = ironOf(id);
  const shown = plateOf(id)?.view;
  const known = plateOf(id)?.probe ?? null;
  return (
    <div data-testid="reading-now">
      <p class="reading">
        <span class="unseen">{ironSetupWords.now}: </span>
        <strong>
          {shown?.kind === 'number'
            ? `${figure(shown.plateC)} °${unit.value}`
            : shown?.kind === 'fault' && known !== null
              ? faultWords[shown.fault].name
              : shown?.kind === 'apart' && shown.readC !== null
                ? `${figure(shown.readC)} °${unit.value}`
                : ironWords.noReading}
        </strong>{' '}
        {of?.iron.simulated === true ? <span class="tag">{pageWords.simulated}</span> : null}
      </p>
      {known === null ? <p>{ironSetupWords.notHeard}</p> : null}
      {shown?.kind === 'apart' ? <p>{placeWords.apart[shown.seat]}</p> : null}
      {shown?.kind === 'fault' && known !== null ? (
        <p>
          {faultWords[shown.fault].means} {faultWords[shown.fault].action}
        </p>
      ) : null}
      <Suspected id={id} />
    </div>
  );
}

/** What is suspected of it, for as long as that stands. */
function Suspected({ id }: { readonly id: string }) {
  const alarm = alarms.value.find((one) => one.kind === 'suspect-probe' && one.probe === id);
  const stands = alarm !== undefined && alarm.state !== 'normal' && alarm.state !== 'returned-unacknowledged';
  const suspicion = stands ? readSuspicionDetail(alarm.detail) : null;
  return suspicion === null ? null : (
    <Note hatch="missing" testId="probe-suspected">
      <strong>{alarmWords['suspect-probe'].title}.</strong> {suspicionText(suspicion)}
    </Note>
  );
}

/** Where it sits there; a place that was told can be told anew. */
function PlaceOf({ probe }: { readonly probe: ProbeSettings }) {
  const asking = useSignal(false);
  const of = ironOf(probe.id);
  const known = plateOf(probe.id)?.probe ?? null;
  if (of === undefined || known === null) return null;
  const notTold = known.seat === 'not-told';
  return (
    <div data-testid="place" data-seat={known.seat}>
      <p>
        <strong>{placeWords.title}:</strong> {notTold ? placeWords.notCounted : placeText(known.place)}
      </p>
      {viewOnly.value ? null : notTold || asking.value ? (
        <PlaceAsk
          probe={probe}
          ironName={of.iron.name}
          {...(notTold ? { why: placeWords.why } : {})}
          onTold={() => (asking.value = false)}
        />
      ) : (
        <Target onPress={() => (asking.value = true)}>{placeWords.change}</Target>
      )}
    </div>
  );
}

const OWN = ' own';

/** The iron that a probe sits on; another one is one tap away. */
function Seat({ probe: { id, label } }: { readonly probe: ProbeSettings }) {
  const here = sitsOn(irons.value ?? [], id);
  // A simulated probe never sits beside a real one.
  const all = (irons.value ?? []).filter((one) => one.simulated === (here?.simulated ?? false));
  const alone = here?.probes.length === 1;
  const pick = (target: string): void => {
    const name = target === OWN ? ironSetupWords.newIron(label) : all.find((one) => one.id === target)?.name;
    const move =
      target === OWN
        ? moveToNew(all, id, { id: `iron-${randomId().slice(0, 12)}`, name: name ?? '' })
        : moveTo(all, id, target);
    if (move !== null) void moveProbe(id, move, ironSetupWords.moved(label, name ?? target));
  };
  const own = alone ? [] : [[OWN, ironSetupWords.ownIron] as const];
  return (
    <div>
      <Pick
        label={ironSetupWords.sitsOn}
        options={[...all.map((one) => [one.id, one.name] as const), ...own]}
        chosen={here?.id ?? null}
        disabled={viewOnly.value}
        onPick={pick}
      />
      {alone && all.length > 1 ? <p class="quiet">{ironSetupWords.alone(here.name)}</p> : null}
    </div>
  );
}

const MOST_MOUNTING_K = 50;

const kelvins = (text: string): number | null => readDifference(text, unit.value).value;

function mountingCheck(text: string): string {
  const k = kelvins(text);
  const most = `${differenceTyped(MOST_MOUNTING_K, unit.value).text} °${unit.value}`;
  return k === null || k < 0 || k > MOST_MOUNTING_K ? fieldWords.fromTo('0', most) : '';
}

function Mounting({ probe }: { readonly probe: ProbeSettings }) {
  const onPad = plateOf(probe.id)?.probe?.seat === 'check-pad';
  const allowedK = probe.mountingK ?? (onPad ? PAD_LIMIT_K : MOUNTING_LIMIT_K);
  return (
    <KeptField
      number
      id={`mounting-${probe.id}`}
      label={ironSetupWords.mounting}
      sign={`°${unit.value}`}
      now={differenceTyped(allowedK, unit.value).text}
      check={mountingCheck}
      keep={(text) => {
        const mountingK = kelvins(text) ?? allowedK;
        return changeProbe(probe, { mountingK }, ironSetupWords.mountingIs(difference(mountingK)));
      }}
      means={ironSetupWords.mountingMeans}
      disabled={viewOnly.value}
    />
  );
}
