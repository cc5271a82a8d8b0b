import { useState } from 'preact/hooks';

/** What every part of a form needs to show a field: its text, its error once it is due, its change. */
export interface FormParts<F> {
  readonly form: F;
  readonly idOf: (key: string) => string;
  readonly errorOf: (key: string) => string;
  readonly left: (key: string) => void;
  readonly disabled: boolean;
  readonly change: (form: F) => void;
}

export interface FormPartsProps<F> {
  /** Stands before the ids of all its fields. */
  readonly id: string;
  readonly form: F;
  readonly errors: ReadonlyMap<string, string>;
  /** Whether to point out fields that the user hasn't left yet. */
  readonly pointOutAll: boolean;
  readonly disabled: boolean;
  readonly onChange: (form: F) => void;
}

/** A field says what is wrong with it once the user has left it, or once all are pointed out. */
export function useFormParts<F>(props: FormPartsProps<F>): FormParts<F> {
  const { id, form, errors, pointOutAll, disabled, onChange } = props;
  const [seen, setSeen] = useState<ReadonlySet<string>>(new Set());
  return {
    form,
    idOf: (key) => `${id}-${key}`,
    errorOf: (key) => (pointOutAll || seen.has(key) ? (errors.get(key) ?? '') : ''),
    left: (key) => setSeen(new Set([...seen, key])),
    disabled,
    change: onChange,
  };
}
