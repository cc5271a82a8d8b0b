import { type Cement, cementKinds } from '../../../shared/cure/cement.ts';
import {
  cementKindMeans,
  cementKindWords,
  cementWords,
  cementFormWords as words,
} from '../../../shared/words/cements.ts';
import { dayAndTime } from '../../parts/day.ts';
import { Opening } from '../../parts/opening.tsx';
import { Field, Pick } from '../fields/field.tsx';
import { isTyped, readFigure } from '../fields/number.ts';
import { type FormPartsProps, useFormParts } from '../versioned/form-parts.ts';
import { SourceNote } from '../versioned/source-note.tsx';
import { AirFields } from './air-fields.tsx';
import { burnsByKind, type CementForm } from './form.ts';
import { type Parts, TemperatureField, TextField } from './part-fields.tsx';
import { StageTimes } from './stage-times.tsx';

interface CementFieldsProps extends FormPartsProps<CementForm> {
  readonly cement: Cement;
}

/** Everything that is entered of a cement. */
export function CementFields({ cement, ...props }: CementFieldsProps) {
  const parts = useFormParts(props);
  return (
    <div class="schedule-fields">
      <Source parts={parts} cement={cement} />
      <Kind parts={parts} />
      <StageTimes parts={parts} />
      <AirFields parts={parts} />
      <Limit parts={parts} />
      <Can parts={parts} />
    </div>
  );
}

const confirmedText = ({ source, version, madeAt }: Cement): string | null =>
  source === null
    ? null
    : `${cementWords.confirmed(source.manual, source.page)} ${cementWords.version(version, dayAndTime(madeAt))}`;

/** Document and page: without them the cement is unconfirmed, and says so with what to do. */
function Source({ parts, cement }: { readonly parts: Parts; readonly cement: Cement }) {
  const { manual, page } = parts.form;
  return (
    <section class="form-part" aria-label={words.source}>
      <SourceNote
        confirmed={confirmedText(cement)}
        entered={manual.trim() !== '' && page.trim() !== ''}
        words={cementWords}
        testId="cement-unconfirmed"
      />
      <div class="field-row">
        <TextField parts={parts} field="name" label={words.name} means={words.nameMeans} />
        <TextField parts={parts} field="manual" label={words.manual} means={words.manualMeans} />
        <TextField parts={parts} field="page" label={words.page} />
      </div>
    </section>
  );
}

/** By what it dries, and whether its vapour burns where that doesn't follow. */
function Kind({ parts }: { readonly parts: Parts }) {
  const { form, errorOf, disabled, change } = parts;
  const { kind, burns } = form;
  return (
    <section class="form-part" aria-label={words.kind}>
      <Pick
        label={words.kind}
        options={cementKinds.map((one) => [one, cementKindWords[one]] as const)}
        chosen={kind}
        error={errorOf('kind')}
        disabled={disabled}
        onPick={(picked) => change({ ...form, kind: picked })}
      />
      {kind === null ? null : <p class="quiet">{cementKindMeans[kind]}</p>}
      {kind === null || burnsByKind(kind) !== null ? null : (
        <>
          <Pick
            label={words.burns}
            options={[
              ['yes', words.burnsYes],
              ['no', words.burnsNo],
            ]}
            chosen={burns === null ? null : burns ? 'yes' : 'no'}
            error={errorOf('burns')}
            disabled={disabled}
            onPick={(picked) => change({ ...form, burns: picked === 'yes' })}
          />
          <p class="quiet">{words.burnsMeans}</p>
        </>
      )}
    </section>
  );
}

/** What a plate may be over it, and, for kinds that go by it, the energy behind their drying. */
function Limit({ parts }: { readonly parts: Parts }) {
  const { form, errorOf } = parts;
  const { kind } = form;
  return (
    <section class="form-part" aria-label={words.cementLimit}>
      <TemperatureField
        parts={parts}
        field="cementLimit"
        label={words.cementLimit}
        means={words.cementLimitMeans}
      />
      {kind === null || kind === 'water-borne' ? null : (
        <Opening
          summary={words.more}
          testId="cement-more"
          held={isTyped(form.energy) || errorOf('energy') !== ''}
        >
          {() => <Energy parts={parts} kind={kind} />}
        </Opening>
      )}
    </section>
  );
}

interface EnergyProps {
  readonly parts: Parts;
  readonly kind: keyof typeof words.energy;
}

const Energy = ({ parts: { form, idOf, errorOf, left, disabled, change }, kind }: EnergyProps) => (
  <Field
    number
    id={idOf('energy')}
    label={words.energy[kind]}
    sign={words.energySign}
    text={form.energy.text}
    error={errorOf('energy')}
    means={words.energyMeans}
    disabled={disabled}
    onText={(text) => change({ ...form, energy: readFigure(text, words.energySign) })}
    onDone={() => left('energy')}
  />
);

/** What stands on the can. */
const Can = ({ parts }: { readonly parts: Parts }) => (
  <section class="form-part" aria-label={words.can}>
    <h4>{words.can}</h4>
    <div class="field-row">
      <TextField parts={parts} field="batch" label={words.batch} />
      <TextField parts={parts} field="expires" label={words.expires} means={words.expiresMeans} />
      <TextField parts={parts} field="standing" label={words.standing} />
    </div>
  </section>
);
