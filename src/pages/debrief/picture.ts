import { saveFile } from '../shown/save-file.ts';

const COPIED = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'opacity',
  'font-size',
  'font-weight',
  'text-anchor',
] as const;

/** A drawing of the page as an image of its own, with the colours it has now. */
const imageOf = (svg: SVGSVGElement, width: number, height: number): Promise<HTMLImageElement> => {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const originals = svg.querySelectorAll('*');
  copy.querySelectorAll('*').forEach((element, i) => {
    const original = originals[i];
    if (!original) return;
    const style = getComputedStyle(original);
    for (const name of COPIED) element.setAttribute(name, style.getPropertyValue(name));
    element.removeAttribute('class');
  });
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  copy.setAttribute('font-family', 'sans-serif');
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  const text = new XMLSerializer().serializeToString(copy);
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  return image.decode().then(() => image);
};

export interface SheetWords {
  readonly title: string;
  readonly under: string;
  readonly first: string;
  /** Item, value and tolerance, with the band's colour name. */
  readonly lines: readonly { readonly words: string; readonly band: string }[];
  readonly foot: string;
}

const WIDTH = 1600;
const MARGIN = 48;

const wrapped = (pen: CanvasRenderingContext2D, text: string, width: number): string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (pen.measureText(longer).width > width && line !== '') {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
};

/** Saves the sheet as a PNG: title, first thing to change, drawings, items, caution. */
export const savePicture = async (name: string, page: HTMLElement, words: SheetWords): Promise<void> => {
  const drawings = [...page.querySelectorAll<SVGSVGElement>('.debrief-drawn svg, svg.plots')];
  const root = getComputedStyle(document.documentElement);
  const colour = (variable: string): string => root.getPropertyValue(variable).trim();
  const half = (WIDTH - 3 * MARGIN) / 2;
  const sized = drawings.map((svg) => {
    const box = svg.viewBox.baseVal;
    return { svg, width: half, height: (half * box.height) / box.width };
  });
  const [plan, profile, plots] = sized;
  const itemsHeight = words.lines.length * 26 + 20;
  const upper = Math.max(plan?.height ?? 0, profile?.height ?? 0);
  const height = 210 + upper + 40 + Math.max(plots?.height ?? 0, itemsHeight) + 90;
  const canvas = document.createElement('canvas');
  canvas.width = WIDTH;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (!pen) return;
  const family = "'Lapwing Sans', sans-serif";
  const write = (text: string, x: number, y: number, size: number, ink: string, weight = 400): void => {
    pen.font = `${weight} ${size}px ${family}`;
    pen.fillStyle = ink;
    pen.fillText(text, x, y);
  };
  pen.fillStyle = colour('--paper');
  pen.fillRect(0, 0, WIDTH, height);
  write(words.title, MARGIN, 66, 36, colour('--ink'), 600);
  write(words.under, MARGIN, 100, 22, colour('--ink-soft'));
  pen.font = `600 24px ${family}`;
  wrapped(pen, words.first, WIDTH - 2 * MARGIN)
    .slice(0, 2)
    .forEach((line, i) => {
      write(line, MARGIN, 146 + i * 30, 24, colour('--ink'), 600);
    });
  const place = async (part: (typeof sized)[number] | undefined, x: number, y: number): Promise<void> => {
    if (part) pen.drawImage(await imageOf(part.svg, part.width, part.height), x, y, part.width, part.height);
  };
  await place(plan, MARGIN, 200);
  await place(profile, 2 * MARGIN + half, 200);
  await place(plots, MARGIN, 240 + upper);
  words.lines.forEach((line, i) => {
    const shape = { green: '●', amber: '▲', red: '■' }[line.band] ?? '–';
    const ink =
      { green: '--corridor-text', amber: '--caution-text', red: '--danger' }[line.band] ?? '--ink-soft';
    write(`${shape} ${line.words}`, 2 * MARGIN + half, 262 + upper + i * 26, 18, colour(ink));
  });
  pen.font = `400 16px ${family}`;
  wrapped(pen, words.foot, WIDTH - 2 * MARGIN).forEach((line, i) => {
    write(line, MARGIN, height - 44 + i * 22, 16, colour('--ink-soft'));
  });
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (blob) saveFile(name, blob);
};
