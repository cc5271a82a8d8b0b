import type { HeatStage } from '../../shared/heat/schedule.ts';
import type { Place } from '../../shared/iron/place.ts';
import type { IronLive } from '../../shared/messages/live.ts';
import type { IronMark } from '../../shared/watch/input.ts';
import { commandWords, recordingWords } from '../../shared/words/page.ts';
import { ironWords, ladderWords, placeWords } from '../../shared/words/standing.ts';
import { ask } from '../link/commands.ts';
import { viewOnly } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { figure, temperature } from '../parts/unit.ts';
import { DialTold } from './dial-told.tsx';
import { TypedReading } from './moments/typed-reading.tsx';
import { Recording } from './recording.tsx';

/** What the user says of the work with one iron: the recording, the stage, where the iron is. */
export const Work = ({ iron }: { readonly iron: IronLive }) => (
  <div class="work">
    {viewOnly.value ? null : <Places iron={iron} />}
    {viewOnly.value ? null : <DialTold iron={iron} />}
    {viewOnly.value ? null : <Stages iron={iron} />}
    {viewOnly.value ? null : <TypedReading iron={iron} />}
    <Recording iron={iron} />
    {iron.session === null && !viewOnly.value ? <p class="quiet">{recordingWords.needed}</p> : null}
  </div>
);

const places: readonly Place[] = ['on-work', 'on-rest'];

const Places = ({ iron }: { readonly iron: IronLive }) => (
  <div class="choice-row" role="group" aria-label={ironWords.choosePlace}>
    {places.map((place) => (
      <Target
        key={place}
        chosen={iron.place === place}
        disabled={iron.session === null}
        onPress={() => mark(iron, { kind: 'place', place }, commandWords.place(iron.name, placeWords[place]))}
      >
        {placeWords[place]}
      </Target>
    ))}
  </div>
);

const Stages = ({ iron }: { readonly iron: IronLive }) => (
  <div class="choice-row" role="group" aria-label={ironWords.chooseStage}>
    {iron.schedule.stages.map((stage) => (
      <Target
        key={stage.id}
        chosen={iron.stageId === stage.id}
        disabled={iron.session === null}
        onPress={() => markStage(iron, stage)}
      >
        <span>{stage.name}</span>
        <small>{ladderWords.range(figure(stage.lowC), temperature(stage.highC))}</small>
      </Target>
    ))}
    <Target
      chosen={iron.stageId === null}
      disabled={iron.session === null}
      onPress={() => mark(iron, { kind: 'stage', stageId: null }, commandWords.noStage(iron.name))}
    >
      {ironWords.noStage}
    </Target>
  </div>
);

const markStage = (iron: IronLive, stage: HeatStage): void =>
  mark(iron, { kind: 'stage', stageId: stage.id }, commandWords.stage(iron.name, stage.name));

function mark(iron: IronLive, said: IronMark, words: string): void {
  if (iron.session !== null) ask({ what: 'mark', iron: iron.id, session: iron.session, mark: said }, words);
}
