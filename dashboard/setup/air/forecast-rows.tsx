import { forecastWords as words } from '../../../shared/words/air.ts';
import { Field } from '../fields/field.tsx';
import { type Draft, type Row, withRow } from './forecast-draft.ts';

interface ForecastRowsProps {
  readonly draft: Draft;
  /** What is wrong, by the row's place and field; null: nothing is pointed out yet. */
  readonly errors: ReadonlyMap<string, string> | null;
  readonly onChange: (draft: Draft) => void;
}

const fields = ['hour', 'temperature', 'humidity'] as const satisfies readonly (keyof Row)[];

/** The rows of a forecast, each with its hour, temperature and humidity. */
export const ForecastRows = ({ draft, errors, onChange }: ForecastRowsProps) => (
  <ol class="forecast-rows">
    {draft.rows.map((row, i) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a row has nothing but its place in the list.
      <li key={i} class="forecast-row" data-testid="forecast-row">
        {fields.map((field) => (
          <Field
            key={field}
            number
            id={`forecast-${i}-${field}`}
            label={words[field]}
            fullLabel={words.of(words[field], words.row(i + 1))}
            {...signOf(field, draft)}
            text={row[field]}
            error={errors?.get(`${i}.${field}`) ?? ''}
            onText={(text) => onChange(withRow(draft, i, { [field]: text }))}
          />
        ))}
      </li>
    ))}
  </ol>
);

const signOf = (field: keyof Row, { unit }: Draft): { readonly sign?: string } => {
  if (field === 'hour') return {};
  return { sign: field === 'temperature' ? `°${unit}` : '%' };
};
