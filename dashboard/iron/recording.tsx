import type { IronLive } from '../../shared/messages/live.ts';
import { commandWords, recordingWords } from '../../shared/words/page.ts';
import { ask } from '../link/commands.ts';
import { viewOnly } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { timeOfDay, uuidTimeMs } from '../parts/times.ts';

/** Whether this iron is being recorded, since when, and the target that changes it. */
export const Recording = ({ iron }: { readonly iron: IronLive }) => (
  <div class="recording" role="group" aria-label={recordingWords.name}>
    <p data-testid="recording" data-recording={iron.session === null ? 'no' : 'yes'}>
      <strong>{recordingText(iron.session)}</strong>
      {iron.session === null ? <span class="quiet"> {recordingWords.starts}</span> : null}
    </p>
    {viewOnly.value ? null : <StartOrStop iron={iron} />}
  </div>
);

function StartOrStop({ iron: { id, name, session } }: { readonly iron: IronLive }) {
  if (session === null) {
    return (
      <Target onPress={() => ask({ what: 'start', iron: id }, commandWords.start(name))}>
        {recordingWords.start}
      </Target>
    );
  }
  return (
    <Target onPress={() => ask({ what: 'stop', iron: id, session }, commandWords.stop(name))}>
      {recordingWords.stop}
    </Target>
  );
}

function recordingText(session: string | null): string {
  if (session === null) return recordingWords.none;
  const begunUtcMs = uuidTimeMs(session);
  return begunUtcMs === null ? recordingWords.running : recordingWords.since(timeOfDay(begunUtcMs));
}
