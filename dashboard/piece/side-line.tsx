import { useState } from 'preact/hooks';
import type { Piece, SideId } from '../../shared/piece/piece.ts';
import { balanceWords } from '../../shared/words/balance.ts';
import { tightWords, workCommandWords } from '../../shared/words/pieces.ts';
import { viewOnly } from '../link/daemon.ts';
import { sessionTimes } from '../parts/session-times.ts';
import { Target } from '../parts/target.tsx';
import { PersonForm } from './person-form.tsx';
import { heats } from './pieces.ts';
import { note } from './say.ts';

/** "Covered", which is ours to say, and "tight", which only a named person says. */
export function SideLine({ piece, side }: { readonly piece: Piece; readonly side: SideId }) {
  const [asked, setAsked] = useState(false);
  const heat = heats.value[piece.id]?.sides[side - 1];
  const name = piece.sides[side - 1] ?? '';
  if (heat === undefined) return null;
  return (
    <div class="side-line" data-testid={`side-${side}`}>
      <p>
        {heat.reached === null
          ? tightWords.notCovered
          : tightWords.covered(heat.reached.name, balanceWords.laps(heat.laps))}
      </p>
      {heat.tight === null ? null : (
        <p>
          <b>{tightWords.said(heat.tight.by, sessionTimes('').dateTime(Date.parse(heat.tight.at)))}</b>
        </p>
      )}
      {viewOnly.value || heat.tight !== null ? null : asked ? (
        <PersonForm
          label={tightWords.tight(name)}
          send={tightWords.send}
          onNever={() => setAsked(false)}
          onSend={(by) => {
            note(piece.id, { kind: 'tight', side, by }, workCommandWords.tight(name, by));
            setAsked(false);
          }}
        />
      ) : (
        <Target label={tightWords.tight(name)} onPress={() => setAsked(true)}>
          {tightWords.short}
        </Target>
      )}
    </div>
  );
}
