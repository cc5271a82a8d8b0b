import { computed, useComputed } from '@preact/signals';
import { Fragment } from 'preact';
import { useMemo } from 'preact/hooks';
import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { ladderWords } from '../../../shared/words/standing.ts';
import { Digits } from '../../parts/digits.tsx';
import { Hatch, hatchFill } from '../../parts/hatch.tsx';
import { figure, temperature } from '../../parts/unit.ts';
import { leadPlate } from '../irons.ts';
import { type Label, type Ladder as Layout, layOut, roomFor } from './layout.ts';
import './ladder.css';

interface LadderProps {
  readonly schedule: HeatSchedule;
  readonly stageId: string | null;
  readonly guardBandK: number;
}

/** The stages and limits as hatched rungs between two rails, with the plate's place among them. */
export function Ladder({ schedule, stageId, guardBandK }: LadderProps) {
  const layout = useMemo(() => layOut(schedule, guardBandK), [schedule, guardBandK]);
  return (
    <section class="ladder" aria-label={ladderWords.title} style={{ '--rows': String(roomFor(layout)) }}>
      {isPlaced.value ? <Plate layout={layout} /> : <Unplaced />}
      <Rungs {...{ layout, stageId, guardBandK }} />
    </section>
  );
}

interface RungsProps extends Pick<LadderProps, 'stageId' | 'guardBandK'> {
  readonly layout: Layout;
}

/** Most of what is drawn stands still: with the same properties as before, signals leave a component as it is. */
const Rungs = ({ layout, stageId, guardBandK }: RungsProps) => (
  <>
    <Drawing layout={layout} stageId={stageId} />
    <Leaders layout={layout} />
    <ol class="ladder-labels">
      {layout.labels.map((label) => (
        <li key={keyOf(label)} class="ladder-label" style={{ top: `${label.labelPct}%` }}>
          <LabelText label={label} stageId={stageId} guardBandK={guardBandK} />
        </li>
      ))}
    </ol>
  </>
);

const keyOf = ({ subject }: Label): string =>
  subject.kind === 'band' ? subject.band.stages.map((stage) => stage.id).join(' ') : subject.kind;

function Drawing({ layout, stageId }: { readonly layout: Layout; readonly stageId: string | null }) {
  const laneWidth = 100 / layout.lanes;
  const across = { x1: '0%', x2: '100%' };
  return (
    <svg class="ladder-drawing" aria-hidden="true" focusable="false">
      <rect class="ladder-beyond" width="100%" height={`${layout.limitPct}%`} fill={hatchFill('beyond')} />
      <rect
        width="100%"
        y={`${layout.limitPct}%`}
        height={`${layout.warnPct - layout.limitPct}%`}
        fill={hatchFill('allowance')}
      />
      {layout.bands.map((band) => (
        <rect
          key={band.stages[0]?.id}
          class="ladder-band"
          x={`${band.lane * laneWidth}%`}
          width={`${laneWidth}%`}
          y={`${band.topPct}%`}
          height={`${band.heightPct}%`}
          fill={hatchFill(band.stages.some((stage) => stage.id === stageId) ? 'working' : 'band')}
        />
      ))}
      <line class="ladder-limit" {...across} y1={`${layout.limitPct}%`} y2={`${layout.limitPct}%`} />
      {layout.cementPct === null ? null : (
        <line class="ladder-cement" {...across} y1={`${layout.cementPct}%`} y2={`${layout.cementPct}%`} />
      )}
    </svg>
  );
}

/** From each rung to its words. */
const Leaders = ({ layout }: { readonly layout: Layout }) => (
  <svg class="ladder-leaders" aria-hidden="true" focusable="false">
    {layout.labels.map((label) =>
      label.subject.kind === 'cement-limit' && label.subject.c === null ? null : (
        <line
          key={keyOf(label)}
          class="ladder-leader"
          x1="0%"
          x2="100%"
          y1={`${label.atPct}%`}
          y2={`${label.labelPct}%`}
        />
      ),
    )}
  </svg>
);

function LabelText({
  label: { subject },
  stageId,
  guardBandK,
}: {
  readonly label: Label;
  readonly stageId: string | null;
  readonly guardBandK: number;
}) {
  if (subject.kind === 'fabric-limit') {
    return (
      <>
        <b>{ladderWords.fabricLimit}</b> <span>{temperature(subject.c)}</span>
        <small>{ladderWords.allowance(temperature(subject.c - guardBandK))}</small>
      </>
    );
  }
  if (subject.kind === 'cement-limit') {
    if (subject.c === null) return <>{ladderWords.cementUnset}</>;
    return (
      <>
        <b>{ladderWords.cementLimit}</b> <span>{temperature(subject.c)}</span>
      </>
    );
  }
  const { stages, lowC, highC } = subject.band;
  return (
    <>
      {stages.map((stage, i) => (
        <Fragment key={stage.id}>
          {i === 0 ? '' : ', '}
          <b class={stage.id === stageId ? 'ladder-working' : undefined}>{stage.name}</b>
          {stage.id === stageId ? <span class="unseen"> ({ladderWords.workingStage})</span> : null}
        </Fragment>
      ))}{' '}
      <span>{ladderWords.range(figure(lowC), temperature(highC))}</span>
    </>
  );
}

const isPlaced = computed(() => leadPlate.value?.view.kind === 'number');

/** Where there is no reading the plate has no place on the ladder, and that is said. */
const Unplaced = () => (
  <div class="ladder-unplaced">
    <Hatch name="missing" />
    <span aria-hidden="true">?</span>
    <p class="unseen">{ladderWords.unplaced}</p>
  </div>
);

/** The plate's own mark: it moves without anything being rendered. */
function Plate({ layout }: { readonly layout: Layout }) {
  const place = useComputed(() => `transform: translateY(${layout.pct(plateC.value)}%)`);
  return (
    <div class="ladder-way" aria-hidden="true" style={place}>
      <div class="ladder-plate">
        <span class="ladder-plate-name">
          <Digits text={plateFigure} />
        </span>
        <span class="ladder-plate-bar" />
      </div>
    </div>
  );
}

const plateC = computed(() => {
  const shown = leadPlate.value?.view;
  return shown?.kind === 'number' ? shown.plateC : 0;
});
const plateFigure = computed(() => figure(plateC.value));
