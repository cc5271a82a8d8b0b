import { useEffect, useState } from 'preact/hooks';
import type { LineForm, Separator } from '../../../../shared/messages/line-form.ts';
import { lineFormWords } from '../../../../shared/words/line-forms.ts';
import { Note } from '../../../parts/note.tsx';
import { Target } from '../../../parts/target.tsx';
import { readLinesAs, unsay } from '../../changing.ts';
import { Pick } from '../../fields/field.tsx';
import { ColumnFields } from './column-fields.tsx';
import {
  dropFormDraft,
  endFormDraft,
  type FormDraft,
  formOf,
  separatorOf,
  setFormDraft,
} from './form-drafts.ts';
import { LinesList } from './lines-list.tsx';
import { PatternField } from './pattern-field.tsx';
import { useTried } from './trying.ts';
import '../../schedule/schedule.css';

interface FormSetUpProps {
  readonly id: string;
  readonly draft: FormDraft;
}

/** What the daemon has seen in the lines. */
interface Seen {
  readonly likely: Separator | null;
  readonly cells: readonly string[];
}

const kinds = ['protocol', 'columns', 'pattern'] as const satisfies readonly LineForm['kind'][];

/** Step by step: what the lines are, what stands where in them, and beside each line what is understood of it. */
export function FormSetUp({ id, draft }: FormSetUpProps) {
  // What the last answer says of the lines is part of the next question.
  const [seen, setSeen] = useState<Seen>({ likely: null, cells: [] });
  const form = formOf(draft, seen.likely, seen.cells);
  const { read, why } = useTried(id, form);
  useEffect(() => {
    if (read !== null) setSeen({ likely: read.likelySeparator, cells: read.cells });
  }, [read]);
  const { kind } = draft;
  const change = (changed: Partial<FormDraft>): void => {
    unsay(`lines ${id}`);
    setFormDraft(id, { ...draft, ...changed });
  };
  const problem = read?.form.kind === kind ? (read?.problem?.message ?? '') : '';
  const key = encodeURIComponent(id);
  const save = async (): Promise<void> => {
    if (await readLinesAs(id, form, lineFormWords.saved)) endFormDraft(id);
  };
  return (
    <>
      <div class="line-form-sides">
        <div class="line-form-side">
          <Pick
            label={lineFormWords.kind}
            options={kinds.map((one) => [one, lineFormWords.kinds[one]] as const)}
            chosen={kind}
            onPick={(picked) => change({ kind: picked })}
          />
          {kind === null ? null : <p class="quiet">{lineFormWords.kindMeans[kind]}</p>}
          {kind === 'columns' ? (
            <ColumnFields
              idOf={(name) => `form-${key}-${name}`}
              draft={draft}
              separator={separatorOf(draft, seen.likely)}
              likely={seen.likely}
              cells={seen.cells}
              change={change}
            />
          ) : null}
          {kind === 'pattern' ? (
            <PatternField
              id={`form-${key}-pattern`}
              pattern={draft.pattern}
              problem={why === '' ? problem : why}
              onText={(pattern) => change({ pattern })}
            />
          ) : null}
        </div>
        <div class="line-form-side">
          {kind === 'columns' && (problem !== '' || why !== '') ? (
            <p class="field-error" role="status" data-testid="form-problem">
              {why === '' ? problem : why}
            </p>
          ) : null}
          <LinesList read={read} isReadable={kind !== null && problem === ''} />
          {kind !== null && problem === '' && read?.checksummed === false ? (
            <Note hatch="missing" testId="form-unchecked">
              {lineFormWords.unchecked}
            </Note>
          ) : null}
          {kind === null || kind === 'protocol' ? null : <p class="quiet">{lineFormWords.unit}</p>}
        </div>
      </div>
      <div class="save-bar save-bar--unsaved">
        <p>{lineFormWords.unsaved}</p>
        {kind === null ? null : (
          <Target main testId="save-form" onPress={() => void save()}>
            {lineFormWords.save}
          </Target>
        )}
        <Target testId="drop-form" onPress={() => dropFormDraft(id)}>
          {lineFormWords.drop}
        </Target>
      </div>
    </>
  );
}
