import { safetyWords } from '../../shared/words/safety.ts';

export const HotWord = () => (
  <strong class="hot-word" data-testid="hot">
    {safetyWords.hot}
  </strong>
);
