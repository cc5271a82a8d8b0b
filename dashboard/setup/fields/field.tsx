import type { ComponentChildren } from 'preact';
import './fields.css';

interface FieldProps {
  /** Unlike any other on the page. */
  readonly id: string;
  readonly label: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  /** The user has finished with it: Enter, or the focus moves on. */
  readonly onDone?: () => void;
  readonly onEscape?: () => void;
  /** What would be right; empty where nothing is wrong. */
  readonly error?: string;
  /** What it is for, beneath it. */
  readonly means?: ComponentChildren;
  /** A number: narrow, and with the keyboard for one. */
  readonly number?: boolean;
  /** Stands behind the number. */
  readonly sign?: string;
  readonly disabled?: boolean;
  /** The name in full, where the label alone says too little. */
  readonly fullLabel?: string;
}

/** A text to fill in, with its label above and what is wrong with it beneath. */
export function Field(props: FieldProps) {
  const { id, label, error = '', means, number = false, sign, fullLabel } = props;
  const described = [means === undefined ? '' : `${id}-means`, error === '' ? '' : `${id}-error`];
  return (
    <div class={number ? 'field field--number' : 'field'}>
      <label for={id}>{label}</label>
      <div class="field-line">
        <input
          id={id}
          type="text"
          inputMode={number ? 'decimal' : 'text'}
          autocomplete="off"
          value={props.text}
          disabled={props.disabled}
          aria-label={fullLabel}
          aria-invalid={error !== ''}
          aria-describedby={described.filter((one) => one !== '').join(' ') || undefined}
          onInput={(event) => props.onText(event.currentTarget.value)}
          onBlur={props.onDone}
          onKeyDown={(event) => {
            if (event.key === 'Enter') props.onDone?.();
            if (event.key === 'Escape') props.onEscape?.();
          }}
        />
        {sign === undefined ? null : <span aria-hidden="true">{sign}</span>}
      </div>
      {means === undefined ? null : (
        <p id={`${id}-means`} class="quiet">
          {means}
        </p>
      )}
      <p id={`${id}-error`} class="field-error" aria-live="polite">
        {error}
      </p>
    </div>
  );
}

interface PickProps<T extends string> {
  readonly label: string;
  readonly options: readonly (readonly [value: T, name: ComponentChildren])[];
  readonly chosen: T | null;
  readonly onPick: (value: T) => void;
  readonly disabled?: boolean;
  /** What would be right; empty where nothing is wrong. */
  readonly error?: string;
  /** The name in full, where the label alone says too little. */
  readonly fullLabel?: string;
}

/** One of a few. */
export const Pick = <T extends string>({
  label,
  options,
  chosen,
  onPick,
  disabled,
  error,
  fullLabel,
}: PickProps<T>) => (
  <div class="pick" data-wrong={error === undefined || error === '' ? undefined : true}>
    <span class="pick-label" aria-hidden="true">
      {label}
    </span>
    <div class="choice-row" role="group" aria-label={fullLabel ?? label}>
      {options.map(([value, name]) => (
        <button
          key={value}
          type="button"
          class={value === chosen ? 'target target--chosen' : 'target'}
          aria-pressed={value === chosen}
          disabled={disabled}
          onClick={() => (value === chosen ? undefined : onPick(value))}
        >
          {name}
        </button>
      ))}
    </div>
    {error === undefined ? null : (
      <p class="field-error" aria-live="polite">
        {error}
      </p>
    )}
  </div>
);
