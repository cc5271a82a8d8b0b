import { useEffect, useRef } from 'preact/hooks';
import { type LineForm, protocolForm } from '../../../../shared/messages/line-form.ts';
import { lineFormWords } from '../../../../shared/words/line-forms.ts';
import { viewOnly } from '../../../link/daemon.ts';
import { Target } from '../../../parts/target.tsx';
import { devicesSettled, readSettings } from '../../daemon-settings.ts';
import { SaidLine } from '../../said-line.tsx';
import { draftOf, droppedForms, formDrafts, setFormDraft } from './form-drafts.ts';
import { FormSetUp } from './form-set-up.tsx';
import './line-form.css';

interface LineFormPartProps {
  readonly id: string;
  readonly inUse: LineForm;
}

/** Begins with the form in use as it is now: somebody may have changed it on another page. */
async function begin(id: string): Promise<void> {
  await readSettings();
  const settled = devicesSettled.peek()?.find((one) => one.id === id);
  setFormDraft(id, draftOf(settled?.form ?? protocolForm));
}

/** How a device's lines are read, and how that is changed. */
export function LineFormPart({ id, inUse }: LineFormPartProps) {
  const draft = viewOnly.value ? undefined : formDrafts.value[id];
  const dropped = droppedForms.value[id];
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
            <div class="choice-row">
              <Target testId="set-up-form" onPress={() => void begin(id)}>
                {lineFormWords.begin}
              </Target>
              {dropped === undefined ? null : (
                <Target onPress={() => setFormDraft(id, dropped)}>{lineFormWords.takeBack}</Target>
              )}
            </div>
          )}
        </>
      ) : (
        <FormSetUp id={id} draft={draft} />
      )}
      <SaidLine subject={`lines ${id}`} />
    </section>
  );
}
