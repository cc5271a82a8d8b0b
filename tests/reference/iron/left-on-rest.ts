import type { IronTraits } from '../../../daemon/probe/simulated/irons.ts';
import { leftOnRest, type Scenario } from '../../../daemon/probe/simulated/scenario.ts';
import { saidBy, simulateIron } from '../../../daemon/probe/simulated/simulated-iron.ts';
import { noBehaviour, observe } from '../../../shared/iron/behaviour.ts';
import { noSitting, type SittingFound, sit } from '../../../shared/iron/dial/sitting.ts';
import type { StretchFound } from '../../../shared/iron/dial/stretch.ts';

/** What is found of a simulated iron that is left on its rest at a mark, from what its probe says. */
export function sittingOf(
  traits: IronTraits,
  at: { readonly dialC: number; readonly mark: number },
  run: { readonly forS: number; readonly seed: number },
  scenario: Scenario = leftOnRest(at.dialC),
): readonly SittingFound[] {
  let behaviour = noBehaviour;
  let sitting = noSitting;
  const found: SittingFound[] = [];
  const told = { probe: '1', dial: { mark: at.mark, toldMs: 0 }, place: 'on-rest', stageId: null } as const;
  for (const { tMs, lines } of saidBy(simulateIron(traits, scenario, run.seed))) {
    if (tMs > run.forS * 1000) return found;
    const text = / t=(-?[\d.]+)/.exec(lines.at(-1) ?? '')?.[1];
    if (text === undefined) throw new Error(`no temperature in "${lines.join(' | ')}"`);
    const behaved = observe(behaviour, tMs, Number(text));
    behaviour = behaved.behaviour;
    const step = sit(sitting, { ...told, tMs, behaviour, cycle: behaved.cycle });
    sitting = step.sitting;
    found.push(...step.found);
  }
  return found;
}

/** The last that was told of the stretch. */
export function stretchOf(found: readonly SittingFound[]): StretchFound {
  const last = found.at(-1);
  if (last?.kind !== 'stretch') throw new Error('no stretch was told of');
  return last.stretch;
}
