import type { RefObject } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { type Item, itemSchema } from '../../shared/messages/items.ts';
import { formatDuration } from '../../shared/units/time.ts';
import { pageWords } from '../../shared/words/page.ts';
import { itemWords } from '../../shared/words/records.ts';
import { viewOnly } from '../link/daemon.ts';
import { postJson } from '../link/get.ts';
import { randomId } from '../link/ids.ts';
import { keep } from '../parts/browser.ts';
import { useFocusKept } from '../parts/focus-kept.ts';
import { Note } from '../parts/note.tsx';
import { sessionTimes } from '../parts/session-times.ts';
import { Target } from '../parts/target.tsx';
import { difference, temperature } from '../parts/unit.ts';
import { items, openItems, putItem, sessionAddress, sessions } from './book.ts';

/** The areas suspect of all sessions: the open ones whole, the closed ones on demand. */
export function ItemsOpen() {
  const read = items.value;
  const closedTo = useRef<HTMLElement>(null);
  useFocusKept(String(openItems.value.length), closedTo);
  if (read.kind === 'failed') return <Note hatch="missing">{read.why}</Note>;
  if (read.kind === 'loading') return null;
  const closed = read.value.filter((item) => item.closing !== null);
  return (
    <>
      {openItems.value.length === 0 ? null : (
        <section class="items" aria-labelledby="items-title" data-testid="items">
          <h3 id="items-title" class="records-part">
            {itemWords.title}
          </h3>
          <p class="items-means">{itemWords.means}</p>
          <ItemList items={openItems.value} looks />
        </section>
      )}
      {closed.length === 0 ? null : (
        <details class="items-closed" data-testid="items-closed">
          <summary ref={closedTo}>{itemWords.closed(closed.length)}</summary>
          <ItemList items={closed} looks />
        </details>
      )}
    </>
  );
}

interface ItemListProps {
  readonly items: readonly Item[];
  /** Whether each has a target that leads to its trace. */
  readonly looks?: boolean;
}

export const ItemList = ({ items, looks = false }: ItemListProps) => (
  <ul class="items-list">
    {items.map((item) => (
      <li key={item.id}>
        <ItemCard item={item} looks={looks} />
      </li>
    ))}
  </ul>
);

function ItemCard({ item, looks }: { readonly item: Item; readonly looks: boolean }) {
  const when = whenOf(item);
  const closedTo = useRef<HTMLParagraphElement>(null);
  useFocusKept(String(item.closing === null), closedTo);
  return (
    <Note hatch={item.closing === null ? 'beyond' : 'know'} testId="item">
      <p class="item-title">
        <b>{when}</b> · {item.iron.name}{' '}
        {item.simulated ? <span class="tag">{pageWords.simulated}</span> : null}
      </p>
      <p>
        {overText(item)} {item.stage === null ? itemWords.noStage : itemWords.stage(item.stage)}{' '}
        {itemWords.place[item.place]} {item.whereName === '' ? itemWords.unassigned : item.whereName}
      </p>
      {looks ? (
        <a
          class="target"
          aria-label={itemWords.lookName(when)}
          href={sessionAddress(item.session, item.over.sessionMs + item.lengthMs / 2)}
        >
          {itemWords.look}
        </a>
      ) : null}
      {item.closing === null ? <Open item={item} when={when} /> : <Closed item={item} line={closedTo} />}
    </Note>
  );
}

/** An item's own time, in the zone of its session where that is known. */
function whenOf(item: Item): string {
  const all = sessions.value.kind === 'there' ? sessions.value.value : [];
  const zone = all.find((one) => one.id === item.session)?.zone ?? '';
  return sessionTimes(zone).dateTime(Date.parse(item.over.utc));
}

function overText({ standing, back, lengthMs, peakC, guardBandK, limit: which, limitC }: Item): string {
  const peak = peakC === null ? itemWords.noPeak : peakText(peakC, guardBandK);
  const name = itemWords.limit[which];
  const limit = limitC === null ? name : itemWords.limitAt(name, temperature(limitC));
  if (standing) return itemWords.standing(peak, limit);
  const length = formatDuration(lengthMs);
  return back === null ? itemWords.notSeenBack(length, peak, limit) : itemWords.over(length, peak, limit);
}

const peakText = (peakC: number, guardBandK: number | null): string =>
  guardBandK === null ? temperature(peakC) : itemWords.value(temperature(peakC), difference(guardBandK));

interface ClosedProps {
  readonly item: Item;
  readonly line: RefObject<HTMLParagraphElement>;
}

function Closed({ item, line }: ClosedProps) {
  const { closing } = item;
  if (closing === null) return null;
  const all = sessions.value.kind === 'there' ? sessions.value.value : [];
  const zone = all.find((one) => one.id === item.session)?.zone ?? '';
  return (
    <p ref={line} tabIndex={-1} data-testid="item-closed">
      {itemWords.closedBy(closing.by, sessionTimes(zone).dateTime(Date.parse(closing.at)))}{' '}
      <q>{closing.found}</q>
    </p>
  );
}

interface OpenProps {
  readonly item: Item;
  readonly when: string;
}

function Open({ item, when }: OpenProps) {
  const [asked, setAsked] = useState(false);
  if (item.standing) return null;
  if (viewOnly.value) return <p class="quiet">{itemWords.viewOnly}</p>;
  if (asked) return <ClosingForm item={item} when={when} />;
  return (
    <Target label={itemWords.closeName(when)} onPress={() => setAsked(true)}>
      {itemWords.close}
    </Target>
  );
}

const NAME = 'person';
const BY_AT_MOST = 80;
const FOUND_AT_MOST = 1000;

/** Name and finding, both needed; a retry is sent under the same id and never counts twice. */
function ClosingForm({ item, when }: OpenProps) {
  const [by, setBy] = useState(keep.read(NAME) ?? '');
  const [found, setFound] = useState('');
  const [trouble, setTrouble] = useState('');
  const [sending, setSending] = useState(false);
  const commandId = useRef(randomId());
  const id = useId();
  const first = useRef<HTMLInputElement>(null);
  // It stands in the place of what was pressed.
  useEffect(() => first.current?.focus(), []);
  const send = async (): Promise<void> => {
    if (sending) return;
    if (by.trim() === '' || found.trim() === '') {
      setTrouble(itemWords.missing);
      return;
    }
    setSending(true);
    setTrouble('');
    keep.write(NAME, by.trim());
    const body = { commandId: commandId.current, by, found };
    const got = await postJson(`/api/items/${encodeURIComponent(item.id)}/closing`, body, itemSchema);
    setSending(false);
    if (got.ok) putItem(got.value);
    else setTrouble(itemWords.notClosed(got.why));
  };
  return (
    <form
      class="closing"
      aria-label={itemWords.closeName(when)}
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <label for={`${id}-by`}>{itemWords.by}</label>
      <input
        ref={first}
        id={`${id}-by`}
        name="by"
        autoComplete="name"
        maxLength={BY_AT_MOST}
        value={by}
        onInput={(event) => setBy(event.currentTarget.value)}
      />
      <label for={`${id}-found`}>{itemWords.found}</label>
      <textarea
        id={`${id}-found`}
        name="found"
        rows={3}
        maxLength={FOUND_AT_MOST}
        value={found}
        onInput={(event) => setFound(event.currentTarget.value)}
      />
      <p role="alert" class="closing-trouble">
        {trouble}
      </p>
      <button type="submit" class="target target--main">
        {sending ? itemWords.closing : itemWords.close}
      </button>
    </form>
  );
}
