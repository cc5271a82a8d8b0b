import type { LinesRead } from '../../../../shared/messages/line-form.ts';
import { lineFormWords } from '../../../../shared/words/line-forms.ts';

interface LinesListProps {
  readonly read: LinesRead | null;
  /** False while the form says nothing yet: then only the lines are shown. */
  readonly isReadable: boolean;
}

/** The last lines as they came, and beside each what is understood of it. */
export function LinesList({ read, isReadable }: LinesListProps) {
  const lines = read?.lines ?? [];
  return (
    <div class="line-form-part" data-testid="tried">
      <h5 class="pick-label">{lineFormWords.lines}</h5>
      {lines.length === 0 ? <p>{read === null ? lineFormWords.asking : lineFormWords.noLines}</p> : null}
      <ol class="tried-lines">
        {lines.map(({ raw, taken, says }, i) => (
          // The newest is always the first: it is the place that stays, not the line.
          <li key={String(i)} class="tried-line" data-taken={taken}>
            <p>
              <span class="unseen">{lineFormWords.raw}</span> <code>{raw}</code>
            </p>
            {isReadable ? (
              <p class={taken ? 'tried-says' : 'tried-says tried-says--not'}>
                <span class="unseen">{lineFormWords.understood}</span> {says}
              </p>
            ) : null}
          </li>
        ))}
      </ol>
    </div>
  );
}
