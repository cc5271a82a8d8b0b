import { describe, expect, it } from 'vitest';
import {
  columnsOf,
  draftOf,
  type FormDraft,
  formOf,
  ignored,
} from '../../../../dashboard/setup/device/form/form-drafts.ts';
import { type LineForm, protocolForm } from '../../../../shared/messages/line-form.ts';

const columns: LineForm = {
  kind: 'columns',
  separator: 'tab',
  columns: [{ is: 't', probe: 'tip' }, ignored],
};

const begun: FormDraft = { ...draftOf(protocolForm), kind: 'columns' };

describe('a form that is being set up', () => {
  it('begins with the form in use, and means it', () => {
    for (const form of [columns, { kind: 'pattern', pattern: '(?P<t>.*)' } as const])
      expect(formOf(draftOf(form), 'comma', ['1'])).toEqual(form);
  });

  it('begins with nothing chosen where the lines are our own protocol’s', () => {
    expect(draftOf(protocolForm).kind).toBeNull();
    expect(formOf(draftOf(protocolForm), 'comma', ['1', '2'])).toEqual(protocolForm);
  });

  it('has the likely separator until one is chosen, and as many columns as the newest line', () => {
    expect(formOf(begun, 'comma', ['1', '2'])).toEqual({
      kind: 'columns',
      separator: 'comma',
      columns: [ignored, ignored],
    });
    expect(formOf({ ...begun, separator: 'tab' }, 'comma', ['1'])).toMatchObject({ separator: 'tab' });
  });

  it('keeps the columns that somebody has named, whatever the newest line has', () => {
    const draft = draftOf(columns);
    expect(columnsOf(draft, 'tab', ['1', '2', '3'])).toHaveLength(2);
    expect(columnsOf(draft, 'comma', ['1', '2', '3'])).toEqual([ignored, ignored, ignored]);
  });

  it('loses nothing by trying something else', () => {
    const tried: FormDraft = { ...draftOf(columns), kind: 'pattern', separator: 'comma' };
    expect(formOf({ ...tried, kind: 'columns', separator: 'tab' }, null, [])).toEqual(columns);
  });
});
