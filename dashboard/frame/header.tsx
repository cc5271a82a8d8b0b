import type { TemperatureUnit } from '../../shared/units/temperature.ts';
import { pageWords } from '../../shared/words/page.ts';
import { screenWords } from '../../shared/words/sound.ts';
import { link } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { chooseUnit, unit } from '../parts/unit.ts';
import { SoundLine } from '../sound/sound-line.tsx';
import { awake } from './awake.ts';
import { LinkLine } from './link-line.tsx';
import { Nav } from './nav.tsx';

export const Header = () => (
  <header class="header">
    <h1 class="header-name">{pageWords.name}</h1>
    <Nav />
    <div class="header-standing">
      {link.value === 'lost' ? null : <LinkLine />}
      <MaySleep />
    </div>
    <SoundLine />
    <div class="choice-row" role="group" aria-label={pageWords.unit}>
      <UnitTarget of="F" name={pageWords.fahrenheit} />
      <UnitTarget of="C" name={pageWords.celsius} />
    </div>
  </header>
);

const MaySleep = () =>
  awake.value === 'awake' || awake.value === 'asking' ? null : (
    <p class="quiet" data-testid="may-sleep">
      {screenWords.maySleep}
    </p>
  );

const UnitTarget = ({ of, name }: { readonly of: TemperatureUnit; readonly name: string }) => (
  <Target chosen={unit.value === of} label={`°${of} ${name}`} onPress={() => chooseUnit(of)}>
    °{of}
  </Target>
);
