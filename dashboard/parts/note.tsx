import type { ComponentChildren } from 'preact';
import { Hatch, type HatchName } from './hatch.tsx';
import './note.css';

interface NoteProps {
  readonly hatch: HatchName;
  readonly children: ComponentChildren;
  readonly testId?: string;
}

/** A sentence that has to be seen, marked by a hatched edge. */
export const Note = ({ hatch, children, testId }: NoteProps) => (
  <div class="note" data-testid={testId}>
    <span class="note-edge">
      <Hatch name={hatch} />
    </span>
    <div class="note-text">{children}</div>
  </div>
);
