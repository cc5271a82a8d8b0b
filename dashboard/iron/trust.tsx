import { useState } from 'preact/hooks';
import type { CalibrationBudget } from '../../shared/messages/calibration.ts';
import type { ProbeLive } from '../../shared/messages/live.ts';
import { formatTemperatureDifference } from '../../shared/units/temperature.ts';
import { confidenceText, trustWords } from '../../shared/words/calibrating.ts';
import { budgetNoteWords, budgetStandingWords, budgetWords } from '../../shared/words/calibration.ts';
import { difference, unit } from '../parts/unit.ts';
import { useCalibrations } from '../setup/calibration/calibrations.ts';
import './trust.css';

/** Why a plate temperature is trusted no further: one tap away, and asked for only then. */
export function Trust({ probe }: { readonly probe: ProbeLive }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      class="trust"
      data-testid="trust"
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{trustWords.why(difference(probe.guardBandK - probe.overK))}</summary>
      {isOpen ? <Parts id={probe.id} /> : null}
    </details>
  );
}

function Parts({ id }: { readonly id: string }) {
  const all = useCalibrations(id, true);
  if (all === null) return <p>{trustWords.asking}</p>;
  return all.budget === null ? <p>{trustWords.noBudget}</p> : <Budget budget={all.budget} />;
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
