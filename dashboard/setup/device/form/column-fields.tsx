import { columnKeys, type Separator, separators } from '../../../../shared/messages/line-form.ts';
import { columnWords, lineFormWords, separatorWords } from '../../../../shared/words/line-forms.ts';
import { Target } from '../../../parts/target.tsx';
import { Field, Pick } from '../../fields/field.tsx';
import { columnsOf, type DraftColumn, type FormDraft, ignored } from './form-drafts.ts';

interface ColumnFieldsProps {
  readonly idOf: (name: string) => string;
  readonly draft: FormDraft;
  readonly separator: Separator;
  readonly likely: Separator | null;
  /** The columns of the newest line. */
  readonly cells: readonly string[];
  readonly change: (changed: Partial<FormDraft>) => void;
}

/** What separates the columns, and what each of them is. */
export function ColumnFields({ idOf, draft, separator, likely, cells, change }: ColumnFieldsProps) {
  const columns = columnsOf(draft, separator, cells);
  const write = (written: readonly DraftColumn[]): void =>
    change({ separator, columns: { ...draft.columns, [separator]: written } });
  return (
    <>
      <div class="line-form-part">
        <Pick
          label={lineFormWords.separator}
          options={separators.map((one) => [one, separatorWords[one]] as const)}
          chosen={separator}
          onPick={(picked) => change({ separator: picked })}
        />
        <p class="quiet">
          {likely === null ? '' : `${lineFormWords.likely(separatorWords[likely])} `}
          {separator === 'comma' ? lineFormWords.noDecimalComma : lineFormWords.decimalComma}
        </p>
      </div>
      <div class="line-form-part">
        <h5 class="pick-label">{lineFormWords.columns}</h5>
        {columns.length === 0 ? <p>{lineFormWords.noCells}</p> : null}
        <ol class="form-columns">
          {columns.map((column, i) => (
            <ColumnField
              key={String(i)}
              id={idOf(`column-${i + 1}`)}
              place={i + 1}
              cell={cells[i] ?? null}
              column={column}
              onChange={(changed) => write(columns.map((one, at) => (at === i ? changed : one)))}
            />
          ))}
        </ol>
        {cells.length === 0 || cells.length === columns.length ? null : (
          <Target onPress={() => write(cells.map((_, i) => columns[i] ?? ignored))}>
            {lineFormWords.takeCells(cells.length)}
          </Target>
        )}
      </div>
    </>
  );
}

interface ColumnFieldProps {
  readonly id: string;
  readonly place: number;
  /** Its text in the newest line; null where that has no such column. */
  readonly cell: string | null;
  readonly column: DraftColumn;
  readonly onChange: (column: DraftColumn) => void;
}

const ColumnField = ({ id, place, cell, column, onChange }: ColumnFieldProps) => (
  <li class="form-column" data-testid="form-column" data-place={place}>
    <p>
      {lineFormWords.column(place)}:{' '}
      {cell === null ? lineFormWords.cellMissing : <code class="form-cell">{cell}</code>}
    </p>
    <div class="field">
      <label for={id}>{lineFormWords.is}</label>
      <select
        id={id}
        aria-label={lineFormWords.isOf(place)}
        value={column.is}
        onChange={({ currentTarget }) => {
          const is = choices.find((one) => one === currentTarget.value);
          if (is !== undefined) onChange({ ...column, is });
        }}
      >
        {choices.map((one) => (
          <option key={one} value={one}>
            {columnWords[one]}
          </option>
        ))}
      </select>
    </div>
    {column.is === 'ignored' || column.is === 'ms' || column.is === 'n' ? null : (
      <Field
        id={`${id}-probe`}
        label={lineFormWords.probe}
        fullLabel={lineFormWords.probeOf(place)}
        text={column.probe}
        onText={(probe) => onChange({ ...column, probe })}
      />
    )}
  </li>
);

const choices = ['ignored', ...columnKeys] as const;
