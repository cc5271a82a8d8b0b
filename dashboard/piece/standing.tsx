import { useState } from 'preact/hooks';
import { imbalanceText } from '../../shared/heat/work/imbalance.ts';
import type { Balance as BalanceAnswer } from '../../shared/messages/piece.ts';
import { otherSide, type Piece, type SideId } from '../../shared/piece/piece.ts';
import { balanceWords } from '../../shared/words/balance.ts';
import { orderWords, pieceItemWords, workCommandWords } from '../../shared/words/pieces.ts';
import { viewOnly } from '../link/daemon.ts';
import { Note } from '../parts/note.tsx';
import { sessionTimes } from '../parts/session-times.ts';
import { Target } from '../parts/target.tsx';
import { temperature } from '../parts/unit.ts';
import { openItems, sessionAddress } from '../records/book.ts';
import { at, handIron, isInHand } from './bench.ts';
import { PersonForm } from './person-form.tsx';
import { heats } from './pieces.ts';
import { note } from './say.ts';

/** How the piece stands as a whole: which side or end is ahead, what would be out of order, what has to be examined. */

export function Balance({ piece }: { readonly piece: Piece }) {
  const balance = heats.value[piece.id]?.balance;
  return balance === undefined ? null : (
    <p class="balance" data-testid="balance" data-kind={balance.kind}>
      {balanceText(piece, balance)}
    </p>
  );
}

const balanceText = (piece: Piece, balance: BalanceAnswer): string =>
  balance.kind === 'ahead'
    ? balanceWords.ahead(imbalanceText(piece, balance))
    : balanceWords[balance.kind === 'even' ? 'even' : balance.why];

/** No hotter on the side that is up before the other has had its own first shrink; and who overruled that. */
export function OrderNotes({ piece }: { readonly piece: Piece }) {
  const heat = heats.value[piece.id];
  if (heat === undefined) return null;
  const { overruled } = heat;
  if (overruled !== null)
    return (
      <p data-testid="overruled">
        {orderWords.overruled(
          overruled.by,
          overruled.why,
          sessionTimes('').dateTime(Date.parse(overruled.at)),
        )}
      </p>
    );
  const side = isInHand.value ? (at.value?.side ?? null) : null;
  const capC = side === null ? null : (heat.sides[side - 1]?.capC ?? null);
  return side === null || capC === null ? null : <OrderNote piece={piece} side={side} capC={capC} />;
}

/** Whether the stage that is being worked is one for later: until then the order is only to be known. */
function isTooEarly(capC: number): boolean {
  const iron = handIron.value;
  const stage = iron?.schedule.stages.find(({ id }) => id === iron.stageId);
  return stage !== undefined && stage.lowC >= capC;
}

interface OrderNoteProps {
  readonly piece: Piece;
  readonly side: SideId;
  readonly capC: number;
}

function OrderNote({ piece, side, capC }: OrderNoteProps) {
  const [asked, setAsked] = useState(false);
  const name = piece.sides[side - 1] ?? '';
  const other = piece.sides[(otherSide(piece, side) ?? side) - 1] ?? '';
  const words = orderWords.cap(temperature(capC), name, other);
  if (!isTooEarly(capC))
    return (
      <p class="quiet" data-testid="order">
        {words}
      </p>
    );
  return (
    <Note hatch="act-soon" testId="order">
      <p>{words}</p>
      {viewOnly.value ? null : asked ? (
        <PersonForm
          label={orderWords.overrule}
          send={orderWords.send}
          reason={{ label: orderWords.reason, missing: orderWords.reasonMissing }}
          onNever={() => setAsked(false)}
          onSend={(by, why) => {
            note(piece.id, { kind: 'overruled', by, why }, workCommandWords.overruled(by));
            setAsked(false);
          }}
        />
      ) : (
        <Target onPress={() => setAsked(true)}>{orderWords.overrule}</Target>
      )}
    </Note>
  );
}

/** Open items of this piece, each with its place in the trace. */
export function Items({ id }: { readonly id: string }) {
  const suspects = heats.value[id]?.suspects ?? [];
  if (suspects.length === 0) return null;
  return (
    <Note hatch="beyond" testId="piece-items">
      <div>
        <strong>{pieceItemWords.title(suspects.length)}</strong>
        <ul>
          {suspects.map((item) => (
            <li key={item}>
              <ItemLink id={item} />
            </li>
          ))}
        </ul>
        <p class="quiet">{pieceItemWords.toRecords}</p>
      </div>
    </Note>
  );
}

function ItemLink({ id }: { readonly id: string }) {
  const item = openItems.value.find((one) => one.id === id);
  if (item === undefined)
    return (
      <a class="way" href="#records">
        {pieceItemWords.unknown}
      </a>
    );
  const when = sessionTimes('').dateTime(Date.parse(item.over.utc));
  const peak = item.peakC === null ? item.iron.name : temperature(item.peakC);
  return (
    <a class="way" href={sessionAddress(item.session, item.over.sessionMs + item.lengthMs / 2)}>
      {pieceItemWords.link(peak, when)}
    </a>
  );
}
