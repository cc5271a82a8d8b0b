import type { PointKind } from '../../../shared/calibration/calibration.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { statedWords } from '../../../shared/words/calibration.ts';
import { unit } from '../../parts/unit.ts';
import { Field, Pick } from '../fields/field.tsx';
import {
  type CalibrationDraftTyped,
  type FieldErrors,
  readAccuracy,
  readPlate,
  type,
  typedOf,
} from './drafts.ts';

interface PointFieldsProps {
  readonly id: string;
  readonly kind: PointKind;
  readonly errors: FieldErrors;
}

/** What a point's own temperature follows from, as far as the user has to say it. */
export function PointFields({ id, kind, errors }: PointFieldsProps) {
  if (kind === 'ice') return null;
  const draft = typedOf(id);
  const key = `calibration-${encodeURIComponent(id)}`;
  const given = { draft, errors, keyOf: (name: string) => `${key}-${name}`, change: changeOf(id) };
  return (
    <div class="calibration-fields">
      {kind === 'contact' ? <ContactFields {...given} /> : <BoilingFields {...given} />}
    </div>
  );
}

const changeOf =
  (id: string) =>
  (change: Partial<CalibrationDraftTyped>): void =>
    type(id, change);

interface FieldsProps {
  readonly draft: CalibrationDraftTyped;
  readonly errors: FieldErrors;
  readonly keyOf: (name: string) => string;
  readonly change: (change: Partial<CalibrationDraftTyped>) => void;
}

const ContactFields = ({ draft, errors, keyOf, change }: FieldsProps) => (
  <>
    <Field
      number
      id={keyOf('plate')}
      label={calibratingWords.plate}
      sign={`°${unit.value}`}
      text={draft.plate.text}
      error={errors.plate ?? ''}
      means={calibratingWords.plateOf}
      onText={(text) => change(readPlate(text))}
    />
    <Field
      number
      id={keyOf('accuracy')}
      label={calibratingWords.accuracy}
      sign={`°${unit.value}`}
      text={draft.accuracy.text}
      error={errors.accuracy ?? ''}
      means={calibratingWords.accuracyMeans}
      onText={(text) => change(readAccuracy(text))}
    />
    <Pick
      label={calibratingWords.accuracyIs}
      options={(['limits', 'expanded', 'standard'] as const).map((as) => [as, statedWords[as]] as const)}
      chosen={draft.as}
      onPick={(as) => change({ as })}
    />
    <Field
      id={keyOf('instrument')}
      label={calibratingWords.instrument}
      text={draft.instrument}
      means={calibratingWords.instrumentMeans}
      onText={(instrument) => change({ instrument })}
    />
  </>
);

const BoilingFields = ({ draft, errors, keyOf, change }: FieldsProps) => (
  <>
    <Field
      number
      id={keyOf('altitude')}
      label={calibratingWords.altitude}
      sign={draft.altitudeIn}
      text={draft.altitude}
      error={errors.altitude ?? ''}
      means={calibratingWords.altitudeMeans}
      onText={(altitude) => change({ altitude })}
    />
    <Pick
      label={calibratingWords.inUnit(calibratingWords.altitude)}
      options={[
        ['m', 'm'],
        ['ft', 'ft'],
      ]}
      chosen={draft.altitudeIn}
      onPick={(altitudeIn) => change({ altitudeIn })}
    />
    <Field
      number
      id={keyOf('pressure')}
      label={calibratingWords.pressure}
      sign={draft.pressureIn}
      text={draft.pressure}
      error={errors.pressure ?? ''}
      means={calibratingWords.pressureMeans}
      onText={(pressure) => change({ pressure })}
    />
    <Pick
      label={calibratingWords.inUnit(calibratingWords.pressure)}
      options={[
        ['hPa', 'hPa'],
        ['inHg', 'inHg'],
      ]}
      chosen={draft.pressureIn}
      onPick={(pressureIn) => change({ pressureIn })}
    />
    <Field
      id={keyOf('instrument')}
      label={calibratingWords.barometer}
      text={draft.instrument}
      means={calibratingWords.barometerMeans}
      onText={(instrument) => change({ instrument })}
    />
  </>
);
