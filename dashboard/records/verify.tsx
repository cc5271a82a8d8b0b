import { useState } from 'preact/hooks';
import { type Session, type VerificationAnswer, verificationSchema } from '../../shared/messages/sessions.ts';
import { factWords, verifyPageWords } from '../../shared/words/records.ts';
import { getJson } from '../link/get.ts';
import { Note } from '../parts/note.tsx';
import { type SessionTimes, sessionTimes } from '../parts/session-times.ts';
import { Target } from '../parts/target.tsx';

type Stand =
  | { readonly kind: 'not-yet' }
  | { readonly kind: 'verifying' }
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'verified'; readonly answer: VerificationAnswer };

/** Checks a session against its seal, and says what came of it. */
export function Verify({ session }: { readonly session: Session }) {
  const [stand, setStand] = useState<Stand>({ kind: 'not-yet' });
  const verify = async (): Promise<void> => {
    setStand({ kind: 'verifying' });
    const path = `/api/sessions/${encodeURIComponent(session.id)}/verification`;
    const got = await getJson(path, verificationSchema);
    setStand(got.ok ? { kind: 'verified', answer: got.value } : { kind: 'failed', why: got.why });
  };
  return (
    <section class="verify" aria-label={verifyPageWords.verify}>
      <div class="choice-row">
        <Target disabled={stand.kind === 'verifying'} onPress={() => void verify()}>
          {verifyPageWords.verify}
        </Target>
        <a class="target" href={`/api/sessions/${encodeURIComponent(session.id)}/readings.csv`} download>
          {factWords.csv}
        </a>
      </div>
      <div role="status" data-testid="verified" data-stand={stand.kind}>
        <Answered stand={stand} times={sessionTimes(session.zone)} />
      </div>
    </section>
  );
}

function Answered({ stand, times }: { readonly stand: Stand; readonly times: SessionTimes }) {
  switch (stand.kind) {
    case 'not-yet':
      return null;
    case 'verifying':
      return <p>{verifyPageWords.verifying}</p>;
    case 'failed':
      return <Note hatch="missing">{verifyPageWords.failed(stand.why)}</Note>;
    case 'verified':
      return (
        <Note hatch={stand.answer.exact ? 'know' : 'beyond'}>
          {sentences(stand.answer, times).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Note>
      );
  }
}

/** What a verification says, in words. */
function sentences(answer: VerificationAnswer, times: SessionTimes): readonly string[] {
  const { exact, findings, samples, firstBadCommit: bad, differences, foldVersion } = answer;
  const said = exact ? [verifyPageWords.exact(findings, samples)] : [];
  if (bad !== null) {
    const [from, to] = [bad.from.utc, bad.to.utc].map((utc) => times.time(Date.parse(utc)));
    said.push(verifyPageWords.broken(from ?? '', to ?? '', bad.index, bad.what));
  }
  if (differences.length > 0) said.push(verifyPageWords.differs(differences.length));
  if (!answer.sameFoldVersion) said.push(verifyPageWords.otherFold(foldVersion));
  return said;
}
