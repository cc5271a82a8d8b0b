import { columnKeys } from '../../../../shared/messages/line-form.ts';
import { columnWords, lineFormWords } from '../../../../shared/words/line-forms.ts';
import { Field } from '../../fields/field.tsx';

interface PatternFieldProps {
  readonly id: string;
  readonly pattern: string;
  /** Why it can't be used; empty where it can. */
  readonly problem: string;
  readonly onText: (pattern: string) => void;
}

/** A pattern of the user's own, and what its groups may be called. */
export const PatternField = ({ id, pattern, problem, onText }: PatternFieldProps) => (
  <div class="line-form-part pattern">
    <Field
      id={id}
      label={lineFormWords.pattern}
      text={pattern}
      error={problem}
      means={lineFormWords.patternMeans}
      onText={onText}
    />
    <details>
      <summary>{lineFormWords.groups}</summary>
      <ul class="group-names">
        {columnKeys.map((key) => (
          <li key={key}>{columnWords[key]}</li>
        ))}
        <li>{lineFormWords.groupProbe}</li>
      </ul>
    </details>
  </div>
);
