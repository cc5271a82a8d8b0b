import { useEffect, useState } from 'preact/hooks';
import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { scheduleWords } from '../../../shared/words/setup.ts';
import { dayAndTime } from '../../parts/day.ts';
import { Target } from '../../parts/target.tsx';
import { unit } from '../../parts/unit.ts';
import { scheduleStore } from './drafts.ts';
import { formOf } from './form.ts';
import { differences, placeKey } from './merge.ts';
import { placeName, shown } from './place-text.ts';
import { putBack, versionsOf } from './saving.ts';

/** The versions before the newest one: the last change can be undone, and any version put back. */
export function Versions({ schedule }: { readonly schedule: HeatSchedule }) {
  const [versions, setVersions] = useState<readonly HeatSchedule[]>([]);
  const { id, version } = schedule;
  useEffect(() => {
    let current = true;
    const readThem = async (): Promise<void> => {
      const read = await versionsOf(id);
      if (current && read !== null) setVersions(read);
    };
    void readThem();
    return () => {
      current = false;
    };
  }, [id, version]);
  const [before, ...older] = versions.filter((one) => one.version < version);
  if (before === undefined) return null;
  return (
    <div class="versions">
      <Target
        testId="undo"
        disabled={scheduleStore.isSaving.value}
        onPress={() => void putBack(schedule, before)}
      >
        {scheduleWords.undo(before.version)}
      </Target>
      <details>
        <summary>{scheduleWords.versions}</summary>
        <p class="quiet">{scheduleWords.keptAll}</p>
        <ul class="versions-list">
          {[before, ...older].map((one) => (
            <Version key={one.version} of={one} newest={schedule} />
          ))}
        </ul>
      </details>
    </div>
  );
}

function Version({ of, newest }: { readonly of: HeatSchedule; readonly newest: HeatSchedule }) {
  const then = formOf(of, unit.value);
  const now = formOf(newest, unit.value);
  const places = differences(then, now);
  return (
    <li class="version">
      <p>
        <b>{scheduleWords.versionLine(of.version, dayAndTime(of.madeAt))}</b>
      </p>
      {places.length === 0 ? (
        <p>{scheduleWords.asNow}</p>
      ) : (
        <>
          <ul>
            {places.map((place) => (
              <li key={placeKey(place)}>
                {placeName(place, then)}: {shown(then, place)}
              </li>
            ))}
          </ul>
          <Target disabled={scheduleStore.isSaving.value} onPress={() => void putBack(newest, of)}>
            {scheduleWords.putBack(of.version)}
          </Target>
        </>
      )}
    </li>
  );
}
