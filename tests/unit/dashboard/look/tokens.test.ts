import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contrast, luminance } from './contrast.ts';

const folder = join(import.meta.dirname, '../../../../dashboard');
const read = (file: string): string => readFileSync(join(folder, file), 'utf8').replace(/\/\*[^]*?\*\//g, '');
const tokens = read('tokens.css');
const others = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
  (file) => file.endsWith('.css') && file !== 'tokens.css',
);

const inBlock = (block: string): [string, string][] =>
  [...block.matchAll(/(--[\w-]+):\s*(#[0-9a-f]{6})\b/gi)].map(([, name = '', colour = '']) => [name, colour]);

/** The colours of one scheme: those of `:root` at the top, and what the dark block puts in their place. */
function colours(scheme: 'light' | 'dark'): ReadonlyMap<string, string> {
  const [light = '', rest = ''] = tokens.split('@media (prefers-color-scheme: dark)');
  const [dark = ''] = rest.split('@media');
  return new Map([...inBlock(light), ...(scheme === 'dark' ? inBlock(dark) : [])]);
}

/** Text on its ground: at least 4.5:1 (WCAG 2.2, 1.4.3 AA). */
const texts = [
  ['--ink', '--ground'],
  ['--ink', '--sheet'],
  ['--ground', '--ink'],
  ['--ink-quiet', '--ground'],
  ['--ink-quiet', '--sheet'],
  ['--ground', '--ink-quiet'],
  ['--on-accent', '--accent'],
  ['--on-turned', '--turned'],
  ['--on-turned-accent', '--turned-accent'],
] as const;

/** Edges, hatchings, marks and the focus ring beside what they stand on: at least 3:1 (WCAG 2.2, 1.4.11 AA). */
const marks = [
  ['--rule', '--ground'],
  ['--rule', '--sheet'],
  ['--accent', '--ground'],
  ['--accent', '--sheet'],
  ['--hatch', '--ground'],
  ['--hatch', '--sheet'],
  ['--hatch-strong', '--ground'],
  ['--hatch-strong', '--sheet'],
  ['--turned', '--ground'],
  ['--turned-accent', '--turned'],
  ['--hatch-strong', '--turned-accent'],
] as const;

describe('contrast', () => {
  it('is computed as WCAG 2.2 says', () => {
    expect(luminance('#ffffff')).toBeCloseTo(1, 10);
    expect(luminance('#000000')).toBe(0);
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    // The darkest grey that passes on white, from memory: #767676 with 4.54:1, and #777777 fails with 4.48:1.
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
    expect(contrast('#ffffff', '#777777')).toBeCloseTo(4.48, 2);
  });

  describe.each(['light', 'dark'] as const)('in %s', (scheme) => {
    const all = colours(scheme);
    const of = ([one, other]: readonly [string, string]): number =>
      contrast(all.get(one) ?? '', all.get(other) ?? '');

    it.each(texts)('%s on %s reads', (...pair) => {
      expect(of(pair)).toBeGreaterThanOrEqual(4.5);
    });

    it.each(marks)('%s beside %s is seen', (...pair) => {
      expect(of(pair)).toBeGreaterThanOrEqual(3);
    });

    it('is computed for every colour there is', () => {
      const paired = new Set([...texts, ...marks].flat());
      expect([...all.keys()].filter((name) => !paired.has(name as never))).toEqual([]);
      expect(all.size).toBeGreaterThan(10);
    });
  });

  it('has every colour of the light scheme in the dark one and in the user’s own colours', () => {
    const [, dark = '', forced = ''] = tokens.split(/@media \((?:prefers-color-scheme|forced-colors)/);
    for (const name of colours('light').keys()) {
      expect(dark).toContain(`${name}:`);
      expect(forced).toContain(`${name}:`);
    }
  });
});

describe('the tokens', () => {
  it('are each named once in their block: a second one would take the place of the first', () => {
    const twice = tokens.split('@media').flatMap((block) => {
      const names = [...block.matchAll(/^\s*(--[\w-]+):/gm)].map(([, name = '']) => name);
      return names.filter((name, i) => names.indexOf(name) !== i);
    });
    expect(twice).toEqual([]);
  });
});

describe('the other style sheets', () => {
  it.each(others)('%s names no colour and no size of its own', (file) => {
    const rules = read(file)
      .replace(/var\(--[\w-]+(, 0)?\)/g, '')
      .replace(/@(media|container)[^{]*/g, '');
    expect(rules.match(/#[0-9a-f]{3,8}\b|\b(rgb|hsl|oklch|color-mix)\w*\(/gi)).toBeNull();
    expect(rules.match(/\b\d*\.?\d+(px|rem|vw|vh|dvh|svh|cqi|pt|ch|s|ms)\b/g)).toBeNull();
    expect(
      rules.match(/(?<![\w-])(black|white|red|orange|gr[ae]y|Highlight|Canvas\w*)(?![\w-])/g),
    ).toBeNull();
  });

  it.each(others)('%s uses only tokens that exist', (file) => {
    const used = [...read(file).matchAll(/var\((--[\w-]+)/g)].map(([, name = '']) => name);
    const setByViews = new Set(['--rows', '--covered', '--digits']);
    const unknown = used.filter((name) => !setByViews.has(name) && !tokens.includes(`${name}:`));
    expect(unknown).toEqual([]);
  });

  it('break only where the tokens say', () => {
    const widths = others.flatMap((file) => [
      ...read(file).matchAll(/@media \((?:min|max)-width: ([^)]+)\)/g),
    ]);
    expect(
      [...new Set(widths.map(([, width]) => width))].filter((w) => !['34rem', '64rem'].includes(w ?? '')),
    ).toEqual([]);
  });

  it('ask how wide a part is only at the widths that the tokens name', () => {
    const widths = others.flatMap((file) => [
      ...read(file).matchAll(/@container \((?:min|max)-width: ([^)]+)\)/g),
    ]);
    expect([...new Set(widths.map(([, width]) => width))]).toEqual(['8rem', '6rem']);
  });

  it('leave no token unused', () => {
    const used = [...others, 'tokens.css'].map(read).join('\n');
    const named = [...new Set([...tokens.matchAll(/(--[\w-]+):/g)].map(([, name = '']) => name))];
    expect(named.filter((name) => !used.includes(`var(${name})`))).toEqual([]);
  });
});
