import { useState } from 'preact/hooks';
import type { CalibrationBudget, ProbeCalibrations } from '../../shared/messages/calibration.ts';
import { formatTemperatureDifference } from '../../shared/units/temperature.ts';
import { confidenceText, trustWords } from '../../shared/words/calibrating.ts';
import { budgetNoteWords, budgetStandingWords, budgetWords } from '../../shared/words/calibration.ts';
import { unit } from '../parts/unit.ts';
import { useCalibrations } from '../setup/calibration/calibrations.ts';
import { DueNote } from '../setup/calibration/due-note.tsx';
import './trust.css';

/**
 * Why the plate temperature of the probe `id` is trusted no further: one tap away, and kept fresh only then.
 * @param why how far that is, in words
 */
export function Trust({ id, why }: { readonly id: string; readonly why: string }) {
  const [isOpen, setOpen] = useState(false);
  const all = useCalibrations(id, isOpen);
  return (
    <details
      class="trust"
      data-testid="trust"
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        {trustWords.why(why)}
        {all?.due === true ? trustWords.due : ''}
      </summary>
      {isOpen ? <Parts all={all} /> : null}
    </details>
  );
}

function Parts({ all }: { readonly all: ProbeCalibrations | null }) {
  if (all === null) return <p>{trustWords.asking}</p>;
  return (
    <>
      <DueNote all={all} />
      {all.budget === null ? <p>{trustWords.noBudget}</p> : <Budget budget={all.budget} />}
    </>
  );
}

const Budget = ({ budget }: { readonly budget: CalibrationBudget }) => (
  <div class="trust-parts">
    {budget.allowanceOnly ? (
      <p>
        <strong>{trustWords.allowance}</strong>
      </p>
    ) : null}
    <ul class="trust-list">
      {budget.parts.map(({ name, uK, standing, note }) => (
        <li key={name} class="trust-part">
          <p class="trust-line">
            <strong>{budgetWords[name]}</strong>
            <span class="trust-size">{by(uK)}</span>
            <span class="quiet">{budgetStandingWords[standing]}</span>
          </p>
          <p class="quiet">{budgetNoteWords[note]}</p>
        </li>
      ))}
    </ul>
    <p>{trustWords.together(by(budget.uK))}</p>
    {budget.overK > 0 ? (
      <p data-testid="trust-over">
        {trustWords.over(by(budget.guardBandK - budget.overK), by(budget.overK), by(budget.guardBandK))}
      </p>
    ) : null}
    <p>{trustWords.band(by(budget.guardBandK), confidenceText(budget.confidence))}</p>
  </div>
);

const by = (k: number): string => formatTemperatureDifference(k, unit.value, 1);
