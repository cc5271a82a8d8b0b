import { formatDuration } from '../../shared/units/time.ts';
import { commandWords, pageWords } from '../../shared/words/page.ts';
import { discard, dismiss, outbox } from '../link/commands.ts';
import type { Notice } from '../link/outbox.ts';
import { Note } from '../parts/note.tsx';
import { Target } from '../parts/target.tsx';

/** What could not be sent yet, and what was refused, each with its sentence. */
export const OutboxList = () => (
  <div class="outbox" role="status" data-testid="outbox">
    {outbox.value.waiting.map(({ command, held }) =>
      held ? (
        <Note key={command.commandId} hatch="missing" testId="unsent">
          {commandWords.unsent(command.words)}{' '}
          <Target
            label={`${commandWords.discard}: ${command.words}`}
            onPress={() => discard(command.commandId)}
          >
            {commandWords.discard}
          </Target>
        </Note>
      ) : null,
    )}
    {outbox.value.notices.map((notice) => (
      <Note key={notice.id} hatch="missing" testId="notice">
        {noticeText(notice)}{' '}
        <Target label={`${pageWords.dismiss}: ${notice.words}`} onPress={() => dismiss(notice.id)}>
          {pageWords.dismiss}
        </Target>
      </Note>
    ))}
  </div>
);

function noticeText(notice: Notice): string {
  const { words } = notice;
  switch (notice.kind) {
    case 'refused':
      return commandWords.refused(words, notice.why);
    case 'not-kept':
      return commandWords.notKept(words);
    case 'changed':
      return commandWords.changedSince(words);
    case 'too-late':
      return notice.why === '' ? commandWords.tooLate(words) : commandWords.tooLateFor(words, notice.why);
    case 'sent-late':
      return commandWords.sentLate(words, notice.before, formatDuration(notice.byMs));
  }
}
