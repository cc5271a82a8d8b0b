import { isConfirmed } from '../../../shared/heat/schedule.ts';
import type { Iron } from '../../../shared/iron/iron.ts';
import { confidences } from '../../../shared/thermometer/uncertainty.ts';
import { confidenceText, trustSettingWords } from '../../../shared/words/calibrating.ts';
import { handIronWords } from '../../../shared/words/checks.ts';
import { pageWords } from '../../../shared/words/page.ts';
import { fieldWords, ironSetupWords } from '../../../shared/words/setup.ts';
import { viewOnly } from '../../link/daemon.ts';
import { changeIron } from '../changing.ts';
import { irons, probes, schedules } from '../daemon-settings.ts';
import { Pick } from '../fields/field.tsx';
import { KeptField, nameCheck } from '../fields/kept-field.tsx';
import { figureTyped, readFigure } from '../fields/number.ts';
import { SaidLine } from '../said-line.tsx';
import { DialPart } from './dial/dial-part.tsx';
import { EvennessPart } from './evenness/evenness-part.tsx';
import { HandIron, TakeAway } from './hand-iron.tsx';
import { ProbeCard } from './probe-card.tsx';

/** Irons with the schedule that each works by, and probes with the iron that each sits on. */
export const IronsPart = () => (
  <>
    {irons.value?.length === 0 ? <p>{ironSetupWords.none}</p> : null}
    <ul class="cards">
      {(irons.value ?? []).map((iron) => (
        <IronCard key={iron.id} iron={iron} />
      ))}
    </ul>
    <HandIron />
    <h3>{ironSetupWords.probesTitle}</h3>
    {probes.value?.length === 0 ? <p>{ironSetupWords.probesNone}</p> : null}
    <ul class="cards">
      {(probes.value ?? []).map((probe) => (
        <ProbeCard key={probe.id} probe={probe} />
      ))}
    </ul>
  </>
);

const labelOf = (id: string): string => probes.value?.find((one) => one.id === id)?.label ?? id;

function IronCard({ iron }: { readonly iron: Iron }) {
  const all = schedules.value ?? [];
  return (
    <li class="card" data-testid="iron-card" data-id={iron.id}>
      {iron.simulated ? <p class="tag">{pageWords.simulated}</p> : null}
      <KeptField
        id={`iron-${iron.id}`}
        label={ironSetupWords.name}
        now={iron.name}
        check={nameCheck(60)}
        keep={(name) => changeIron(iron, { name: name.trim() }, ironSetupWords.renamed(name.trim()))}
        disabled={viewOnly.value}
      />
      <Pick
        label={ironSetupWords.schedule}
        options={all.map((one) => [
          one.id,
          <>
            <span>{one.name}</span>
            {isConfirmed(one) ? null : <small>{ironSetupWords.unconfirmed}</small>}
          </>,
        ])}
        chosen={iron.scheduleId}
        disabled={viewOnly.value}
        onPick={(scheduleId) => {
          const name = all.find((one) => one.id === scheduleId)?.name ?? scheduleId;
          void changeIron(iron, { scheduleId }, ironSetupWords.worksBy(iron.name, name));
        }}
      />
      <ConfidencePick iron={iron} />
      <SoleArea iron={iron} />
      <p data-testid="iron-probes">
        {iron.probes.length === 0
          ? handIronWords.none
          : ironSetupWords.probes(iron.probes.map(labelOf).join(', '))}{' '}
        {(irons.value?.length ?? 0) > 1 ? <span class="quiet">{ironSetupWords.moveBelow}</span> : null}
      </p>
      {iron.probes.length === 0 ? <TakeAway iron={iron} /> : null}
      <SaidLine subject={`iron ${iron.id}`} />
      <DialPart iron={iron} />
      <EvennessPart iron={iron} />
    </li>
  );
}

const LEAST_SOLE_CM2 = 2;
const MOST_SOLE_CM2 = 1000;

const soleOf = (text: string): number | null => readFigure(text, 'cm²').value;

function soleCheck(text: string): string {
  const cm2 = soleOf(text);
  if (text.trim() === '' || (cm2 !== null && cm2 >= LEAST_SOLE_CM2 && cm2 <= MOST_SOLE_CM2)) return '';
  return fieldWords.fromTo(String(LEAST_SOLE_CM2), ironSetupWords.soleArea(String(MOST_SOLE_CM2)));
}

function SoleArea({ iron }: { readonly iron: Iron }) {
  const { soleCm2 = null } = iron;
  return (
    <KeptField
      number
      id={`sole-${iron.id}`}
      label={ironSetupWords.sole}
      sign="cm²"
      now={soleCm2 === null ? '' : figureTyped(soleCm2).text}
      check={soleCheck}
      keep={(text) => {
        const wanted = soleOf(text);
        const words =
          wanted === null
            ? ironSetupWords.soleNotTold
            : ironSetupWords.soleIs(ironSetupWords.soleArea(figureTyped(wanted).text));
        // What is left out stays as it was: to undo it, "not told" has to be said.
        return changeIron({ ...iron, soleCm2 }, { soleCm2: wanted }, words);
      }}
      means={ironSetupWords.soleMeans}
      disabled={viewOnly.value}
    />
  );
}

const ConfidencePick = ({ iron }: { readonly iron: Iron }) => (
  <div>
    <Pick
      label={trustSettingWords.confidence}
      options={confidences.map((one) => [String(one), confidenceText(one)] as const)}
      chosen={String(iron.confidence)}
      disabled={viewOnly.value}
      onPick={(picked) => {
        const confidence = confidences.find((one) => String(one) === picked);
        if (confidence === undefined) return;
        const words = trustSettingWords.confidenceIs(iron.name, confidenceText(confidence));
        void changeIron(iron, { confidence }, words);
      }}
    />
    <p class="quiet">{trustSettingWords.confidenceMeans}</p>
  </div>
);
