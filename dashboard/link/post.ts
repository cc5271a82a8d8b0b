import { outcomeSchema, problemSchema } from '../../shared/messages/command.ts';
import { commandWords } from '../../shared/words/page.ts';
import type { Post } from './command.ts';
import type { Answer } from './outbox.ts';

/** An answer that takes longer than this counts as none, ms; the same id is sent again. */
const ANSWER_WITHIN_MS = 8000;

/** What a proxy says where the daemon didn't answer: without the daemon's own sentence, the command did not arrive. */
const notArrived = new Set([408, 429, 502, 503, 504]);

/** Sends one command. Never throws: what could not be sent is an answer too. */
export async function send(post: Post): Promise<Answer> {
  try {
    const response = await fetch(post.path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(post.body),
      signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
    });
    return await readAnswer(response);
  } catch {
    return { kind: 'unsent' };
  }
}

async function readAnswer(response: Response): Promise<Answer> {
  const body = parsed(await response.text());
  if (response.ok) {
    const outcome = outcomeSchema.safeParse(body);
    return { kind: 'done', kept: !outcome.success || outcome.data.kept };
  }
  const problem = problemSchema.safeParse(body);
  if (problem.success) return { kind: 'refused', why: problem.data.error.message };
  if (notArrived.has(response.status)) return { kind: 'unsent' };
  return { kind: 'refused', why: `${commandWords.answerUnread} (HTTP ${response.status})` };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
