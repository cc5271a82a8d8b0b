import { signal } from '@preact/signals';
import { z } from 'zod';
import type { CoatAnswer } from '../../shared/messages/cure.ts';
import { benchWords, readyWords } from '../../shared/words/coats.ts';
import { pageWords } from '../../shared/words/page.ts';
import { view } from '../frame/nav-view.ts';
import { tabKeep } from '../parts/browser.ts';
import { readKept } from '../parts/keep.ts';
import { Note } from '../parts/note.tsx';
import { Target } from '../parts/target.tsx';
import { isToTest, toTestText } from './coat-text.ts';
import { coats } from './coats.ts';
import { allNoticeKeys, noticeKey, noticeKeys } from './ready.ts';
import './coats.css';

const NAME = 'coats-understood';

/** Notices that were put away in this tab. */
const understood = signal<readonly string[]>(readKept(tabKeep.read(NAME), z.array(z.string())) ?? []);

function understand(some: readonly CoatAnswer[]): void {
  const there = new Set(coats.peek().flatMap(allNoticeKeys));
  const before = understood.peek().filter((key) => there.has(key));
  understood.value = [...before, ...some.flatMap(noticeKeys)];
  tabKeep.write(NAME, JSON.stringify(understood.peek()));
}

/** What may be ready, in one line, on every view but the Bench, whose own first line says it. */
export function ReadyNotes() {
  const ready = coats.value.filter((coat) => isToTest(coat) && !understood.value.includes(noticeKey(coat)));
  return (
    <div class="notes ready-notes" role="status">
      {view.value === 'bench' || ready.length === 0 ? null : (
        <Note hatch="coat-may-be-ready" testId="ready-note">
          <strong>{benchWords.test(toTestText(ready))}</strong>
          <a class="way" href="#bench">
            {readyWords.toBench}
          </a>
          <Target label={readyWords.understood} onPress={() => understand(ready)}>
            {pageWords.dismiss}
          </Target>
        </Note>
      )}
    </div>
  );
}
