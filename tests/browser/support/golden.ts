import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import pixelmatch from 'pixelmatch';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';

const FOLDER = fileURLToPath(new URL('../golden/', import.meta.url));
const RENEW = process.env.LAPWING_GOLDEN === '1';
/** Colours nearer than this are the same, as a share of black to white; soft edges never count (pixelmatch's own test). */
const SAME_COLOUR = 0.15;

/** What is drawn in the places of views, without the page over it: one look at the whole page, cut up. */
export const picturesOf = async <View extends string>(
  page: Page,
  views: readonly View[],
): Promise<Readonly<Record<View, PNG>>> => {
  const places = await page.evaluate(
    (names) => {
      document.body.style.visibility = 'hidden';
      (document.querySelector('canvas.stage') as HTMLElement).style.visibility = 'visible';
      return names.map((name) => {
        const place = document.querySelector(`[data-view=${name}]`)?.getBoundingClientRect();
        // Whole pixels inside the view
        const left = Math.ceil(place?.left ?? 0);
        const top = Math.ceil(place?.top ?? 0);
        return {
          left,
          top,
          width: Math.floor(place?.right ?? 1) - left,
          height: Math.floor(place?.bottom ?? 1) - top,
        };
      });
    },
    views as readonly string[],
  );
  const ratio = await page.evaluate(() => devicePixelRatio);
  const whole = PNG.sync.read(await page.screenshot({ scale: 'device', timeout: 60_000 }));
  const cut = places.map(({ left, top, width, height }) => {
    const picture = new PNG({ width: Math.round(width * ratio), height: Math.round(height * ratio) });
    const from = [Math.round(left * ratio), Math.round(top * ratio)] as const;
    PNG.bitblt(whole, picture, from[0], from[1], picture.width, picture.height, 0, 0);
    return picture;
  });
  return Object.fromEntries(views.map((view, i) => [view, cut[i]])) as Record<View, PNG>;
};

const keptPicture = (name: string): PNG => {
  const path = `${FOLDER}${name}.png`;
  if (!existsSync(path))
    throw new Error(`tests/browser/golden has no ${name}.png; LAPWING_GOLDEN=1 makes it, then look at it`);
  return PNG.sync.read(readFileSync(path));
};

/** How many pixels differ from the kept picture; with LAPWING_GOLDEN=1 it is kept anew and none do. */
export const differing = (picture: PNG, name: string): number => {
  if (RENEW) {
    writeFileSync(`${FOLDER}${name}.png`, PNG.sync.write(picture, { deflateLevel: 9 }));
    return 0;
  }
  const kept = keptPicture(name);
  if (kept.width !== picture.width || kept.height !== picture.height)
    throw new Error(
      `${name} is ${picture.width} by ${picture.height}, the kept picture ${kept.width} by ${kept.height}; LAPWING_GOLDEN=1 renews it`,
    );
  return pixelmatch(kept.data, picture.data, undefined, kept.width, kept.height, { threshold: SAME_COLOUR });
};

/** Mean colours of squares of so many CSS pixels, red, green, blue by turns: what is left of a picture from afar. */
const fromAfar = (picture: PNG, pixelRatio: number, squarePx: number): number[] => {
  const side = Math.round(squarePx * pixelRatio);
  const means: number[] = [];
  for (let top = 0; top + side <= picture.height; top += side)
    for (let left = 0; left + side <= picture.width; left += side)
      for (let channel = 0; channel < 3; channel += 1) {
        let sum = 0;
        for (let y = top; y < top + side; y += 1)
          for (let x = left; x < left + side; x += 1)
            sum += picture.data[4 * (y * picture.width + x) + channel] as number;
        means.push(sum / (side * side));
      }
  return means;
};

/** Side of the squares that pictures of different pixel ratios are compared by; a multiple of 2, for a ratio of 1.5. */
const SQUARE_PX = 12;

/** The most that a square of a picture differs from the kept one, which has a pixel ratio of 1; of 255. */
export const differingFromAfar = (picture: PNG, pixelRatio: number, name: string): number => {
  const kept = fromAfar(keptPicture(name), 1, SQUARE_PX);
  const means = fromAfar(picture, pixelRatio, SQUARE_PX);
  if (kept.length !== means.length)
    throw new Error(
      `${name} at ${pixelRatio} has ${means.length / 3} squares, the kept picture ${kept.length / 3}`,
    );
  return Math.max(...means.map((mean, i) => Math.abs(mean - (kept[i] as number))));
};
