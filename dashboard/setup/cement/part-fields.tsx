import { Field } from '../fields/field.tsx';
import { readFigure, readTemperature } from '../fields/number.ts';
import type { FormParts } from '../versioned/form-parts.ts';
import type { CementForm } from './form.ts';

/** The fields of which a cement's form is made. */

export type Parts = FormParts<CementForm>;

interface OneFieldProps<K> {
  readonly parts: Parts;
  readonly field: K;
  readonly label: string;
  readonly means?: string;
}

type TextKey = 'name' | 'manual' | 'page' | 'batch' | 'expires' | 'standing';
type TemperatureKey = 'at' | 'low' | 'high' | 'cementLimit';
type PercentKey = 'atRh' | 'lowRh' | 'highRh';

export const TextField = ({ parts, field, label, means }: OneFieldProps<TextKey>) => (
  <Field
    id={parts.idOf(field)}
    label={label}
    text={parts.form[field]}
    error={parts.errorOf(field)}
    means={means}
    disabled={parts.disabled}
    onText={(text) => parts.change({ ...parts.form, [field]: text })}
    onDone={() => parts.left(field)}
  />
);

export const TemperatureField = ({ parts, field, label, means }: OneFieldProps<TemperatureKey>) => (
  <Field
    number
    id={parts.idOf(field)}
    label={label}
    sign={`°${parts.form.unit}`}
    text={parts.form[field].text}
    error={parts.errorOf(field)}
    means={means}
    disabled={parts.disabled}
    onText={(text) => parts.change({ ...parts.form, [field]: readTemperature(text, parts.form.unit) })}
    onDone={() => parts.left(field)}
  />
);

export const PercentField = ({ parts, field, label, means }: OneFieldProps<PercentKey>) => (
  <Field
    number
    id={parts.idOf(field)}
    label={label}
    sign="%"
    text={parts.form[field].text}
    error={parts.errorOf(field)}
    means={means}
    disabled={parts.disabled}
    onText={(text) => parts.change({ ...parts.form, [field]: readFigure(text, '%') })}
    onDone={() => parts.left(field)}
  />
);
