import { effect, signal } from '@preact/signals';
import { keep } from '../../parts/browser.ts';

/** Light or dark, as the user wants it on this screen. */

export const looks = ['system', 'light', 'dark'] as const;
export type Look = (typeof looks)[number];

const NAME = 'look';

export const look = signal<Look>(looks.find((one) => one === keep.read(NAME)) ?? 'system');
/** False once this browser has refused to keep it. */
export const lookKept = signal(!keep.refused);

export function chooseLook(chosen: Look): void {
  look.value = chosen;
  lookKept.value = keep.write(NAME, chosen);
}

const mediaOf: Readonly<Record<Look, string>> = {
  system: '(prefers-color-scheme: dark)',
  light: 'not all',
  dark: 'all',
};

/**
 * Lets the page follow the choice. The dark colours stand once in the style sheets, in a media rule: the rule itself is
 * told when to hold, so that no colour is written twice.
 */
export function followLook(): void {
  const rules = darkRules();
  effect(() => {
    for (const rule of rules) rule.media.mediaText = mediaOf[look.value];
    document.documentElement.style.colorScheme = look.value === 'system' ? '' : look.value;
  });
}

const darkRules = (): readonly CSSMediaRule[] =>
  [...document.styleSheets].flatMap((sheet) =>
    [...sheet.cssRules].filter(
      (rule): rule is CSSMediaRule =>
        rule instanceof CSSMediaRule && /prefers-color-scheme:\s*dark/.test(rule.media.mediaText),
    ),
  );
