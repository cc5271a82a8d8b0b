import type { FoundPort } from '../../shared/messages/live.ts';
import { commandWords } from '../../shared/words/page.ts';
import { choiceWords } from '../../shared/words/source.ts';
import { ask } from '../link/commands.ts';
import { viewOnly } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import './setup.css';

/** What was found, while the program waits to be told what to watch. */
export const Choice = ({ ports }: { readonly ports: readonly FoundPort[] }) => (
  <section class="choice" data-testid="choice" aria-labelledby="choice-title">
    <h2 id="choice-title" class="choice-title">
      {choiceWords.title}
    </h2>
    <p>{ports.length === 0 ? choiceWords.none : choiceWords.found}</p>
    <ul class="choice-list">
      {ports.map((port) => (
        <Port key={port.path} port={port} />
      ))}
      <li class="choice-item">
        <p>{choiceWords.simulateMeans}</p>
        {viewOnly.value ? null : (
          <Target
            testId="simulate"
            onPress={() => ask({ what: 'choose', choice: { kind: 'simulate' } }, commandWords.simulate)}
          >
            {choiceWords.simulate}
          </Target>
        )}
      </li>
    </ul>
  </section>
);

const Port = ({ port: { path, title, problem } }: { readonly port: FoundPort }) => (
  <li class="choice-item" data-testid="found-port" data-path={path}>
    <div>
      <p class="choice-path">{path}</p>
      <p>{title}</p>
      {problem === '' ? null : <p class="choice-problem">{problem}</p>}
    </div>
    {viewOnly.value ? null : (
      <Target
        main
        label={`${choiceWords.watch}: ${path}`}
        onPress={() => ask({ what: 'choose', choice: { kind: 'serial', path } }, commandWords.watch(path))}
      >
        {choiceWords.watch}
      </Target>
    )}
  </li>
);
