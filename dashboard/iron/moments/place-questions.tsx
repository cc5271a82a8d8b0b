import { placeWords } from '../../../shared/words/checks.ts';
import { viewOnly } from '../../link/daemon.ts';
import { SaidLine } from '../../setup/said-line.tsx';
import type { IronView, Plate } from '../plate.ts';
import { NotCounted } from './moments.tsx';
import { PlaceAsk } from './place-ask.tsx';

/** What probes of an iron read that count for nothing, and where those are that were moved here. */
export const PlaceQuestions = ({ view }: { readonly view: IronView }) => (
  <>
    {view.plates.map((plate) => (
      <OfPlate key={plate.id} plate={plate} ironName={view.iron.name} />
    ))}
  </>
);

function OfPlate({ plate, ironName }: { readonly plate: Plate; readonly ironName: string }) {
  const { view, probe, id } = plate;
  if (probe === null || view.kind !== 'apart' || view.seat === 'check-pad')
    return <SaidLine subject={`probe ${id}`} />;
  return (
    <>
      <NotCounted seat={view.seat} readC={view.readC} />
      {view.seat === 'not-told' && !viewOnly.value ? (
        <PlaceAsk probe={probe} ironName={ironName} why={placeWords.why} />
      ) : null}
      <SaidLine subject={`probe ${id}`} />
    </>
  );
}
