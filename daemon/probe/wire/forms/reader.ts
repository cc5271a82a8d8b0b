import { type LineForm, protocolForm } from '../../../../shared/messages/line-form.ts';
import { type ParsedLine, parseLine } from '../line.ts';
import { columnsProblem, columnsReader } from './columns.ts';

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

export const protocolReader: LineReader = { form: protocolForm, read: parseLine };

/** A reader for a form. What patterns need is loaded only where there is one: a start is quick. */
export async function readerFor(form: LineForm): Promise<FormRead> {
  switch (form.kind) {
    case 'protocol':
      return { kind: 'reader', reader: protocolReader };
    case 'columns': {
      const problem = columnsProblem(form);
      return problem === null
        ? { kind: 'reader', reader: columnsReader(form) }
        : { kind: 'problem', problem };
    }
    case 'pattern':
      return (await import('./pattern.ts')).patternReader(form);
  }
}
