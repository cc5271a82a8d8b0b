import { useEffect, useRef } from 'preact/hooks';
import type { LineForm } from '../../../../shared/messages/line-form.ts';
import { lineFormWords } from '../../../../shared/words/line-forms.ts';
import { viewOnly } from '../../../link/daemon.ts';
import { Target } from '../../../parts/target.tsx';
import { SaidLine } from '../../said-line.tsx';
import { draftOf, formDrafts, setFormDraft } from './form-drafts.ts';
import { FormSetUp } from './form-set-up.tsx';
import './line-form.css';

interface LineFormPartProps {
  readonly id: string;
  readonly inUse: LineForm;
}

/** How a device's lines are read, and how that is changed. */
export function LineFormPart({ id, inUse }: LineFormPartProps) {
  const draft = viewOnly.value ? undefined : formDrafts.value[id];
  const part = useRef<HTMLElement>(null);
  const wasOpen = useRef(draft !== undefined);
  const isOpen = draft !== undefined;
  // What was pressed is gone: the focus goes to what came in its place.
  useEffect(() => {
    if (isOpen === wasOpen.current) return;
    wasOpen.current = isOpen;
    part.current?.querySelector<HTMLElement>('[data-begin]')?.focus();
  }, [isOpen]);
  const title = isOpen ? lineFormWords.setUp : lineFormWords.title;
  return (
    <section class="line-form" ref={part} aria-label={title} data-testid="line-form">
      <h4 class="line-form-title" tabIndex={-1} data-begin>
        {title}
      </h4>
      {draft === undefined ? (
        <>
          <p data-testid="form-in-use">
            {lineFormWords.inUse(inUse)} {inUse.kind === 'pattern' ? <code>{inUse.pattern}</code> : null}
          </p>
          {viewOnly.value ? null : (
            <Target testId="set-up-form" onPress={() => setFormDraft(id, draftOf(inUse))}>
              {lineFormWords.begin}
            </Target>
          )}
        </>
      ) : (
        <FormSetUp id={id} draft={draft} />
      )}
      <SaidLine subject={`lines ${id}`} />
    </section>
  );
}
