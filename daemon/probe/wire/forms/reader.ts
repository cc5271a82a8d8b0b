import { type LineForm, protocolForm } from '../../../../shared/messages/line-form.ts';
import { parseLine } from '../line.ts';
import { columnsProblem, columnsReader } from './columns.ts';
import type { FormRead, LineReader } from './form-read.ts';

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
