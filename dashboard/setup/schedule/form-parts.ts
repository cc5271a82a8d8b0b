import type { ScheduleForm } from './form.ts';

/** What every part of the form needs to show a field: its text, its error once it is due, its change. */
export interface FormParts {
  readonly form: ScheduleForm;
  readonly idOf: (key: string) => string;
  readonly errorOf: (key: string) => string;
  readonly left: (key: string) => void;
  readonly disabled: boolean;
  readonly change: (form: ScheduleForm) => void;
}
