import { signal } from '@preact/signals';
import { z } from 'zod';
import { keep } from '../parts/browser.ts';
import { readKept } from '../parts/keep.ts';

/** What the user has chosen about sound in this browser. */

export const loudnesses = { low: 0.3, middle: 0.6, full: 1 } as const;
export type Loudness = keyof typeof loudnesses;

const choicesSchema = z.object({
  /** Whether sound was turned on. That it runs is another matter: a browser wants a tap first. */
  wanted: z.boolean(),
  loudness: z.enum(['low', 'middle', 'full']),
  tick: z.boolean(),
});
export type Choices = z.infer<typeof choicesSchema>;

export const firstChoices: Choices = { wanted: false, loudness: 'full', tick: false };

/** What was kept; the first choices where nothing was, or nothing that can be read. */
export const readChoices = (text: string | null): Choices => readKept(text, choicesSchema) ?? firstChoices;

const NAME = 'sound';

export const choices = signal(readChoices(keep.read(NAME)));
/** False once this browser has refused to keep them. */
export const choicesKept = signal(!keep.refused);

export function choose(changed: Partial<Choices>): void {
  choices.value = { ...choices.value, ...changed };
  choicesKept.value = keep.write(NAME, JSON.stringify(choices.value));
}
