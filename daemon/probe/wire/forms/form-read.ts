import type { LineForm } from '../../../../shared/messages/line-form.ts';
import type { ParsedLine } from '../line.ts';

/** Reads the lines of a device in the form that was settled for it. */
export interface LineReader {
  readonly form: LineForm;
  /** One line without its line end, a character a byte. Never throws: what doesn't fit is rejected by its cause. */
  readonly read: (line: string, deviceId: string) => ParsedLine;
}

/** Why a form can't be used, as a sentence, and the field of it that is wrong. */
export interface FormProblem {
  readonly message: string;
  readonly where: string;
}

/** Either a reader of the form, or what is wrong with it. */
export type FormRead =
  | { readonly kind: 'reader'; readonly reader: LineReader }
  | { readonly kind: 'problem'; readonly problem: FormProblem };
