import type { Page } from 'playwright-core';

/** What can be read of the page as it is painted: style sheets tell which colours were wanted, pixels which there are. */

/** Words whose place on the screen holds hardly anything that stands out from its ground. */
export async function unseenWords(page: Page): Promise<readonly string[]> {
  const png = (await page.screenshot()).toString('base64');
  return page.evaluate(async (painted) => {
    /** WCAG 2.2, of large text. */
    const leastContrast = 3;
    /** Of the place of words: thin and small ones cover a tenth. */
    const leastShare = 0.03;

    const bytes = Uint8Array.from(atob(painted), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes]));
    const canvas = new OffscreenCanvas(image.width, image.height);
    const pen = canvas.getContext('2d');
    if (pen === null) throw new Error('No canvas to look at the screenshot with.');
    pen.drawImage(image, 0, 0);

    const channel = (value: number): number =>
      value <= 10 ? value / 3294 : ((value / 255 + 0.055) / 1.055) ** 2.4;
    const luminance = (rgb: number): number =>
      0.2126 * channel((rgb >> 16) & 255) + 0.7152 * channel((rgb >> 8) & 255) + 0.0722 * channel(rgb & 255);
    const contrast = (one: number, other: number): number => {
      const [a, b] = [luminance(one), luminance(other)];
      return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    };

    /** The share of a place that stands out from what most of it is painted in. */
    const standsOut = ({ left, top, width, height }: DOMRect): number => {
      const { data } = pen.getImageData(left, top, Math.ceil(width), Math.ceil(height));
      const counts = new Map<number, number>();
      for (let i = 0; i < data.length; i += 4) {
        const rgb = ((data[i] ?? 0) << 16) | ((data[i + 1] ?? 0) << 8) | (data[i + 2] ?? 0);
        counts.set(rgb, (counts.get(rgb) ?? 0) + 1);
      }
      const [[ground] = [0]] = [...counts].toSorted(([, a], [, b]) => b - a);
      const out = [...counts].filter(([rgb]) => contrast(rgb, ground) >= leastContrast);
      return out.reduce((sum, [, count]) => sum + count, 0) / (data.length / 4);
    };

    /** Whether it is on the screen, and nothing else over it. */
    const isInSight = (element: Element, { left, right, top, bottom, width, height }: DOMRect): boolean => {
      if (width < 4 || height < 4 || left < 0 || top < 0 || right > innerWidth || bottom > innerHeight)
        return false;
      const corners = [
        [left + 1, top + 1],
        [right - 1, bottom - 1],
      ] as const;
      return corners.every(([x, y]) => {
        const over = document.elementFromPoint(x, y);
        return over !== null && (element.contains(over) || over.contains(element));
      });
    };

    const unseen: string[] = [];
    let seen = 0;
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) {
      const { parentElement: element, textContent: words } = node;
      if (element === null || words === null || !/[\p{L}\p{N}]/u.test(words)) continue;
      if (!element.checkVisibility()) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects()) {
        if (!isInSight(element, box)) continue;
        seen += 1;
        if (standsOut(box) < leastShare) unseen.push(`${element.className}: ${words}`);
      }
    }
    return seen === 0 ? ['no words at all'] : unseen;
  }, png);
}
